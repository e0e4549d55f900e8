package railglow.thermal;

/**
 * A peak of the score field.
 *
 * @param score as a normal score
 * @param widthIndex of the filter that showed it best
 */
record Candidate(int column, int row, double score, int widthIndex) {}
