package railglow.scpi;

/** The operation status register as the standard names it (SCPI-1999 volume 1, chapter 9). */
public enum OperationBit implements StatusBit {
  CALIBRATING(0, "calibrating"),
  SETTLING(1, "settling"),
  RANGING(2, "ranging"),
  SWEEPING(3, "sweeping"),
  MEASURING(4, "measuring"),
  WAITING_FOR_TRIGGER(5, "waiting for trigger"),
  WAITING_FOR_ARM(6, "waiting for arm"),
  CORRECTING(7, "correcting"),
  DESIGNER_8(8, "designer defined 8"),
  DESIGNER_9(9, "designer defined 9"),
  DESIGNER_10(10, "designer defined 10"),
  DESIGNER_11(11, "designer defined 11"),
  DESIGNER_12(12, "designer defined 12"),
  INSTRUMENT(13, "instrument summary"),
  PROGRAM_RUNNING(14, "program running");

  private final int bit;
  private final String text;

  OperationBit(int bit, String text) {
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
