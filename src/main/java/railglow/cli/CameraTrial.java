package railglow.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import railglow.camera.ArrivalClock;
import railglow.camera.CameraDescriptor;
import railglow.camera.FrameMarks;
import railglow.camera.FrameSource;
import railglow.camera.diagnosis.FramePicture;
import railglow.camera.motion.MotionWatch;
import railglow.camera.noise.NoiseFigures;
import railglow.camera.noise.PixelFault;
import railglow.camera.noise.PixelFaults;
import railglow.config.MeasuredNoise;
import railglow.observed.FrameMark;
import railglow.time.MonotonicClock;
import railglow.time.WallStamp;

/** The camera's part of a bench check: what it gives, how noisy it is, what looks wrong. */
final class CameraTrial {
  private static final double OFF_RATE = 0.05;
  private final Terminal terminal;
  private final MonotonicClock clock;
  private MeasuredNoise noise;

  CameraTrial(Terminal terminal, MonotonicClock clock) {
    this.terminal = terminal;
    this.clock = clock;
  }

  /** Whether the camera looks usable. */
  boolean run(CameraDescriptor camera, FrameSource source, double seconds, Path folder)
      throws IOException {
    CameraWatch watch = new CameraWatch(camera, source);
    watch.watch(seconds, clock);
    terminal.say("Camera     " + camera.name() + ", " + source.description());
    if (watch.frames() == 0) {
      terminal.complain("  FAILS    not one frame in " + seconds + " s: does it stream?");
      return false;
    }
    Path picture = folder.resolve("frame.png");
    Files.write(picture, FramePicture.png(watch.image(), 3));
    stream(camera, watch);
    pixels(watch.census().faults());
    if (watch.knowsNoise()) {
      noise(camera, watch.meter().figures());
    } else {
      say("  noise    %d frames are too few to tell; --watch longer", watch.frames());
    }
    motion(watch.motion());
    watch.findings().forEach(finding -> terminal.say("  LOOKS    " + finding));
    terminal.say("  picture  " + picture);
    return true;
  }

  /** What {@link #run} measured; empty when there were too few frames. */
  Optional<MeasuredNoise> measuredNoise() {
    return Optional.ofNullable(noise);
  }

  private void stream(CameraDescriptor camera, CameraWatch watch) {
    ArrivalClock arrivals = watch.arrivals();
    double rate = 1 / arrivals.periodSeconds();
    say(
        "  stream   %d frames at %.2f Hz (descriptor: %.2f Hz), %d lost; arrivals late by %.1f ms"
            + " at the median, %.1f ms at 95 %%",
        watch.frames(),
        rate,
        camera.framesPerSecond(),
        arrivals.framesMissing(),
        1e3 * arrivals.medianLatenessSeconds(),
        1e3 * arrivals.highLatenessSeconds());
    if (Math.abs(rate / camera.framesPerSecond() - 1) > OFF_RATE) {
      say("  LOOKS    as if the descriptor's rate should be %.2f Hz", rate);
    }
    FrameMarks marks = watch.marks();
    for (FrameMark mark : FrameMark.values()) {
      if (marks.count(mark) > 0) {
        say("  marked   %d frames %s", marks.count(mark), words(mark));
      }
    }
  }

  private void pixels(PixelFaults faults) {
    if (faults.count() == 0) {
      terminal.say("  pixels   none is bad");
    }
    for (PixelFault fault : PixelFault.values()) {
      if (faults.count(fault) > 0) {
        say("  pixels   %d %s", faults.count(fault), words(fault));
      }
    }
  }

  private void noise(CameraDescriptor camera, NoiseFigures inCounts) {
    boolean kelvin = camera.profile().hasKelvin();
    NoiseFigures figures =
        kelvin ? inCounts.scaled(Math.abs(camera.profile().kelvinPerCount())) : inCounts;
    noise = new MeasuredNoise(WallStamp.now(clock).instant(), kelvin, figures);
    NoiseText.of(figures, kelvin).forEach(terminal::say);
  }

  private void motion(MotionWatch motion) {
    switch (motion.state()) {
      case LEARNING -> terminal.say("  motion   not judged in so short a time; --watch longer");
      case CANT_TELL -> terminal.say("  motion   " + motion.blindness().orElseThrow());
      case MOVED, LOST -> terminal.say("  motion   the scene moved while it was watched");
      default -> {
        say("  motion   a shift of this scene would be known to %.3f pixel", motion.sigmaPixels());
        if (motion.segment() > 0) {
          say("  LOOKS    as if camera or board was pushed %d times", motion.segment());
        }
      }
    }
  }

  private static String words(Enum<?> word) {
    return word.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  private void say(String format, Object... values) {
    terminal.say(String.format(Locale.ROOT, format, values));
  }
}
