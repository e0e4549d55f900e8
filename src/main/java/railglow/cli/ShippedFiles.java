package railglow.cli;

import java.io.IOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * The instruments, sequences and examples that come with the program. A name a user gives is first
 * a path of their own, then the name of a shipped file.
 */
final class ShippedFiles {
  private static final String ROOT = "/shipped";
  private static Path unpacked;

  private ShippedFiles() {}

  /**
   * Finds a file.
   *
   * @param given a path, or a shipped file's name with or without {@code .yaml}
   * @param folder where shipped files of this kind are: instruments, sequences or examples
   * @param kind what it is, for the message
   * @throws UserMistake when there is neither
   */
  static Path find(String given, String folder, String kind) throws UserMistake {
    Path own = Path.of(given);
    if (Files.exists(own)) {
      return own;
    }
    Path shipped = root().resolve(folder);
    for (String name : List.of(given, given + ".yaml", given + "/board.yaml")) {
      Path candidate = shipped.resolve(name).normalize();
      if (candidate.startsWith(shipped) && Files.isRegularFile(candidate)) {
        return candidate;
      }
    }
    throw new UserMistake(
        "there is no "
            + kind
            + " '"
            + given
            + "': it is neither a file here nor one of "
            + names(shipped));
  }

  private static List<String> names(Path folder) {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .map(file -> file.getFileName().toString().replaceFirst("\\.yaml$", ""))
          .sorted()
          .toList();
    } catch (IOException e) {
      return List.of();
    }
  }

  /** The folder that holds the shipped files; unpacked once where the program is one jar. */
  private static synchronized Path root() throws UserMistake {
    if (unpacked != null) {
      return unpacked;
    }
    URL url = ShippedFiles.class.getResource(ROOT);
    if (url == null) {
      throw new UserMistake(ExitCode.INTERNAL_FAULT, "the program's own files are missing");
    }
    try {
      URI uri = url.toURI();
      unpacked = uri.getScheme().equals("jar") ? unpack(uri) : Path.of(uri);
      return unpacked;
    } catch (IOException | URISyntaxException e) {
      throw new UserMistake("the program's own files can't be unpacked: " + e.getMessage());
    }
  }

  private static Path unpack(URI uri) throws IOException {
    Path target = Files.createTempDirectory("railglow-");
    try (FileSystem jar = FileSystems.newFileSystem(uri, Map.of());
        Stream<Path> files = Files.walk(jar.getPath(ROOT))) {
      for (Path file : (Iterable<Path>) files::iterator) {
        Path copy = target.resolve(jar.getPath(ROOT).relativize(file).toString());
        if (Files.isDirectory(file)) {
          Files.createDirectories(copy);
        } else {
          Files.copy(file, copy);
          copy.toFile().deleteOnExit();
        }
      }
    }
    return target;
  }
}
