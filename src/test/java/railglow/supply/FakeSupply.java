package railglow.supply;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import railglow.time.InventedClock;

/**
 * A supply with a resistor at its output, in invented time. It knows the truth and keeps a list of
 * every exchange. What goes wrong is decided exchange by exchange.
 */
final class FakeSupply implements Supply {
  /** What becomes of one exchange. */
  enum Fate {
    NORMAL,
    /** The words never arrive and no answer comes. */
    LOST_BEFORE,
    /** The supply obeys, but no answer comes. */
    LOST_AFTER,
    /** The supply obeys and answers nonsense. */
    GARBLED
  }

  /** Called in the middle of every exchange, when the words are on their way. */
  interface Interference {
    Fate during(String exchange);
  }

  final List<String> exchanges = new ArrayList<>();
  final Deque<String> errors = new ArrayDeque<>();
  private final SupplyDescriptor descriptor;
  private final InventedClock clock;
  private final int readingParts;
  Interference interference = exchange -> Fate.NORMAL;
  long exchangeNanos = 2_000_000;
  double loadOhms = 6.8;
  double dischargeSeconds = 0.001;
  double amperesOffset;
  double voltsOffset;
  boolean meterFails;
  boolean ignoresOff;
  boolean saysOff;
  boolean tellsSwitchAtOnce = true;
  boolean overCurrentTripped;
  boolean restoresOnClear;
  double volts;
  double amperes = 5;
  private boolean on;
  private boolean outOfStep;
  private double offVolts;
  private long offNanos;

  FakeSupply(SupplyDescriptor descriptor, InventedClock clock, int readingParts) {
    this.descriptor = descriptor;
    this.clock = clock;
    this.readingParts = readingParts;
  }

  /** The truth: whether current can flow. */
  boolean isTrulyOn() {
    return on;
  }

  void force(boolean state) {
    if (on && !state) {
      offVolts = trueVolts();
      offNanos = clock.nanos();
    }
    on = state;
  }

  double trueVolts() {
    if (on) {
      return Math.min(volts, amperes * loadOhms);
    }
    double seconds = (clock.nanos() - offNanos) / 1e9;
    return offVolts * Math.exp(-seconds / dischargeSeconds);
  }

  double trueAmperes() {
    return on ? trueVolts() / loadOhms : 0;
  }

  private interface Work {
    void run() throws SupplyException;
  }

  private void exchange(String words, Work work) throws SupplyException {
    exchanges.add(words);
    clock.advance(exchangeNanos / 2);
    Fate fate = interference.during(words);
    if (fate != Fate.LOST_BEFORE) {
      work.run();
    }
    clock.advance(exchangeNanos / 2);
    if (fate == Fate.NORMAL) {
      return;
    }
    outOfStep = true;
    if (fate == Fate.GARBLED) {
      throw new SupplyException(
          SupplyException.Kind.NOT_UNDERSTOOD, "the supply answered '?' to '" + words + "'");
    }
    clock.advance(descriptor.wire().replyTimeoutNanos());
    throw new SupplyException(
        SupplyException.Kind.NO_ANSWER, "the supply gave no answer to '" + words + "' in time");
  }

  /** Words nobody waits for an answer to. */
  private void blind(String words, Work work) throws SupplyException {
    exchanges.add(words);
    clock.advance(exchangeNanos / 2);
    if (interference.during(words) == Fate.LOST_BEFORE) {
      throw new SupplyException(SupplyException.Kind.LINK_BROKEN, "'" + words + "' was not sent");
    }
    work.run();
  }

  private void inStep(String words, Work work) throws SupplyException {
    if (outOfStep) {
      throw new AssertionError("'" + words + "' was sent on a link that is out of step");
    }
    exchange(words, work);
  }

  @Override
  public SupplyDescriptor descriptor() {
    return descriptor;
  }

  @Override
  public int channel() {
    return 1;
  }

  @Override
  public String identify() throws SupplyException {
    inStep("identify", () -> {});
    return "Railglow,SimulatedSupply,FAKE,0";
  }

  @Override
  public SwitchState switchOff() throws SupplyException {
    Work work =
        () -> {
          if (!ignoresOff) {
            force(false);
          }
        };
    if (!outOfStep) {
      exchange("off", work);
      return told();
    }
    blind("off", work);
    return SwitchState.NOT_TOLD;
  }

  @Override
  public boolean offWithoutMemory() {
    exchanges.add("off");
    outOfStep = true;
    if (interference.during("off without memory") == Fate.LOST_BEFORE) {
      return false;
    }
    force(on && ignoresOff);
    return true;
  }

  @Override
  public SwitchState switchOn() throws SupplyException {
    inStep("on", () -> force(!overCurrentTripped));
    return told();
  }

  private SwitchState told() {
    return tellsSwitchAtOnce ? said() : SwitchState.NOT_TOLD;
  }

  private SwitchState said() {
    return on && !saysOff ? SwitchState.ON : SwitchState.OFF;
  }

  @Override
  public SwitchState readSwitch() throws SupplyException {
    inStep("switch?", () -> {});
    return said();
  }

  @Override
  public void setVolts(double newVolts) throws SupplyException {
    inStep("volts " + newVolts, () -> volts = newVolts);
  }

  @Override
  public OptionalDouble voltsSetting() throws SupplyException {
    inStep("volts?", () -> {});
    return OptionalDouble.of(volts);
  }

  @Override
  public void setAmperes(double newAmperes) throws SupplyException {
    inStep("amperes " + newAmperes, () -> amperes = newAmperes);
  }

  @Override
  public OptionalDouble amperesSetting() throws SupplyException {
    inStep("amperes?", () -> {});
    return OptionalDouble.of(amperes);
  }

  private double overVoltage;
  private double overCurrent;

  @Override
  public void setOverVoltage(double level) throws SupplyException {
    inStep("over-voltage " + level, () -> overVoltage = level);
  }

  @Override
  public OptionalDouble overVoltageSetting() throws SupplyException {
    inStep("over-voltage?", () -> {});
    return OptionalDouble.of(overVoltage);
  }

  @Override
  public void setOverCurrent(double level) throws SupplyException {
    inStep("over-current " + level, () -> overCurrent = level);
  }

  @Override
  public OptionalDouble overCurrentSetting() throws SupplyException {
    inStep("over-current?", () -> {});
    return OptionalDouble.of(overCurrent);
  }

  @Override
  public void clearTrips() throws SupplyException {
    inStep(
        "clear trips",
        () -> {
          overCurrentTripped = false;
          if (restoresOnClear) {
            force(true);
          }
        });
  }

  @Override
  public Optional<String> nextError() throws SupplyException {
    inStep("error?", () -> {});
    return Optional.ofNullable(errors.poll());
  }

  @Override
  public int readingExchanges() {
    return readingParts;
  }

  @Override
  public void readPart(int part, ReadingDraft draft) throws SupplyException {
    inStep("read " + part, () -> {});
    boolean last = part == readingParts - 1;
    if (part == 0) {
      draft.volts(meterFails ? Double.NaN : trueVolts() + voltsOffset);
    }
    if (part == 1 || last) {
      draft.amperes(meterFails ? Double.NaN : trueAmperes() + amperesOffset);
    }
    if (last) {
      draft.outputSwitch(said());
      if (overCurrentTripped) {
        draft.status(StatusMeaning.OVERCURRENT_TRIP);
      } else if (on) {
        draft.status(
            volts <= amperes * loadOhms
                ? StatusMeaning.CONSTANT_VOLTAGE
                : StatusMeaning.CONSTANT_CURRENT);
      }
    }
  }

  @Override
  public void armTimer(double seconds) throws SupplyException {
    inStep("arm timer", () -> {});
  }

  @Override
  public void feedTimer() throws SupplyException {
    inStep("feed timer", () -> {});
  }

  @Override
  public void disarmTimer() throws SupplyException {
    inStep("disarm timer", () -> {});
  }

  @Override
  public boolean isOutOfStep() {
    return outOfStep;
  }

  @Override
  public void resynchronise() throws SupplyException {
    exchange("resynchronise", () -> {});
    outOfStep = false;
  }

  @Override
  public void close() {
    exchanges.add("close");
  }
}
