package railglow.board;

/**
 * A part more delicate than its rail.
 *
 * @param reference of the part
 * @param highestVolts at its rail; infinite when only the current is limited
 * @param mostAmperes into its rail; infinite when only the voltage is limited
 */
public record PartLimit(String reference, double highestVolts, double mostAmperes) {}
