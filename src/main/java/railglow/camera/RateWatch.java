package railglow.camera;

/**
 * Watches for a stream that changes its rate: frames that are off the line one after the other, on
 * a line of their own with another slope. Frames that are merely late, all by the same, are not
 * that. Allocates nothing per frame. Not thread-safe.
 */
final class RateWatch {
  /** A frame this many periods behind the line belongs to a run of such frames. */
  private static final double LATE_PERIODS = 0.6;

  /** The same before the line, where no frame of the old rate can be. */
  private static final double EARLY_PERIODS = 0.3;

  /**
   * So many in succession are in doubt when they get farther off by this; frames that come in a
   * bunch after a stall get nearer, and late ones stay.
   */
  private static final int DOUBTED_FROM = 4;

  private static final double DOUBTED_GROWTH = 0.06;

  private static final int FIRST_FRAMES = 8;
  private static final int ENOUGH_FRAMES = 32;

  /** How much the run must have gained on the old line, in periods, to be a rate of its own. */
  private static final double GAIN_PERIODS = 0.5;

  private final double[] firstNumbers = new double[FIRST_FRAMES];
  private final double[] firstSeconds = new double[FIRST_FRAMES];
  private ArrivalLine recent;
  private int run;
  private boolean early;
  private final double[] newestOff = new double[DOUBTED_FROM];
  private boolean grows;

  RateWatch(double nominalPeriod) {
    recent = new ArrivalLine(nominalPeriod);
  }

  /**
   * Looks at the next point before it is added to the line.
   *
   * @return whether the recent points are a line of another rate
   */
  boolean isOfAnotherRate(ArrivalLine line, double number, double seconds) {
    double off = (seconds - line.at(number)) / line.slope();
    if (off < LATE_PERIODS && off > -EARLY_PERIODS) {
      run = 0;
      grows = false;
      return false;
    }
    early = off < 0;
    double before = newestOff[run % DOUBTED_FROM];
    newestOff[run % DOUBTED_FROM] = Math.abs(off);
    grows = run >= DOUBTED_FROM && Math.abs(off) - before > DOUBTED_GROWTH;
    if (run < FIRST_FRAMES) {
      firstNumbers[run] = number;
      firstSeconds[run] = seconds;
    }
    run++;
    if (run == FIRST_FRAMES) {
      double steps = firstNumbers[FIRST_FRAMES - 1] - firstNumbers[0];
      recent.restart((firstSeconds[FIRST_FRAMES - 1] - firstSeconds[0]) / steps);
      for (int i = 0; i < FIRST_FRAMES; i++) {
        recent.add(firstNumbers[i], firstSeconds[i]);
      }
    } else if (run > FIRST_FRAMES) {
      recent.add(number, seconds);
    }
    double gained = run * Math.abs(recent.slope() / line.slope() - 1);
    return run >= ENOUGH_FRAMES && gained > GAIN_PERIODS;
  }

  /** The line of the recent points; the old one stays here to be used again. */
  ArrivalLine take(ArrivalLine old) {
    ArrivalLine taken = recent;
    recent = old;
    run = 0;
    grows = false;
    return taken;
  }

  /** Whether the newest point is earlier than a frame of the old rate can be. */
  boolean isEarly() {
    return run > 0 && early;
  }

  /** Whether the newest frames' times are in doubt. */
  boolean isInDoubt() {
    return (grows || isEarly()) && run < ENOUGH_FRAMES;
  }
}
