package railglow.supply;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One channel of a bench supply. Each method makes exactly one exchange (or none, where the supply
 * lacks the words), bounded in time, so that its owner can look for a stop between any two. Owned
 * by one thread; {@link #close} leaves the output as it is.
 */
public interface Supply extends AutoCloseable {
  SupplyDescriptor descriptor();

  /** From 1. */
  int channel();

  /** What the instrument says it is. */
  String identify() throws SupplyException;

  /**
   * Switches off. May be called in any state of the link: if it is out of step the words are sent
   * all the same, but nothing is read and {@link SwitchState#NOT_TOLD} is given.
   */
  SwitchState switchOff() throws SupplyException;

  /**
   * Sends off without needing any memory, in any state, and never throws. Nothing is read, and the
   * link is out of step afterwards. For a program that has no memory left.
   *
   * @return whether the words were handed over
   */
  boolean offWithoutMemory();

  SwitchState switchOn() throws SupplyException;

  SwitchState readSwitch() throws SupplyException;

  void setVolts(double volts) throws SupplyException;

  /** Moves the sensing; does nothing where the supply lacks the words. The output must be off. */
  default void senseAt(SensePoint point) throws SupplyException {}

  /** The voltage the supply says it is set to; empty if it can't be asked. */
  OptionalDouble voltsSetting() throws SupplyException;

  void setAmperes(double amperes) throws SupplyException;

  OptionalDouble amperesSetting() throws SupplyException;

  /** Sets and switches on the over-voltage protection; does nothing if there is none. */
  void setOverVoltage(double volts) throws SupplyException;

  OptionalDouble overVoltageSetting() throws SupplyException;

  void setOverCurrent(double amperes) throws SupplyException;

  OptionalDouble overCurrentSetting() throws SupplyException;

  /** Takes the supply out of a trip; its output must be off and its level harmless. */
  void clearTrips() throws SupplyException;

  /** Takes the oldest entry of the error queue; empty when there is none or no queue. */
  Optional<String> nextError() throws SupplyException;

  /** How many exchanges one reading takes on this supply; at least 1. */
  int readingExchanges();

  /**
   * @param part from 0 to {@link #readingExchanges} - 1
   */
  void readPart(int part, ReadingDraft draft) throws SupplyException;

  /** Starts the supply's own watchdog; does nothing if it has none. */
  void armTimer(double seconds) throws SupplyException;

  void feedTimer() throws SupplyException;

  void disarmTimer() throws SupplyException;

  /** Whether the link is out of step: only {@link #switchOff} may be used until it is not. */
  boolean isOutOfStep();

  /**
   * Brings the link back in step by a new connection or a question that can't be mistaken, and
   * sends off.
   */
  void resynchronise() throws SupplyException;

  @Override
  void close();
}
