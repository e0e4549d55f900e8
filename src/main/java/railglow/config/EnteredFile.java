package railglow.config;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import railglow.board.Entered;
import railglow.units.Unit;

/** What was entered about a run, kept in its folder so that a replay knows it. Stateless. */
public final class EnteredFile {
  private EnteredFile() {}

  /** Every bit of the numbers returns. */
  public static void write(Path file, Entered entered) throws IOException {
    StringBuilder text = new StringBuilder("# What was entered about this run beside its files.\n");
    entered
        .reflectedCelsius()
        .ifPresent(celsius -> text.append("reflected: ").append(celsius).append(" degC\n"));
    entered
        .reflectedSigmaKelvin()
        .ifPresent(kelvin -> text.append("reflected-error: ").append(kelvin).append(" K\n"));
    if (!entered.clips().isEmpty()) {
      text.append("clips:\n");
      entered
          .clips()
          .forEach(clip -> text.append("  - ").append(BesideBench.quoted(clip)).append('\n'));
    }
    Files.createDirectories(file.toAbsolutePath().getParent());
    Files.writeString(file, text);
  }

  /**
   * @return nothing entered when there is no such file
   */
  public static Entered read(Path file) throws ConfigException {
    if (!Files.exists(file)) {
      return Entered.NOTHING;
    }
    ConfigFile read = ConfigFile.read(file);
    ConfigSection root = read.root();
    OptionalDouble celsius = reflectedCelsius(root);
    OptionalDouble kelvin = reflectedSigmaKelvin(root);
    List<String> clips = root.has("clips") ? root.texts("clips") : List.of();
    read.finish();
    return new Entered(celsius, kelvin, clips);
  }

  /** As board files say it too. */
  static OptionalDouble reflectedCelsius(ConfigSection section) {
    return section.optionalQuantity(
        "reflected",
        Unit.CELSIUS,
        Entered.COLDEST_REFLECTED_CELSIUS,
        Entered.HOTTEST_REFLECTED_CELSIUS);
  }

  /** As board files say it too. */
  static OptionalDouble reflectedSigmaKelvin(ConfigSection section) {
    return section.optionalQuantity(
        "reflected-error", Unit.KELVIN, 0, Entered.MOST_REFLECTED_SIGMA_KELVIN);
  }
}
