package railglow.cli;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import picocli.CommandLine.Option;
import railglow.board.Entered;
import railglow.config.ConfigException;
import railglow.config.EnteredFile;
import railglow.config.LoadedBoard;
import railglow.journal.RunFolder;
import railglow.journal.RunHeader;

/** What holds for this visit and stands in no file, as options of what makes a result. */
final class EnteredOptions {
  @Option(
      names = "--clip",
      paramLabel = "PLACE",
      description =
          "where a clip or probe sits: a part ('C9'), a pin ('J7.3') or 'point 12 mm, 40 mm'; heat there"
              + " is taken for its contact; may be given again")
  private List<String> clips = new ArrayList<>();

  @Option(
      names = "--reflected",
      paramLabel = "CELSIUS",
      converter = Quantities.Celsius.class,
      description =
          "temperature of what the board mirrors, e.g. \"24 degC\", -50 to 100 degC; goes before the"
              + " board file's and the reflector's")
  private Double reflectedCelsius;

  @Option(
      names = "--reflected-error",
      paramLabel = "KELVIN",
      converter = Quantities.Kelvin.class,
      description = "standard deviation of --reflected (default: \"3 K\")")
  private Double reflectedSigmaKelvin;

  private Entered entered() {
    return new Entered(optional(reflectedCelsius), optional(reflectedSigmaKelvin), clips);
  }

  private static OptionalDouble optional(Double value) {
    return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  boolean areGiven() {
    return !entered().isNothing();
  }

  /**
   * A board with what was entered.
   *
   * @param files null when no board was given
   * @throws UserMistake when it can't be, or when there is no board to be entered for
   */
  LoadedBoard on(LoadedBoard files) throws UserMistake {
    if (!areGiven()) {
      return files;
    }
    if (files == null) {
      throw withoutBoard("give --board");
    }
    try {
      return files.with(entered());
    } catch (IllegalArgumentException e) {
      throw new UserMistake(e.getMessage());
    }
  }

  RunSetup on(RunSetup setup) throws UserMistake {
    LoadedBoard files = on(setup.files());
    return new RunSetup(
        setup.bench(),
        setup.supply(),
        setup.camera(),
        setup.measured(),
        files,
        setup.rail(),
        setup.sequence(),
        setup.timeline(),
        setup.envelope(),
        setup.outputPlan(),
        setup.refusals(),
        setup.usedFiles());
  }

  /** Keeps beside the record of a run what corrects what was entered for it. */
  void correct(RunFolder folder, RunHeader header)
      throws UserMistake, ConfigException, IOException {
    if (!areGiven()) {
      return;
    }
    if (!header.usedFiles().containsKey("board")) {
      throw withoutBoard("this run had none");
    }
    Entered corrected = EnteredFile.read(UsedFiles.corrected(folder)).correctedBy(entered());
    try {
      EnteredFile.read(UsedFiles.entered(folder))
          .correctedBy(corrected)
          .on(RunFolderOf.statedBoard(folder, header));
    } catch (IllegalArgumentException e) {
      throw new UserMistake(e.getMessage());
    }
    EnteredFile.write(UsedFiles.corrected(folder), corrected);
  }

  private static UserMistake withoutBoard(String what) {
    return new UserMistake(
        "--clip and --reflected need a board file, which says where the clip shows and what the"
            + " surfaces are: "
            + what);
  }
}
