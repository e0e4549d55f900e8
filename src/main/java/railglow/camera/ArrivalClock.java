package railglow.camera;

import railglow.observed.Frame;
import railglow.observed.FrameMark;

/**
 * When frames were taken: the mid-exposure of each frame, from its number and arrival. Arrivals
 * come late, never early, so the line under them is the true one; it uses only frames up to the
 * asked one. A pure function of the frames in order: the same frames give the same times, to the
 * nanosecond. Allocates nothing per frame. Not thread-safe.
 *
 * <p>Of a camera without counter, a lost frame shows only as a step in the arrivals. While a step
 * may still be a mere delay its frames are marked {@link FrameMark#AFTER_GAP}; when three in
 * succession agree it is taken as lost frames. A stream that changes its rate is followed: its
 * frames are in doubt until the new rate is plain.
 */
public final class ArrivalClock {
  private static final double NANOS = 1e9;
  private static final double SUSPECT_PERIODS = 0.6;
  private static final double AGREEING_PERIODS = 0.3;
  private static final double WHOLE_PERIODS = 0.25;
  private static final int LONG_GAP_FRAMES = 8;
  private static final double OFF_LINE_PERIODS = 0.1;
  private static final int CONFIRMING_FRAMES = 3;
  private ArrivalLine line;
  private final RateWatch rates;
  private final double latencySeconds;
  private final boolean numbersAreCounted;
  private final boolean arrivalsAreExposures;
  private boolean begun;
  private long firstArrivalNanos;
  private long lastNumber;
  private long shift;
  private long missing;
  private int suspects;
  private double suspectPeriods;
  private int rateChanges;

  private ArrivalClock(
      double nominalPeriodSeconds,
      double latencySeconds,
      boolean numbersAreCounted,
      boolean arrivalsAreExposures) {
    this.line = new ArrivalLine(nominalPeriodSeconds);
    this.rates = new RateWatch(nominalPeriodSeconds);
    this.latencySeconds = latencySeconds;
    this.numbersAreCounted = numbersAreCounted;
    this.arrivalsAreExposures = arrivalsAreExposures;
  }

  /**
   * For frames as they arrive.
   *
   * @param latencySeconds from mid-exposure to arrival
   * @param numbersAreCounted whether the frames' numbers come from the camera, so that a lost frame
   *     leaves a gap in them
   */
  public static ArrivalClock live(
      double framesPerSecond, double latencySeconds, boolean numbersAreCounted) {
    return new ArrivalClock(1 / framesPerSecond, latencySeconds, numbersAreCounted, false);
  }

  /** For a camera's own frames. */
  public static ArrivalClock live(CameraDescriptor camera) {
    return live(camera.framesPerSecond(), camera.latencySeconds(), camera.numbersAreCounted());
  }

  /**
   * For recorded frames whose arrivals are the camera's own times: they are passed through, less
   * the latency.
   */
  public static ArrivalClock recorded(double framesPerSecond, double latencySeconds) {
    return new ArrivalClock(1 / framesPerSecond, latencySeconds, true, true);
  }

  /**
   * Takes the next frame of the stream and gives its mid-exposure. Adds {@link FrameMark#AFTER_GAP}
   * to a frame before which some are missing, or whose number is in doubt.
   */
  public long midExposureNanos(Frame frame) {
    long arrivalNanos = frame.arrivalNanos();
    if (!begun) {
      begun = true;
      firstArrivalNanos = arrivalNanos;
      lastNumber = frame.number() - 1;
    }
    long gap = frame.number() - lastNumber - 1;
    boolean isNew = gap >= 0;
    if (gap > 0) {
      missing += gap;
      frame.marks().add(FrameMark.AFTER_GAP);
    }
    lastNumber = Math.max(lastNumber, frame.number());
    if (arrivalsAreExposures) {
      if (isNew) {
        line.add(frame.number(), secondsOf(arrivalNanos));
      }
      return arrivalNanos - Math.round(latencySeconds * NANOS);
    }
    double seconds = secondsOf(arrivalNanos);
    if (isNew) {
      if (line.size() >= ArrivalLine.ENOUGH) {
        if (!numbersAreCounted) {
          watchForLoss(frame, seconds);
        } else if (gap >= LONG_GAP_FRAMES && isOffTheLine(frame.number(), seconds)) {
          // Unplugged, restarted: its rhythm is a new one.
          line.restart();
        }
      }
      follow(frame, seconds);
    }
    double exposure = line.at(frame.number() + shift) - latencySeconds;
    return firstArrivalNanos + Math.round(exposure * NANOS);
  }

  /** Frames known to be missing so far. */
  public long framesMissing() {
    return missing;
  }

  /** Whether a step in the arrivals is being watched: late frames, lost ones, or another rate. */
  public boolean isInDoubt() {
    return suspects > 0 || rates.isInDoubt();
  }

  /** How often the stream has changed its rate so far. */
  public int rateChanges() {
    return rateChanges;
  }

  /** The frame period as measured; the nominal one until enough frames were seen. */
  public double periodSeconds() {
    return line.slope();
  }

  /** How late arrivals are against the line: half of the newest ones are later than this. */
  public double medianLatenessSeconds() {
    return line.lateness(0.5);
  }

  /** One in twenty of the newest arrivals is later than this. */
  public double highLatenessSeconds() {
    return line.lateness(0.95);
  }

  private boolean isOffTheLine(long number, double seconds) {
    return Math.abs(seconds - line.at(number)) > OFF_LINE_PERIODS * line.slope();
  }

  /** Adds the point to the line, unless it shows that the line is another one now. */
  private void follow(Frame frame, double seconds) {
    double number = frame.number() + shift;
    if (line.size() >= ArrivalLine.ENOUGH && rates.isOfAnotherRate(line, number, seconds)) {
      line = rates.take(line);
      rateChanges++;
      suspects = 0;
    } else if (!rates.isEarly()) {
      line.add(number, seconds);
    }
    if (rates.isInDoubt()) {
      frame.marks().add(FrameMark.AFTER_GAP);
    }
  }

  private void watchForLoss(Frame frame, double seconds) {
    double period = line.slope();
    double late = (seconds - line.at(frame.number() + shift)) / period;
    if (late < SUSPECT_PERIODS) {
      suspects = 0;
      return;
    }
    frame.marks().add(FrameMark.AFTER_GAP);
    if (suspects > 0 && Math.abs(late - suspectPeriods) > AGREEING_PERIODS) {
      suspects = 0;
    }
    suspectPeriods = suspects == 0 ? late : Math.min(late, suspectPeriods);
    suspects++;
    if (suspects == CONFIRMING_FRAMES) {
      long lost = Math.max(1, Math.round(suspectPeriods));
      suspects = 0;
      shift += lost;
      missing += lost;
      if (Math.abs(suspectPeriods - lost) > WHOLE_PERIODS) {
        // The camera took up its rhythm anew: the old line's place means nothing any more.
        line.restart();
      }
    }
  }

  private double secondsOf(long nanos) {
    return (nanos - firstArrivalNanos) / NANOS;
  }
}
