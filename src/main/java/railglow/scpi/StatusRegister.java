package railglow.scpi;

/**
 * A condition register with its transition filters, event and enable registers (SCPI-1999 volume 1,
 * chapter 9). 15 bits; the highest is always 0. Not thread-safe.
 */
public final class StatusRegister {
  private static final int MASK = 0x7fff;
  private int condition;
  private int event;
  private int enable;
  private int positive = MASK;
  private int negative;

  /** Sets what is true now; bits that changed as the filters ask for are remembered as events. */
  public void setCondition(int bits) {
    int now = bits & MASK;
    event |= now & ~condition & positive | ~now & condition & negative;
    condition = now;
  }

  public int condition() {
    return condition;
  }

  /** The remembered events; reading clears them. */
  public int takeEvents() {
    int events = event;
    event = 0;
    return events;
  }

  public void clearEvents() {
    event = 0;
  }

  public int enable() {
    return enable;
  }

  public void setEnable(int bits) {
    enable = bits & MASK;
  }

  /**
   * Which changes are remembered: from 0 to 1 (all, at first), and from 1 to 0 (none, at first).
   */
  public void setFilters(int positiveBits, int negativeBits) {
    positive = positiveBits & MASK;
    negative = negativeBits & MASK;
  }

  /** Whether an enabled event is remembered: its bit in the status byte. */
  public boolean summary() {
    return (event & enable) != 0;
  }
}
