package railglow.cli;

import java.nio.file.Path;
import java.util.Locale;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import railglow.config.Bench;
import railglow.run.handsfree.Contact;
import railglow.run.handsfree.ContactBounds;
import railglow.run.handsfree.ContactShare;
import railglow.run.handsfree.Sensing;
import railglow.run.handsfree.SensingLevel;
import railglow.run.handsfree.SensingNews;
import railglow.run.handsfree.SensingParts;
import railglow.run.handsfree.TouchStart;
import railglow.safety.StopCause;
import railglow.safety.StopLatch;
import railglow.supply.ChannelAbility;
import railglow.supply.OutputPlan;
import railglow.supply.SensePoint;
import railglow.supply.SupplyDescriptor;
import railglow.time.MonotonicClock;

/**
 * The waits of a hands-free session. Where the bench has sense wires and its supply can be told
 * where to sense, the wait is made at the supply's own terminals, so that an open probe with its
 * sense wires can't mislead it, and the rail alone is measured in a short second step.
 */
final class TouchSensing {
  /** A probe that was held a moment ago is felt again within this, or it is gone. */
  private static final double PATIENCE_SECONDS = 4;

  /** A supply that gives more than its limit again and again at once does not keep it. */
  private static final int MOST_SURGES = 2;

  /** So many readings within all limits tell a surge from a supply that does not keep its own. */
  private static final int STEADY_READINGS = 10;

  private final RunSetup setup;
  private final SensingLevel level;
  private final TouchStops stops;
  private final MonotonicClock clock;
  private final Path session;
  private final TouchVoice voice;
  private final TouchScreen screen;
  private final Consumer<String> warned;
  private int waits;
  private long began;
  private boolean gone;
  private int surges;

  TouchSensing(
      RunSetup setup,
      SensingLevel level,
      TouchStops stops,
      MonotonicClock clock,
      Path session,
      TouchVoice voice,
      TouchScreen screen,
      Consumer<String> warned) {
    this.setup = setup;
    this.level = level;
    this.stops = stops;
    this.clock = clock;
    this.session = session;
    this.voice = voice;
    this.screen = screen;
    this.warned = warned;
  }

  /** Whether the contact can be told from the rail. */
  static boolean tellsContact(RunSetup setup) {
    return setup.bench().sensedAtBoard() && setup.supply().commands().sense().isPresent();
  }

  /** Bounds of a contact whose resistance is measured at the board or at the terminals. */
  static ContactBounds bounds(RunSetup setup, boolean atBoard) {
    ChannelAbility channel = setup.supply().channel(setup.bench().supplyChannel());
    return ContactBounds.usual(
        channel.voltsError().at(0),
        channel.amperesError().at(0),
        atBoard ? 0 : setup.bench().leadOhms());
  }

  /** The bounds of the waiting step. */
  static ContactBounds waitingBounds(RunSetup setup) {
    return bounds(setup, setup.bench().sensedAtBoard() && !tellsContact(setup));
  }

  /**
   * Waits for a steady contact. A surge as the probe meets the board has the output driven off and
   * proven off like every breach; then the wait goes on.
   *
   * @param armed whether a contact that is there from the beginning may begin a touch
   * @param first the latch of this wait
   */
  Sensing.Outcome await(boolean armed, StopLatch first) throws UserMistake {
    SensePoint point = tellsContact(setup) ? SensePoint.TERMINALS : wiredPoint();
    boolean mayBegin = armed;
    StopLatch latch = first;
    while (true) {
      Sensing.Outcome outcome =
          sense(point, waitingBounds(setup), mayBegin, latch, voice::felt, screen::sensing);
      if (!isPassed(outcome)) {
        return outcome;
      }
      mayBegin = outcome.armed();
      latch = stops.next(true);
    }
  }

  /** Whether a surge ended it that may be passed over; then it is told. */
  private boolean isPassed(Sensing.Outcome outcome) {
    surges = outcome.isSurge() && outcome.judgedWell() < STEADY_READINGS ? surges + 1 : 0;
    if (!outcome.isSurge() || surges > MOST_SURGES) {
      return false;
    }
    voice.surged(outcome.ending().stop().evidence());
    return true;
  }

  private SensePoint wiredPoint() {
    return setup.bench().sensedAtBoard() ? SensePoint.BOARD : SensePoint.TERMINALS;
  }

  /**
   * What a contact that was just felt is made of; its parts are unknown where they can't be told
   * apart.
   *
   * @return null when the probe has left in the meantime, or a stop came; then {@code last} says
   */
  ContactShare apart(Contact felt, Consumer<Sensing.Outcome> last) throws UserMistake {
    boolean known = felt != null && Double.isFinite(felt.ohms());
    if (!tellsContact(setup) || !known) {
      return setup.bench().sensedAtBoard()
          ? ContactShare.railAlone(felt)
          : ContactShare.together(felt);
    }
    StopLatch latch = stops.next(true);
    began = clock.nanos();
    gone = false;
    Sensing.Outcome rail =
        sense(
            SensePoint.BOARD,
            bounds(setup, true),
            true,
            latch,
            (event, contact) -> held(event, contact, latch),
            news -> lookFor(news, latch));
    last.accept(rail);
    gone |= isPassed(rail);
    if (!rail.isTouched() || gone) {
      return null;
    }
    return rail.contact() == null
        ? ContactShare.together(felt) // a key was quicker than the first reading
        : ContactShare.of(felt, rail.contact());
  }

  /** Whether the last second step ended because the probe had left, or bounced on it. */
  boolean hasGone() {
    return gone;
  }

  private void held(TouchStart.Event event, Contact contact, StopLatch latch) {
    if (event == TouchStart.Event.FELT) {
      began = contact.nanos();
    } else if (event == TouchStart.Event.LIFTED) {
      leave(latch);
    }
    if (event != TouchStart.Event.FELT) {
      voice.felt(event, contact);
    }
  }

  private void lookFor(SensingNews news, StopLatch latch) {
    screen.sensing(news);
    if ((news.nanos() - began) * 1e-9 > PATIENCE_SECONDS + 4) {
      leave(latch);
    }
  }

  private void leave(StopLatch latch) {
    gone = latch.set(StopCause.PROGRAMME_FINISHED, clock.nanos(), "the probe has left") || gone;
  }

  private Sensing.Outcome sense(
      SensePoint point,
      ContactBounds bounds,
      boolean armed,
      StopLatch latch,
      BiConsumer<TouchStart.Event, Contact> told,
      Consumer<SensingNews> news)
      throws UserMistake {
    waits++;
    Path transcript = session.resolve(String.format(Locale.ROOT, "sensing-%02d.txt", waits));
    Bench bench = setup.bench();
    SupplyDescriptor supply = setup.supply();
    OutputPlan plan = level.plan(supply).sensedAt(point);
    try (OpenedSupply opened = OpenedSupply.open(bench, supply, transcript, clock)) {
      Sensing.Outcome outcome =
          new Sensing(
                  new SensingParts(
                      opened.supply(),
                      plan,
                      setup.envelope(),
                      bounds,
                      armed,
                      latch,
                      clock,
                      told,
                      warned,
                      news))
              .run();
      screen.between(outcome.ending().output());
      return outcome;
    }
  }
}
