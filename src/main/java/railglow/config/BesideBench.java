package railglow.config;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** Small files that the program itself keeps beside a bench file, named after it. */
final class BesideBench {
  private BesideBench() {}

  /** {@code bench-mine.yaml} and {@code measured} give {@code bench-mine-measured.yaml}. */
  static Path file(Path benchFile, String what) {
    String name = benchFile.getFileName().toString().replaceFirst("\\.ya?ml$", "");
    return benchFile.toAbsolutePath().resolveSibling(name + "-" + what + ".yaml");
  }

  /** Writes a file whole or not at all. */
  static void write(Path path, String text) throws IOException {
    Path draft = path.resolveSibling(path.getFileName() + ".new");
    Files.writeString(draft, text);
    Files.move(draft, path, StandardCopyOption.REPLACE_EXISTING);
  }

  /** As a YAML text in double quotes. */
  static String quoted(String text) {
    return '"' + text.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
  }
}
