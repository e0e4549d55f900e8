package railglow.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import railglow.camera.ArrivalClock;
import railglow.camera.CameraDescriptor;
import railglow.camera.CameraProfile;
import railglow.camera.FrameMarks;
import railglow.camera.FrameSource;
import railglow.camera.RawStreamSource;
import railglow.camera.diagnosis.FrameDiagnosis;
import railglow.camera.diagnosis.FramePicture;
import railglow.camera.noise.BestPeriod;
import railglow.camera.noise.NoiseFigures;
import railglow.camera.noise.NoiseMeter;
import railglow.camera.noise.PixelCensus;
import railglow.camera.noise.PixelFault;
import railglow.camera.noise.PixelFaults;
import railglow.observed.Frame;
import railglow.observed.FrameMark;
import railglow.thermal.Samples;
import railglow.time.MonotonicClock;
import railglow.units.Quantity;
import railglow.units.Unit;

/** The camera's part of a bench check: what it gives, how noisy it is, what looks wrong. */
final class CameraTrial {
  private static final long READ_NANOS = 200_000_000L;
  private static final double BODY_SECONDS = 0.5;
  private static final int LEAST_FRAMES = 16;
  private static final int MOST_STARS = 40;
  private final Terminal terminal;
  private final MonotonicClock clock;

  CameraTrial(Terminal terminal, MonotonicClock clock) {
    this.terminal = terminal;
    this.clock = clock;
  }

  /** Whether the camera looks usable. */
  boolean run(CameraDescriptor camera, FrameSource source, double seconds, Path folder)
      throws IOException {
    Samples like = source.newSamples();
    Frame frame = new Frame(like);
    ArrivalClock arrivals = ArrivalClock.live(camera);
    FrameMarks marks = new FrameMarks(camera, like);
    PixelCensus census = new PixelCensus(like, camera.saturationValue());
    NoiseMeter meter =
        new NoiseMeter(
            like.width(),
            like.height(),
            camera.framesPerSecond(),
            PixelFaults.none(like.width(), like.height()));
    long end = clock.nanos() + Math.round(seconds * 1e9);
    boolean any = false;
    List<String> findings = List.of();
    while (clock.nanos() < end) {
      FrameSource.Outcome outcome = source.read(frame, READ_NANOS);
      if (outcome == FrameSource.Outcome.ENDED) {
        break;
      }
      if (outcome == FrameSource.Outcome.FRAME) {
        if (!any && source instanceof RawStreamSource raw) {
          findings = judged(camera, raw);
        }
        any = true;
        marks.mark(frame, arrivals.midExposureNanos(frame));
        census.add(frame);
        meter.add(frame);
      }
    }
    terminal.say("Camera     " + camera.name() + ", " + source.description());
    if (!any) {
      terminal.complain("  FAILS    not one frame in " + seconds + " s: does it stream?");
      return false;
    }
    Path picture = folder.resolve("frame.png");
    Files.write(picture, FramePicture.png(like, 3));
    stream(camera, arrivals, marks, meter.frames());
    pixels(census.faults());
    if (meter.frames() >= LEAST_FRAMES) {
      noise(camera.profile(), meter);
    } else {
      say("  noise    %d frames are too few to tell; --watch longer", meter.frames());
    }
    findings.forEach(finding -> terminal.say("  LOOKS    " + finding));
    terminal.say("  picture  " + picture);
    return true;
  }

  private static List<String> judged(CameraDescriptor camera, RawStreamSource source) {
    return source
        .newestFrameBytes()
        .map(bytes -> FrameDiagnosis.of(camera, bytes))
        .orElse(List.of());
  }

  private void stream(
      CameraDescriptor camera, ArrivalClock arrivals, FrameMarks marks, int frames) {
    say(
        "  stream   %d frames at %.2f Hz (descriptor: %.2f Hz), %d lost; arrivals late by %.1f ms"
            + " at the median, %.1f ms at 95 %%",
        frames,
        1 / arrivals.periodSeconds(),
        camera.framesPerSecond(),
        arrivals.framesMissing(),
        1e3 * arrivals.medianLatenessSeconds(),
        1e3 * arrivals.highLatenessSeconds());
    for (FrameMark mark : FrameMark.values()) {
      if (marks.count(mark) > 0) {
        say(
            "  marked   %d frames %s",
            marks.count(mark), mark.name().toLowerCase(Locale.ROOT).replace('_', ' '));
      }
    }
  }

  private void pixels(PixelFaults faults) {
    if (faults.count() == 0) {
      terminal.say("  pixels   none is bad");
    }
    for (PixelFault fault : PixelFault.values()) {
      if (faults.count(fault) > 0) {
        say(
            "  pixels   %d %s",
            faults.count(fault), fault.name().toLowerCase(Locale.ROOT).replace('_', ' '));
      }
    }
  }

  private void noise(CameraProfile camera, NoiseMeter meter) {
    NoiseFigures figures = meter.figures();
    if (camera.hasKelvin()) {
      figures = figures.scaled(camera.kelvinPerCount());
    }
    boolean kelvin = camera.hasKelvin();
    terminal.say(
        "  noise    "
            + amount(figures.temporal(), kelvin)
            + " a pixel, "
            + amount(figures.frameToFrame(), kelvin)
            + " from frame to frame, rows "
            + amount(figures.rowTogether(), kelvin)
            + ", columns "
            + amount(figures.columnTogether(), kelvin)
            + ", whole frame "
            + amount(figures.frameTogether(), kelvin));
    say("           correlation with the next frame %.2f", figures.nextFrameCorrelation());
    plot(figures, kelvin);
    double best = BestPeriod.find(figures, BODY_SECONDS, 0.5, 60);
    if (!Double.isNaN(best)) {
      say("  period   best for a part that warms in %.1f s: %.1f s", BODY_SECONDS, best);
    }
  }

  /** Allan deviation against averaging time, a bar a line, on a logarithmic scale. */
  private void plot(NoiseFigures figures, boolean kelvin) {
    double[] seconds = figures.averagingSeconds();
    double[] deviations = figures.allanDeviations();
    double most = 0;
    double least = Double.POSITIVE_INFINITY;
    for (double deviation : deviations) {
      most = Math.max(most, deviation);
      least = Math.min(least, deviation);
    }
    terminal.say("           Allan deviation of a pixel against averaging time");
    for (int i = 0; i < seconds.length; i++) {
      double share = most > least ? Math.log(deviations[i] / least) / Math.log(most / least) : 1;
      int stars = 1 + (int) Math.round((MOST_STARS - 1) * share);
      say("  %7.2f s  %-10s %s", seconds[i], amount(deviations[i], kelvin), "*".repeat(stars));
    }
  }

  private static String amount(double value, boolean kelvin) {
    return kelvin
        ? Quantity.format(value, Unit.KELVIN)
        : String.format(Locale.ROOT, "%.2f counts", value);
  }

  private void say(String format, Object... values) {
    terminal.say(String.format(Locale.ROOT, format, values));
  }
}
