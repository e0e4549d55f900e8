package railglow.scpi;

/**
 * The questionable status register as the standard names it (SCPI-1999 volume 1, chapter 9).
 * Supplies give bits 0 and 1 meanings of their own, regulation in one family and trips in another,
 * so a driver must go by its descriptor.
 */
public enum QuestionableBit implements StatusBit {
  VOLTAGE(0, "voltage"),
  CURRENT(1, "current"),
  TIME(2, "time"),
  POWER(3, "power"),
  TEMPERATURE(4, "temperature"),
  FREQUENCY(5, "frequency"),
  PHASE(6, "phase"),
  MODULATION(7, "modulation"),
  CALIBRATION(8, "calibration"),
  DESIGNER_9(9, "designer defined 9"),
  DESIGNER_10(10, "designer defined 10"),
  DESIGNER_11(11, "designer defined 11"),
  DESIGNER_12(12, "designer defined 12"),
  INSTRUMENT(13, "instrument summary"),
  COMMAND_WARNING(14, "command warning");

  private final int bit;
  private final String text;

  QuestionableBit(int bit, String text) {
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
