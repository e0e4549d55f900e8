package railglow.casebook;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.LocalDateTime;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import railglow.journal.Checksums;
import railglow.journal.RunFolder;

/**
 * A whole run as one zip file, with {@code SHA256SUMS} over everything in it, in the form that
 * {@code sha256sum --check} reads. The same folder gives the same bytes. Stateless.
 */
public final class RunArchive {
  private static final LocalDateTime ANY_TIME = LocalDateTime.of(1980, 1, 1, 0, 0);

  private RunArchive() {}

  /**
   * Writes the archive, replacing a file of that name whole.
   *
   * @param withFrames false leaves the frames out: then the run can be read but not replayed
   * @return how many files are in it, the sums among them
   */
  public static int write(RunFolder folder, Path zip, boolean withFrames) throws IOException {
    Map<String, String> sums = Checksums.of(folder, Checksums.Scope.EVERYTHING);
    if (!withFrames) {
      sums.remove("frames.rgf");
    }
    Path part = zip.resolveSibling("." + zip.getFileName() + ".part");
    if (zip.toAbsolutePath().getParent() != null) {
      Files.createDirectories(zip.toAbsolutePath().getParent());
    }
    try {
      try (OutputStream file = new BufferedOutputStream(Files.newOutputStream(part));
          ZipOutputStream out = new ZipOutputStream(file, StandardCharsets.UTF_8)) {
        for (String name : sums.keySet()) {
          begin(out, folder.name() + "/" + name);
          Files.copy(folder.root().resolve(name), out);
          out.closeEntry();
        }
        begin(out, folder.name() + "/SHA256SUMS");
        out.write(Checksums.text(sums).getBytes(StandardCharsets.UTF_8));
        out.closeEntry();
      }
      Files.move(part, zip, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(part);
    }
    return sums.size() + 1;
  }

  private static void begin(ZipOutputStream out, String name) throws IOException {
    ZipEntry entry = new ZipEntry(name);
    entry.setTimeLocal(ANY_TIME);
    out.putNextEntry(entry);
  }
}
