package railglow.supply;

import java.util.function.Consumer;
import java.util.function.IntConsumer;
import railglow.observed.OutputState;
import railglow.safety.StopLatch;
import railglow.time.MonotonicClock;
import railglow.time.Step;

/**
 * The companion's loop: it waits while beats come, and drives the output off when they stop, or
 * when the controller's pipe closes without a goodbye. While the controller still lives it keeps
 * the output off.
 */
final class CompanionWatch implements Step {
  private static final long LOOK_NANOS = 20_000_000;
  private static final long AGAIN_NANOS = 100_000_000;
  private static final int ATTEMPTS_BEFORE_KILLING = 3;

  /** How it ended. */
  enum Ending {
    NOT_YET,
    GOODBYE,
    PROVEN_OFF,
    NOT_PROVEN
  }

  private final long limitNanos;
  private final long patienceNanos;
  private final MonotonicClock clock;
  private final IntConsumer answer;
  private final Runnable freeTheWay;
  private final KeeperReports reports = new KeeperReports(SupplyListener.NONE, new StopLatch());
  private final OffDrive drive;
  private final CompanionVoice voice;
  private volatile long lastBeatNanos;
  private volatile boolean goodbye;
  private volatile boolean pipeClosed;
  private volatile Ending ending = Ending.NOT_YET;
  private boolean acting;
  private boolean proven;
  private boolean freed;
  private int attempts;
  private long actingSinceNanos;

  /**
   * @param limitNanos longest time without a beat
   * @param patienceNanos how long it tries to prove off once the controller is gone
   * @param answer takes the bytes for the controller; must not throw
   * @param freeTheWay ends a controller that is silent and holds the only way to the supply
   * @param operator takes each sentence for the operator; must not throw
   */
  CompanionWatch(
      Supply supply,
      long limitNanos,
      long patienceNanos,
      MonotonicClock clock,
      IntConsumer answer,
      Runnable freeTheWay,
      Consumer<String> operator) {
    this.limitNanos = limitNanos;
    this.patienceNanos = patienceNanos;
    this.clock = clock;
    this.answer = answer;
    this.freeTheWay = freeTheWay;
    this.voice = new CompanionVoice(operator);
    this.drive = new OffDrive(supply, reports, clock);
    this.lastBeatNanos = clock.nanos();
  }

  /** A byte from the controller; -1 when its pipe has closed. Called on the reader's thread. */
  void heard(int code) {
    if (code == CompanionTalk.GOODBYE) {
      goodbye = true;
    } else if (code < 0) {
      pipeClosed = true;
    } else {
      lastBeatNanos = clock.nanos();
      answer.accept(CompanionTalk.HEARD);
    }
  }

  Ending ending() {
    return ending;
  }

  @Override
  public long step(long nowNanos) {
    if (goodbye) {
      ending = Ending.GOODBYE;
      return FINISHED;
    }
    if (!acting && !pipeClosed && nowNanos - lastBeatNanos <= limitNanos) {
      return nowNanos + LOOK_NANOS;
    }
    if (!acting) {
      acting = true;
      actingSinceNanos = nowNanos;
      answer.accept(CompanionTalk.ACTING);
      voice.acting(nowNanos);
    }
    return act(nowNanos);
  }

  private long act(long nowNanos) {
    attempts++;
    boolean wasProven = proven;
    try {
      proven = drive.attempt(Double.NaN, () -> false);
    } catch (SupplyException e) {
      proven = false;
      reports.state(OutputState.UNKNOWN, e.getMessage(), nowNanos);
    } catch (RuntimeException e) {
      proven = false;
      reports.state(OutputState.UNKNOWN, e.toString(), nowNanos);
    }
    if (proven) {
      if (!wasProven) {
        answer.accept(CompanionTalk.PROVEN);
      }
      if (pipeClosed) {
        ending = Ending.PROVEN_OFF;
        voice.provenOff();
        return FINISHED;
      }
      return clock.nanos() + AGAIN_NANOS;
    }
    if (!freed && !pipeClosed && attempts >= ATTEMPTS_BEFORE_KILLING) {
      freed = true;
      voice.endedTheProgram();
      freeTheWay.run();
    }
    if (pipeClosed && clock.nanos() - actingSinceNanos > patienceNanos) {
      ending = Ending.NOT_PROVEN;
      voice.givenUp(reports.doubt());
      return FINISHED;
    }
    voice.notProven(reports.doubt(), nowNanos);
    return clock.nanos() + LOOK_NANOS;
  }
}
