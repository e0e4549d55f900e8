package railglow.scpi;

/**
 * The whole status system of an instrument: error queue, standard event register, operation and
 * questionable registers, status byte (IEEE 488.2, chapter 11; SCPI-1999 volume 1, chapter 9). Used
 * by instruments that are simulated. Not thread-safe.
 */
public final class InstrumentStatus {
  private final ErrorQueue errors;
  private final StatusRegister questionable = new StatusRegister();
  private final StatusRegister operation = new StatusRegister();
  private int event = StandardEventBit.POWER_ON.weight();
  private int eventEnable;
  private int serviceEnable;

  public InstrumentStatus(int errorQueueCapacity) {
    errors = new ErrorQueue(errorQueueCapacity);
  }

  public ErrorQueue errors() {
    return errors;
  }

  public StatusRegister questionable() {
    return questionable;
  }

  public StatusRegister operation() {
    return operation;
  }

  /** Queues an error and sets the bit of its class in the standard event register. */
  public void report(ErrorEntry entry) {
    errors.add(entry);
    ScpiError.eventBit(entry.code()).ifPresent(this::raise);
  }

  public void raise(StandardEventBit bit) {
    event |= bit.weight();
  }

  /** {@code *ESR?}: reading clears. */
  public int takeStandardEvents() {
    int events = event;
    event = 0;
    return events;
  }

  /** {@code *CLS}: clears the error queue and all events, not the enables. */
  public void clear() {
    errors.clear();
    event = 0;
    questionable.clearEvents();
    operation.clearEvents();
  }

  public int eventEnable() {
    return eventEnable;
  }

  /** {@code *ESE}, 0..255. */
  public void setEventEnable(int bits) {
    eventEnable = bits & 0xff;
  }

  public int serviceEnable() {
    return serviceEnable;
  }

  /** {@code *SRE}, 0..255; bit 6 can't be enabled. */
  public void setServiceEnable(int bits) {
    serviceEnable = bits & 0xff & ~StatusByteBit.MASTER_SUMMARY.weight();
  }

  /**
   * {@code *STB?}: reading clears nothing.
   *
   * @param messageAvailable whether a reply waits to be read
   */
  public int statusByte(boolean messageAvailable) {
    int status = 0;
    status |= errors.isEmpty() ? 0 : StatusByteBit.ERROR_QUEUE.weight();
    status |= questionable.summary() ? StatusByteBit.QUESTIONABLE.weight() : 0;
    status |= messageAvailable ? StatusByteBit.MESSAGE_AVAILABLE.weight() : 0;
    status |= (event & eventEnable) != 0 ? StatusByteBit.STANDARD_EVENT.weight() : 0;
    status |= operation.summary() ? StatusByteBit.OPERATION.weight() : 0;
    boolean master = (status & serviceEnable) != 0;
    return status | (master ? StatusByteBit.MASTER_SUMMARY.weight() : 0);
  }
}
