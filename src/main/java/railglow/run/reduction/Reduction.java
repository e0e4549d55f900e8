package railglow.run.reduction;

import java.util.ArrayDeque;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import railglow.camera.motion.MotionWatch;
import railglow.journal.CameraFacts;
import railglow.journal.Entry;
import railglow.journal.RunHeader;
import railglow.observed.Edge;
import railglow.observed.Frame;
import railglow.observed.FrameMark;
import railglow.observed.SupplyReading;
import railglow.pulse.CycleWindow;
import railglow.thermal.Look;
import railglow.thermal.QuarterAccumulator;
import railglow.thermal.QuarterMeans;
import railglow.thermal.Samples;

/**
 * From frames, edges and readings to looks: the one way that a run in progress and a replay share.
 *
 * <p>A frame waits until the edges around its mid-exposure are known, so the result depends on what
 * was seen and not on the order in which it came in. Frames must be fed in the order of their
 * numbers, edges and readings in the order of their times. Not thread-safe.
 */
public final class Reduction {
  private static final double NANOS = 1e9;
  private static final FrameMark[] UNUSABLE = {
    FrameMark.FROZEN, FrameMark.SHUTTER, FrameMark.MOVED, FrameMark.DAMAGED
  };

  /** These change what every pixel sees: the cycle they fall into can't be used at all. */
  private static final Set<FrameMark> SPOILING = EnumSet.of(FrameMark.SHUTTER, FrameMark.MOVED);

  /** A quarter needs this share of the frames that it could have. */
  private static final double SHARE_NEEDED = 0.5;

  /** An edge may be this share of a period off its time. */
  private static final double EDGE_TOLERANCE = 0.05;

  private final RunHeader header;
  private final FrameSight sight;
  private final MotionWatch motion;
  private final ReductionListener listener;
  private final FrameLabeller labeller;
  private final QuarterAccumulator quarters;
  private final UsedTimes usedTimes = new UsedTimes();
  private final CycleLooks looks;
  private final LeadInMean leadIn;
  private final PixelRepair pixels;
  private final SupplyLevels levels;
  private final SwungCycles swungCycles = new SwungCycles();
  private final FrameTally tally = new FrameTally();
  private final ArrayDeque<SeenFrame> waiting = new ArrayDeque<>();
  private final ArrayDeque<SeenFrame> spare = new ArrayDeque<>();
  private long knownUntilNanos;
  private int open = -1;
  private int closedUntil;
  private String spoiled = "";
  private int cyclesClosed;
  private double framesPerSecond;

  /**
   * @param header of the run: camera, cycles, detection
   * @param like one image of the camera's kind and size
   */
  public Reduction(RunHeader header, Samples like, ReductionListener listener) {
    this(header, like, listener, LooksMade.ALL);
  }

  /** As above, for those whom only the end concerns: looks may be left out. */
  public Reduction(RunHeader header, Samples like, ReductionListener listener, LooksMade made) {
    CameraFacts camera = header.camera();
    this.header = header;
    this.motion = new MotionWatch(like);
    this.sight = new FrameSight(camera, like, motion, listener);
    this.listener = listener;
    this.framesPerSecond = camera.framesPerSecond();
    double quarter = header.detection().periodSeconds() / 4;
    this.labeller =
        new FrameLabeller(
            header.cycles(),
            nanos(0.5 / framesPerSecond),
            nanos(Math.min(camera.timeConstantSeconds(), quarter / 4)));
    this.quarters = new QuarterAccumulator(camera.width(), camera.height(), scale());
    this.looks = new CycleLooks(header.detection(), camera.width(), camera.height(), made);
    this.leadIn = new LeadInMean(camera.width(), camera.height());
    this.pixels = new PixelRepair(like, camera.saturationValue());
    this.levels = new SupplyLevels(header.leadOhms());
    this.knownUntilNanos = Long.MIN_VALUE;
  }

  /** Says that every edge there will ever be has been given: for recorded runs. */
  public void allEdgesKnown() {
    knownUntilNanos = Long.MAX_VALUE;
    drain();
  }

  public void onEdge(Edge edge) {
    labeller.edgeMade(edge);
    levels.edgeMade(edge);
    knownUntilNanos = Math.max(knownUntilNanos, edge.confirmedNanos());
    drain();
  }

  public void onReading(SupplyReading reading) {
    levels.reading(reading);
    knownUntilNanos = Math.max(knownUntilNanos, reading.endNanos());
    drain();
  }

  /** The half around this time does not count: what the source got in it is not known. */
  public void onContactSwung(Entry.ContactSwung swung) {
    swungCycles.note(labeller.cycleAt(swung.nanos()), swung);
  }

  /** Takes the frame and its ownership; it comes back through the listener. */
  public void onFrame(Frame frame) {
    onSeen(sight.see(frame, spare.isEmpty() ? new SeenFrame() : spare.poll()));
  }

  /** For a thread that sees every frame before it comes here; {@link #onFrame} does both. */
  public FrameSight sight() {
    return sight;
  }

  /** Takes a frame that {@link #sight} has seen, and its ownership, as {@link #onFrame} does. */
  public void onSeen(SeenFrame seen) {
    if (seen.losesPlace) {
      listener.onPlaceLost(seen.midNanos);
    }
    waiting.add(seen);
    drain();
  }

  /** Nothing more will come: closes what is open and looks a last time. */
  public Reduced finish() {
    allEdgesKnown();
    closeUntil(labeller.count());
    CameraFacts camera = header.camera();
    double zero = Double.isNaN(camera.celsiusAtZero()) ? 0 : camera.celsiusAtZero();
    int cyclesUsed = looks.cyclesUsed();
    Look look = looks.last();
    return new Reduced(
        look,
        look == null ? null : looks.trust(),
        leadIn.isEmpty() ? null : pixels.repaired(leadIn.plane(scale(), zero)),
        cyclesUsed,
        cyclesClosed - cyclesUsed,
        tally.ofRun(),
        levels.meanVolts(),
        levels.meanAmperes(),
        levels.meanWatts());
  }

  /**
   * Whether the end would be another with the looks that were left out: never with {@link
   * LooksMade#ALL} and {@link LooksMade#UNTIL_CALLED}. To be asked when this has finished.
   */
  public boolean lacksLooks() {
    return looks.lacksLooks();
  }

  private void drain() {
    while (!waiting.isEmpty() && isKnown(waiting.peek().midNanos)) {
      SeenFrame next = waiting.poll();
      Frame frame = next.frame;
      use(next);
      next.frame = null;
      spare.add(next);
      listener.onReleased(frame);
    }
  }

  private boolean isKnown(long midNanos) {
    return knownUntilNanos == Long.MAX_VALUE
        || midNanos + labeller.lookAheadNanos() <= knownUntilNanos;
  }

  private void use(SeenFrame next) {
    Frame frame = next.frame;
    long midNanos = next.midNanos;
    int cycle = labeller.cycleAt(midNanos);
    if (cycle < 0) {
      useOutside(frame, midNanos);
      return;
    }
    if (cycle < closedUntil) {
      tally.outside("late");
      return;
    }
    closeUntil(cycle);
    open = cycle;
    pixels.settle(listener, midNanos);
    FrameMark unusable = unusable(frame);
    if (unusable != null) {
      tally.leftOut(FrameTally.name(unusable));
      if (SPOILING.contains(unusable)) {
        spoiled = "a " + FrameTally.name(unusable) + " event";
      }
      return;
    }
    if (Double.isNaN(next.framesPerSecond)) {
      tally.leftOut(FrameTally.name(FrameMark.AFTER_GAP));
      return;
    }
    if (labeller.inTransition(cycle, midNanos)) {
      tally.leftOut(FrameTally.name(FrameMark.TRANSITION));
      return;
    }
    framesPerSecond = next.framesPerSecond;
    int quarter = labeller.window(cycle).quarterAt(midNanos);
    usedTimes.note(quarter, midNanos);
    quarters.add(
        quarter, motion.corrected(pixels.repaired(frame.samples()), next.moveX, next.moveY));
  }

  private void useOutside(Frame frame, long midNanos) {
    tally.outside(FrameTally.name(FrameMark.OUTSIDE));
    boolean before = labeller.count() == 0 || midNanos < labeller.window(0).startNanos();
    if (before) {
      if (unusable(frame) == null) {
        leadIn.add(frame.samples());
        pixels.learn(frame);
      }
    } else if (midNanos >= labeller.window(labeller.count() - 1).endNanos()) {
      closeUntil(labeller.count());
    }
  }

  /** Closes every cycle before an index; those without a single frame were never begun. */
  private void closeUntil(int cycle) {
    if (open >= 0 && open < cycle) {
      close(open);
      open = -1;
    }
    closedUntil = Math.max(closedUntil, cycle);
  }

  private void close(int cycle) {
    CycleWindow window = labeller.window(cycle);
    int[] used = new int[4];
    for (int quarter = 1; quarter <= 4; quarter++) {
      used[quarter - 1] = quarters.framesIn(quarter);
    }
    spoiled = swungCycles.reason(cycle, spoiled);
    String reason = rejection(cycle, used);
    listener.onCycle(
        new Entry.Cycle(
            window.endNanos(), window.cycle(), reason.isEmpty(), reason, used, tally.takeCycle()));
    cyclesClosed++;
    spoiled = "";
    if (reason.isEmpty()) {
      QuarterMeans means =
          pixels
              .unsaturated(quarters.finish(window.cycle()), listener, window.endNanos())
              .at(usedTimes.take(window, labeller.edgesMade(cycle)));
      looks
          .take(means, window.inverted())
          .ifPresent(look -> listener.onLook(look, window.endNanos()));
    } else {
      quarters.reset();
      usedTimes.reset();
    }
  }

  private String rejection(int cycle, int[] used) {
    CycleWindow window = labeller.window(cycle);
    double period = window.endNanos() - window.startNanos();
    String fault = labeller.edgeFault(cycle, Math.round(EDGE_TOLERANCE * period));
    if (!fault.isEmpty() || !spoiled.isEmpty()) {
      return fault.isEmpty() ? spoiled : fault;
    }
    long[] bounds = {
      window.startNanos(),
      window.onNanos(),
      window.middleNanos(),
      window.offNanos(),
      window.endNanos()
    };
    for (int i = 0; i < 4; i++) {
      double expected = (bounds[i + 1] - bounds[i]) / NANOS * framesPerSecond;
      if (used[i] < Math.max(1, SHARE_NEEDED * expected - 1)) {
        return String.format(
            Locale.ROOT,
            "too few frames in quarter %d: %d of about %.0f",
            i + 1,
            used[i],
            expected);
      }
    }
    return "";
  }

  private double scale() {
    double kelvinPerCount = header.camera().kelvinPerCount();
    return Double.isNaN(kelvinPerCount) ? 1 : kelvinPerCount;
  }

  /** The first mark that makes a frame unusable; null when there is none. */
  private static FrameMark unusable(Frame frame) {
    for (FrameMark mark : UNUSABLE) {
      if (frame.marks().contains(mark)) {
        return mark;
      }
    }
    return null;
  }

  private static long nanos(double seconds) {
    return Math.round(seconds * NANOS);
  }
}
