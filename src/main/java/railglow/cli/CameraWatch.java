package railglow.cli;

import java.io.IOException;
import java.util.List;
import railglow.camera.ArrivalClock;
import railglow.camera.CameraDescriptor;
import railglow.camera.FrameMarks;
import railglow.camera.FrameSource;
import railglow.camera.RawStreamSource;
import railglow.camera.diagnosis.FrameDiagnosis;
import railglow.camera.motion.MotionWatch;
import railglow.camera.noise.NoiseMeter;
import railglow.camera.noise.PixelCensus;
import railglow.observed.Frame;
import railglow.thermal.Samples;
import railglow.time.MonotonicClock;

/** Watches a camera for some time, without power on anything, and gathers what it is like. */
final class CameraWatch {
  private static final long READ_NANOS = 200_000_000L;
  private static final int LEAST_FRAMES = 16;

  /** The bad pixels are found in this share of the time, then the noise of the others. */
  private static final double CENSUS_SHARE = 0.2;

  private final CameraDescriptor camera;
  private final FrameSource source;
  private final Samples image;
  private final ArrivalClock arrivals;
  private final FrameMarks marks;
  private final MotionWatch motion;
  private final PixelCensus census;
  private NoiseMeter meter;
  private List<String> findings = List.of();
  private int frames;

  CameraWatch(CameraDescriptor camera, FrameSource source) {
    this.camera = camera;
    this.source = source;
    this.image = source.newSamples();
    this.arrivals = ArrivalClock.live(camera);
    this.marks = new FrameMarks(camera, image);
    this.motion = new MotionWatch(image);
    this.census = new PixelCensus(image, camera.saturationValue());
  }

  /**
   * Watches; a source that ends ends it.
   *
   * @throws IOException with the source's own sentence
   */
  void watch(double seconds, MonotonicClock clock) throws IOException {
    Frame frame = new Frame(image);
    long begin = clock.nanos();
    long end = begin + Math.round(seconds * 1e9);
    long censusEnd = begin + Math.round(CENSUS_SHARE * seconds * 1e9);
    while (clock.nanos() < end) {
      FrameSource.Outcome outcome = source.read(frame, READ_NANOS);
      if (outcome == FrameSource.Outcome.ENDED) {
        return;
      }
      if (outcome == FrameSource.Outcome.FRAME) {
        take(frame, clock.nanos() >= censusEnd);
      }
    }
  }

  private void take(Frame frame, boolean censusIsOver) {
    if (frames == 0 && source instanceof RawStreamSource raw) {
      findings =
          raw.newestFrameBytes().map(bytes -> FrameDiagnosis.of(camera, bytes)).orElse(List.of());
    }
    frames++;
    long midNanos = arrivals.midExposureNanos(frame);
    marks.mark(frame, midNanos);
    motion.look(frame, midNanos);
    census.add(frame);
    if (meter == null && censusIsOver && census.frames() >= LEAST_FRAMES) {
      meter =
          new NoiseMeter(image.width(), image.height(), camera.framesPerSecond(), census.faults());
    }
    if (meter != null) {
      meter.add(frame);
    }
  }

  int frames() {
    return frames;
  }

  /** The newest image. */
  Samples image() {
    return image;
  }

  ArrivalClock arrivals() {
    return arrivals;
  }

  FrameMarks marks() {
    return marks;
  }

  MotionWatch motion() {
    return motion;
  }

  PixelCensus census() {
    return census;
  }

  /** Whether enough was seen to tell the noise. */
  boolean knowsNoise() {
    return meter != null && meter.frames() >= LEAST_FRAMES;
  }

  NoiseMeter meter() {
    return meter;
  }

  /** What looks wrong with the first frame's layout. */
  List<String> findings() {
    return findings;
  }
}
