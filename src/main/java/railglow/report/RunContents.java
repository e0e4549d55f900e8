package railglow.report;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import javax.imageio.ImageIO;
import railglow.board.Board;
import railglow.journal.Findings;
import railglow.journal.FindingsFile;
import railglow.journal.Journal;
import railglow.journal.JournalException;
import railglow.journal.JournalReader;
import railglow.journal.NpyFile;
import railglow.journal.RunFolder;
import railglow.thermal.Plane;

/**
 * What a run folder holds, as far as it can be read. Only the journal must be there.
 *
 * @param planes by name
 * @param problems what is missing or can't be trusted, one sentence each
 */
record RunContents(
    RunFolder folder,
    Journal journal,
    Optional<Findings> findings,
    Map<String, Plane> planes,
    List<String> problems) {
  static final List<String> PLANES =
      List.of("in-phase", "quadrature", "significance", "background");

  private static final List<String> LOG_PLANES = List.of("background");

  /** Planes that not every run has; none is missed. */
  static final List<String> FURTHER_PLANES = List.of("source", "trust");

  /**
   * Reads a folder.
   *
   * @throws JournalException when its journal can't be read at all
   */
  static RunContents read(RunFolder folder) throws IOException {
    Journal journal = JournalReader.read(folder);
    List<String> problems = new ArrayList<>();
    if (!journal.finished()) {
      problems.add("The run is " + journal.ending() + ".");
    }
    journal.damages().forEach(damage -> problems.add(damage + "."));
    if (!journal.header().runId().equals(folder.name())) {
      problems.add(
          "The folder is called "
              + folder.name()
              + ", but the run in it is "
              + journal.header().runId()
              + ".");
    }
    Optional<Findings> findings = Optional.empty();
    if (!journal.header().isLog()) {
      try {
        findings = Optional.of(FindingsFile.read(folder.findings()));
      } catch (JournalException e) {
        problems.add(sentence(folder, e));
      }
    }
    Map<String, Plane> planes = new TreeMap<>();
    for (String name : journal.header().isLog() ? LOG_PLANES : PLANES) {
      plane(folder, journal, name, planes, problems);
    }
    for (String name : FURTHER_PLANES) {
      if (Files.exists(folder.plane(name))) {
        plane(folder, journal, name, planes, problems);
      }
    }
    for (String used : journal.header().usedFiles().values()) {
      Path copy = folder.root().resolve(used).normalize();
      if (!copy.startsWith(folder.root().normalize()) || !Files.exists(copy)) {
        problems.add("The copy " + used + " of a file that the run used is not there.");
      }
    }
    problems.addAll(FolderCheck.problems(folder, journal));
    return new RunContents(folder, journal, findings, planes, List.copyOf(problems));
  }

  private static void plane(
      RunFolder folder,
      Journal journal,
      String name,
      Map<String, Plane> planes,
      List<String> problems)
      throws IOException {
    try {
      Plane plane = NpyFile.read(folder.plane(name));
      if (plane.width() != journal.header().camera().width()
          || plane.height() != journal.header().camera().height()) {
        problems.add(
            "Plane "
                + name
                + " is "
                + plane.width()
                + " x "
                + plane.height()
                + ", not the camera's size: left out.");
      } else {
        planes.put(name, plane);
      }
    } catch (JournalException e) {
      problems.add(sentence(folder, e));
    }
  }

  Optional<Plane> plane(String name) {
    return Optional.ofNullable(planes.get(name));
  }

  /** The board's picture as it is kept beside the board's file; empty when it can't be read. */
  Optional<BufferedImage> photograph(Board board) {
    String boardFile = journal.header().usedFiles().get("board");
    if (boardFile == null || board.picture().isEmpty()) {
      return Optional.empty();
    }
    Path name = Path.of(board.picture().get().file()).getFileName();
    Path file = folder.root().resolve(boardFile).resolveSibling(name).normalize();
    if (!file.startsWith(folder.root().normalize()) || !Files.isRegularFile(file)) {
      return Optional.empty();
    }
    try {
      return Optional.ofNullable(ImageIO.read(file.toFile()));
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  /** K, or counts where the camera has no scale. */
  String riseUnit() {
    return findings
        .map(Findings::unit)
        .orElse(Double.isNaN(journal.header().camera().kelvinPerCount()) ? "counts" : "K");
  }

  /** Starts with a capital, ends with a stop, names files as they are called in the folder. */
  static String sentence(RunFolder folder, JournalException e) {
    String text = e.getMessage().replace(folder.root() + java.io.File.separator, "");
    return Character.toUpperCase(text.charAt(0)) + text.substring(1) + ".";
  }
}
