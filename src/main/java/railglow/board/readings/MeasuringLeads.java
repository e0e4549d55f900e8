package railglow.board.readings;

/**
 * The leads a rail is measured through.
 *
 * @param ohms of both together; 0 when sensed at the board (4-wire)
 * @param sigmaOhms how well that is known, clips included; 0 likewise
 */
public record MeasuringLeads(double ohms, double sigmaOhms) {
  public static final MeasuringLeads SENSED_AT_BOARD = new MeasuringLeads(0, 0);

  boolean fourWire() {
    return ohms == 0 && sigmaOhms == 0;
  }
}
