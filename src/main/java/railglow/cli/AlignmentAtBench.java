package railglow.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import railglow.camera.CameraDescriptor;
import railglow.camera.alignment.Alignment;
import railglow.camera.alignment.AlignmentRefusedException;
import railglow.camera.alignment.SupplyRise;
import railglow.config.MeasuredCamera;
import railglow.config.MeasuredTimes;
import railglow.run.RecordedAlignment;
import railglow.time.MonotonicClock;
import railglow.time.WallStamp;
import railglow.units.Quantity;
import railglow.units.Unit;

/**
 * The time alignment of a bench: a run over a small resistor in view, as safe and as recorded as
 * any other, and the camera's delay from its record.
 */
final class AlignmentAtBench {
  private final Terminal terminal;
  private final Path runs;
  private final List<String> commandLine;
  private final MonotonicClock clock;

  AlignmentAtBench(Terminal terminal, Path runs, List<String> commandLine, MonotonicClock clock) {
    this.terminal = terminal;
    this.runs = runs;
    this.commandLine = commandLine;
    this.clock = clock;
  }

  /**
   * @param benchFile what is found is kept beside it; null when nothing is to be kept
   */
  int run(RunSetup setup, Path benchFile) throws Exception {
    if (!setup.refusals().isEmpty()) {
      PlanText.refusals(setup.refusals()).forEach(terminal::complain);
      return ExitCode.REFUSED;
    }
    terminal.say("Alignment  a small resistor is pulsed in view; keep camera and resistor still");
    Hunt hunt = new Hunt(terminal, runs, commandLine, new LiveView.Options());
    int exitCode = hunt.run(setup);
    if (exitCode != ExitCode.DONE) {
      terminal.complain("");
      terminal.complain(
          "Alignment  none: the run ended before all pulses were made; nothing was measured or"
              + " kept");
      return exitCode;
    }
    RecordedAlignment.Result result;
    try {
      result = RecordedAlignment.of(hunt.folder(), setup.camera().timeConstantSeconds());
    } catch (AlignmentRefusedException e) {
      throw new UserMistake("no alignment: " + e.getMessage());
    }
    say(result, setup.camera());
    if (benchFile != null) {
      MeasuredTimes times = MeasuredTimes.of(result.alignment(), WallStamp.now(clock).instant());
      MeasuredCamera kept =
          setup.measured().orElse(MeasuredCamera.nothing(setup.camera().name())).with(times);
      terminal.say("Kept       " + KeptMeasurements.keep(kept, benchFile));
    }
    return ExitCode.DONE;
  }

  private void say(RecordedAlignment.Result result, CameraDescriptor camera) {
    Alignment found = result.alignment();
    terminal.say("");
    say(
        "Alignment  latency %s, error %s; time constant %s%s",
        seconds(found.latencySeconds()),
        seconds(found.latencyErrorSeconds()),
        seconds(found.timeConstantSeconds()),
        timeConstantText(found));
    say(
        "           both together %s, error %s; %d pulses, %d frames",
        seconds(found.delaySeconds()),
        seconds(found.delayErrorSeconds()),
        found.pulses(),
        found.frames());
    say("           %s", supplyText(result.supplyRise()));
    say(
        "           the resistor at column %d, row %d warms by %s in a pulse, noise %s",
        result.column(),
        result.row(),
        amount(found.riseKelvin(), camera),
        amount(found.noise(), camera));
    say(
        "           the descriptor said latency %s, time constant %s; as lines of it:",
        seconds(camera.latencySeconds()), seconds(camera.timeConstantSeconds()));
    say("             latency: %s", seconds(Math.max(0, found.latencySeconds())));
    say("             time-constant: %s", seconds(found.timeConstantSeconds()));
  }

  private static String timeConstantText(Alignment found) {
    if (found.timeConstantErrorSeconds() > 0) {
      return ", error " + seconds(found.timeConstantErrorSeconds());
    }
    return found.timeConstantIsSeen()
        ? " as the descriptor says; the frames agree"
        : " as the descriptor says: the frames can't tell it";
  }

  /** What a camera can't tell from its own latency. */
  private static String supplyText(SupplyRise rise) {
    return Double.isInfinite(rise.mostSeconds())
        ? "with the supply's own rise in it, of which its readings say nothing"
        : String.format(
            Locale.ROOT,
            "with the supply's own rise in it, which is between %s and %s by its readings",
            seconds(rise.leastSeconds()),
            seconds(rise.mostSeconds()));
  }

  private static String amount(double value, CameraDescriptor camera) {
    return camera.profile().hasKelvin()
        ? Quantity.format(value * camera.profile().kelvinPerCount(), Unit.KELVIN)
        : String.format(Locale.ROOT, "%.1f counts", value);
  }

  /** In steps of 0.1 ms: more would be pretence. */
  private static String seconds(double value) {
    return Quantity.format(Math.round(value * 1e4) / 1e4, Unit.SECOND);
  }

  private void say(String format, Object... values) {
    terminal.say(String.format(Locale.ROOT, format, values));
  }
}
