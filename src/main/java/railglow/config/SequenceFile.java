package railglow.config;

import java.nio.file.Path;
import java.util.Optional;
import railglow.pulse.PulseOrder;
import railglow.pulse.PulseSequence;
import railglow.run.handsfree.SensingLevel;
import railglow.supply.OutputPlan;
import railglow.units.Unit;

/** Reads a sequence file. */
public final class SequenceFile {
  private static final double MAX_VOLTS = 60;
  private static final double MAX_AMPERES = 30;
  private static final int MAX_CYCLES = 20_000;

  private SequenceFile() {}

  /**
   * @throws ConfigException listing everything that is wrong with the file
   */
  public static PulseSequence read(Path path) throws ConfigException {
    ConfigFile file = ConfigFile.read(path).as(FileKind.SEQUENCE);
    PulseSequence sequence = from(file.root());
    file.finish();
    return sequence;
  }

  /** As {@link #read}, from text already in hand; the path only names it. */
  public static PulseSequence parse(Path path, String text) throws ConfigException {
    ConfigFile file = ConfigFile.parse(path, text).as(FileKind.SEQUENCE);
    PulseSequence sequence = from(file.root());
    file.finish();
    return sequence;
  }

  /**
   * The sensing level a sequence file gives for hands-free hunting; empty when it gives none.
   *
   * @throws ConfigException listing everything that is wrong with the file
   */
  public static Optional<SensingLevel> sensing(Path path) throws ConfigException {
    ConfigFile file = ConfigFile.read(path).as(FileKind.SEQUENCE);
    from(file.root());
    Optional<SensingLevel> level = sensing(file.root());
    file.finish();
    return level;
  }

  private static Optional<SensingLevel> sensing(ConfigSection root) {
    return root.optionalSection("sensing")
        .map(
            section ->
                new SensingLevel(
                    section.quantity("level", Unit.VOLT, 0.001, OutputPlan.HARMLESS_VOLTS),
                    section.quantity(
                        "current-limit", Unit.AMPERE, 0.001, OutputPlan.HARMLESS_AMPERES)));
  }

  private static PulseSequence from(ConfigSection root) {
    sensing(root);
    int atLeast = root.integer("cycles-at-least", 1, MAX_CYCLES);
    int atMost = root.integer("cycles-at-most", 1, MAX_CYCLES);
    if (atMost < atLeast) {
      root.report("cycles-at-most", "is " + atMost + ", below 'cycles-at-least' " + atLeast);
    }
    PulseOrder order = root.optionalChoice("order", PulseOrder.class).orElse(PulseOrder.SQUARE);
    if (order == PulseOrder.CODED) {
      even(root, "cycles-at-least", atLeast);
      even(root, "cycles-at-most", atMost);
    }
    return new PulseSequence(
        root.text("name"),
        root.text("purpose"),
        root.quantity("level", Unit.VOLT, 0.001, MAX_VOLTS),
        root.quantity("current-limit", Unit.AMPERE, 0.001, MAX_AMPERES),
        root.quantity("period", Unit.SECOND, 0.2, 600),
        atLeast,
        Math.max(atLeast, atMost),
        root.flag("until-sure", false),
        root.quantity("lead-in", Unit.SECOND, 0.5, 600),
        root.quantity("rest", Unit.SECOND, 0.5, 600),
        root.quantity("family-wise-error", Unit.PERCENT, 0.01, 20) / 100,
        root.quantity("hottest-allowed", Unit.CELSIUS, -20, 150),
        root.quantity("largest-rise", Unit.KELVIN, 0.1, 120),
        order);
  }

  private static void even(ConfigSection root, String key, int cycles) {
    if (cycles % 2 == 1 || cycles < 4) {
      root.report(key, "is " + cycles + "; coded pulses come in pairs: an even number from 4");
    }
  }
}
