package railglow.journal;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * SHA-256 over the files of a run folder, kept in {@code checksums.sha256} in the form that {@code
 * sha256sum --check} reads. Stateless.
 */
public final class Checksums {
  private static final String FILE = "checksums.sha256";
  private static final String DROPPED = "frames-dropped.txt";
  private static final Pattern LINE = Pattern.compile("([0-9a-f]{64}) [ *](.+)");

  /** Which files. */
  public enum Scope {
    /** What the run wrote: journal, frames, findings, reduced planes, copies of what it used. */
    MEASURED,
    /** These and everything made from them. */
    EVERYTHING
  }

  private Checksums() {}

  /** The sums of the files that are there, by path in the folder with {@code /} between names. */
  public static Map<String, String> of(RunFolder folder, Scope scope) throws IOException {
    return withMissing(Map.of(), folder, scope);
  }

  /** Sums that are known, and those of the other files; what is known is not read again. */
  private static Map<String, String> withMissing(
      Map<String, String> known, RunFolder folder, Scope scope) throws IOException {
    Map<String, String> sums = new TreeMap<>(known);
    try (Stream<Path> paths = Files.walk(folder.root())) {
      for (Path path : paths.filter(Files::isRegularFile).toList()) {
        String name =
            folder.root().relativize(path).toString().replace(java.io.File.separatorChar, '/');
        if (isIn(name, scope) && !sums.containsKey(name)) {
          sums.put(name, sha256(path));
        }
      }
    }
    return sums;
  }

  private static boolean isIn(String name, Scope scope) {
    if (name.equals(FILE) || name.startsWith(".")) {
      return false;
    }
    return scope == Scope.EVERYTHING
        || name.equals("journal.jsonl")
        || name.equals("frames.rgf")
        || isMadeAnew(name)
        || name.equals("transcript.txt")
        || name.startsWith("used/");
  }

  /** Whether the folder has stored sums. */
  public static boolean areIn(RunFolder folder) {
    return Files.isRegularFile(folder.root().resolve(FILE));
  }

  /**
   * Writes the sums of what the run wrote, when it has finished or its findings were made anew. The
   * sum of a file that was stored already stays as it was, except for findings, planes and what
   * they were corrected by: nothing here makes a changed record look sound.
   */
  public static void write(RunFolder folder) throws IOException {
    Map<String, String> stored = new TreeMap<>();
    if (areIn(folder)) {
      for (String line : Files.readString(folder.root().resolve(FILE)).split("\n")) {
        Matcher matcher = LINE.matcher(line);
        if (matcher.matches() && !isMadeAnew(matcher.group(2))) {
          stored.put(matcher.group(2), matcher.group(1));
        }
      }
    }
    Map<String, String> sums = withMissing(stored, folder, Scope.MEASURED);
    WholeFile.write(folder.root().resolve(FILE), text(sums).getBytes(StandardCharsets.UTF_8));
  }

  private static boolean isMadeAnew(String name) {
    return name.equals("findings.json")
        || name.equals("corrected.yaml")
        || name.startsWith("planes/") && name.endsWith(".npy");
  }

  /** As {@code sha256sum} prints them. */
  public static String text(Map<String, String> sums) {
    StringBuilder text = new StringBuilder();
    sums.forEach((name, sum) -> text.append(sum).append("  ").append(name).append('\n'));
    return text.toString();
  }

  /**
   * Compares the folder with its stored sums.
   *
   * @return what does not fit, one entry a file; empty when all fits
   * @throws JournalException when the folder has no stored sums
   */
  public static List<Damage> check(RunFolder folder) throws IOException {
    Path file = folder.root().resolve(FILE);
    if (!Files.isRegularFile(file)) {
      throw new JournalException(
          "there are no stored sums at " + file + ": the run did not finish, or is older");
    }
    List<Damage> damages = new ArrayList<>();
    Map<String, String> now = of(folder, Scope.EVERYTHING);
    int number = 0;
    for (String line : Files.readString(file).split("\n")) {
      number++;
      Matcher matcher = LINE.matcher(line);
      if (!matcher.matches()) {
        damages.add(new Damage(FILE, 0, "line " + number + " is no sum of a file"));
        continue;
      }
      String found = now.get(matcher.group(2));
      if (found == null && wasDropped(folder, matcher.group(2), matcher.group(1))) {
        continue;
      }
      if (found == null) {
        damages.add(new Damage(matcher.group(2), 0, "is not there"));
      } else if (!found.equals(matcher.group(1))) {
        damages.add(new Damage(matcher.group(2), 0, "was changed after the run"));
      }
    }
    return damages;
  }

  /**
   * The files that are there but do not fit their stored sums, by name; the frames, which take long
   * to sum up, are left to {@link #check}. Empty for a folder without stored sums.
   */
  public static List<String> changed(RunFolder folder) throws IOException {
    List<String> changed = new ArrayList<>();
    if (!areIn(folder)) {
      return changed;
    }
    for (String line : Files.readString(folder.root().resolve(FILE)).split("\n")) {
      Matcher matcher = LINE.matcher(line);
      if (!matcher.matches() || matcher.group(2).equals("frames.rgf")) {
        continue;
      }
      Path file = folder.root().resolve(matcher.group(2)).normalize();
      if (file.startsWith(folder.root().normalize())
          && Files.isRegularFile(file)
          && !sha256(file).equals(matcher.group(1))) {
        changed.add(matcher.group(2));
      }
    }
    return changed;
  }

  /**
   * Notes that the frames are about to be dropped on purpose, so that their absence is no damage.
   *
   * @param rule why, in words
   */
  public static void noteDroppedFrames(RunFolder folder, String rule) throws IOException {
    String sum = sha256(folder.frames());
    WholeFile.write(
        folder.root().resolve(DROPPED),
        (sum + "  frames.rgf\n" + rule + "\n").getBytes(StandardCharsets.UTF_8));
  }

  private static boolean wasDropped(RunFolder folder, String name, String sum) throws IOException {
    Path note = folder.root().resolve(DROPPED);
    return name.equals("frames.rgf")
        && Files.isRegularFile(note)
        && Files.readString(note).startsWith(sum);
  }

  private static String sha256(Path file) throws IOException {
    MessageDigest digest;
    try {
      digest = MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
    byte[] buffer = new byte[1 << 16];
    try (InputStream in = Files.newInputStream(file)) {
      for (int count = in.read(buffer); count >= 0; count = in.read(buffer)) {
        digest.update(buffer, 0, count);
      }
    }
    return HexFormat.of().formatHex(digest.digest());
  }
}
