package railglow.casebook;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Normalizer;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import railglow.journal.JournalException;
import railglow.journal.RunFolder;

/**
 * The place where runs are kept, one folder each, named {@code <date>-<board>-<rail>-NN}. Two
 * programs may make new folders in one place at the same time: each gets its own. Thread-safe.
 *
 * @param root holds the run folders
 */
public record RunFolders(Path root) {
  private static final int MOST_A_DAY = 9999;

  /** Where runs that step a level are kept, in a place of runs. */
  private static final List<String> STEPPED = List.of("ladders", "readings");

  /**
   * Makes the folder of a new run under the first free number.
   *
   * @param date of the run's start
   * @param board the board's name; may be empty
   * @param rail the rail's name; may be empty
   * @throws JournalException with a sentence for the operator when it can't be made
   */
  public RunFolder create(LocalDate date, String board, String rail) throws JournalException {
    String stem = date + "-" + word(board, "board") + "-" + word(rail, "rail") + "-";
    try {
      Files.createDirectories(root);
      for (int number = 1; number <= MOST_A_DAY; number++) {
        Path folder = root.resolve(stem + String.format(Locale.ROOT, "%02d", number));
        if (Files.exists(folder)) {
          continue;
        }
        try {
          return new RunFolder(Files.createDirectory(folder));
        } catch (FileAlreadyExistsException e) {
          continue; // another program took this number in between
        }
      }
    } catch (IOException e) {
      throw new JournalException(
          "no run folder can be made in " + root + " (" + e + "); choose another folder", e);
    }
    throw new JournalException(
        root + " holds " + MOST_A_DAY + " runs of " + stem + " already; choose another folder");
  }

  /**
   * Every run folder here, by name, then the ladders and the measured readings; empty where the
   * place does not exist.
   */
  public List<RunFolder> list() throws IOException {
    List<RunFolder> all = new ArrayList<>(in(root));
    for (String kind : STEPPED) {
      all.addAll(in(root.resolve(kind)));
    }
    return all;
  }

  private static List<RunFolder> in(Path place) throws IOException {
    if (!Files.isDirectory(place)) {
      return List.of();
    }
    try (Stream<Path> paths = Files.list(place)) {
      return paths
          .map(RunFolder::new)
          .filter(folder -> Files.isRegularFile(folder.journal()))
          .sorted((a, b) -> a.name().compareTo(b.name()))
          .toList();
    }
  }

  /** A name as a part of a folder's name: letters, digits and underscores, at most 24. */
  static String word(String name, String whenEmpty) {
    return word(name, whenEmpty, 24);
  }

  /** The same with at most so many characters. */
  static String word(String name, String whenEmpty, int most) {
    String plain =
        Normalizer.normalize(name, Normalizer.Form.NFD)
            .replaceAll("\\p{M}", "")
            .replaceAll("[^A-Za-z0-9]+", "_")
            .replaceAll("^_+|_+$", "");
    String cut = plain.length() > most ? plain.substring(0, most).replaceAll("_+$", "") : plain;
    return cut.isEmpty() ? whenEmpty : cut;
  }
}
