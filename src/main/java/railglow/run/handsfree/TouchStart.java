package railglow.run.handsfree;

import java.util.Optional;

/**
 * Decides from what is felt when a touch begins and what the operator should be told. A probe that
 * is still held from the last touch begins nothing before it was in the air. Not thread-safe.
 */
public final class TouchStart {
  private static final double BAD_AFTER_SECONDS = 3;
  private static final double TELL_AGAIN_SECONDS = 5;

  /** What has just happened. */
  public enum Event {
    /** A probe that was held from the last touch is in the air: the next touch may begin. */
    READY,
    /** The probe has met something. */
    FELT,
    /** The contact does not settle; told again from time to time. */
    NOT_SETTLING,
    /** The contact is steady: the run may begin. */
    STEADY,
    /** The probe has left the board. */
    LIFTED
  }

  private boolean armed;
  private boolean touching;
  private double tellAtSeconds = BAD_AFTER_SECONDS;

  /**
   * @param armed whether a contact that is there from the beginning may begin a touch
   */
  public TouchStart(boolean armed) {
    this.armed = armed;
  }

  /** Whether a contact may begin a touch without having been lifted first. */
  public boolean isArmed() {
    return armed;
  }

  public Optional<Event> take(Contact contact) {
    if (!contact.state().isTouching()) {
      boolean left = touching;
      boolean ready = !armed;
      touching = false;
      armed = true;
      tellAtSeconds = BAD_AFTER_SECONDS;
      if (left) {
        return Optional.of(Event.LIFTED);
      }
      return ready ? Optional.of(Event.READY) : Optional.empty();
    }
    if (!touching) {
      touching = true;
      return armed ? Optional.of(Event.FELT) : Optional.empty();
    }
    if (!armed) {
      return Optional.empty();
    }
    if (contact.state() == ContactState.STEADY) {
      armed = false;
      return Optional.of(Event.STEADY);
    }
    if (contact.touchedSeconds() >= tellAtSeconds) {
      tellAtSeconds = contact.touchedSeconds() + TELL_AGAIN_SECONDS;
      return Optional.of(Event.NOT_SETTLING);
    }
    return Optional.empty();
  }
}
