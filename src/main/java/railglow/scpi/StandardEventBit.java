package railglow.scpi;

/** The standard event status register, read and cleared by {@code *ESR?} (IEEE 488.2, 11.5.1). */
public enum StandardEventBit implements StatusBit {
  OPERATION_COMPLETE(0, "operation complete"),
  REQUEST_CONTROL(1, "request control"),
  QUERY_ERROR(2, "query error"),
  DEVICE_ERROR(3, "device dependent error"),
  EXECUTION_ERROR(4, "execution error"),
  COMMAND_ERROR(5, "command error"),
  USER_REQUEST(6, "user request"),
  POWER_ON(7, "power on");

  private final int bit;
  private final String text;

  StandardEventBit(int bit, String text) {
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
