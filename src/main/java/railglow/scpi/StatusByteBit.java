package railglow.scpi;

/** The status byte, read by {@code *STB?} (IEEE 488.2, 11.2; SCPI-1999 volume 1, chapter 9). */
public enum StatusByteBit implements StatusBit {
  ERROR_QUEUE(2, "error queue not empty"),
  QUESTIONABLE(3, "questionable summary"),
  MESSAGE_AVAILABLE(4, "message available"),
  STANDARD_EVENT(5, "standard event summary"),
  MASTER_SUMMARY(6, "master summary"),
  OPERATION(7, "operation summary");

  private final int bit;
  private final String text;

  StatusByteBit(int bit, String text) {
    this.bit = bit;
    this.text = text;
  }

  @Override
  public int bit() {
    return bit;
  }

  @Override
  public String text() {
    return text;
  }
}
