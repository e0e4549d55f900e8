package railglow.run.handsfree;

/**
 * What is known of the probe's contact after a reading.
 *
 * @param nanos end of that reading
 * @param ohms middle resistance of the last stretch, leads taken off; of the rail alone where the
 *     supply senses at the board, else rail and contact together; NaN when nothing flows
 * @param lowestOhms within that stretch; NaN likewise
 * @param highestOhms within that stretch; infinite when the contact was lost in it; NaN likewise
 * @param sinceNanos when this touch was first felt; means nothing in the air
 */
public record Contact(
    ContactState state,
    long nanos,
    double ohms,
    double lowestOhms,
    double highestOhms,
    long sinceNanos) {
  static Contact none(ContactState state, long nanos) {
    return new Contact(state, nanos, Double.NaN, Double.NaN, Double.NaN, nanos);
  }

  /** How long the probe has been felt, settled or not. */
  public double touchedSeconds() {
    return state.isTouching() ? (nanos - sinceNanos) * 1e-9 : 0;
  }
}
