package railglow.thermal;

/**
 * What one look goes by, besides the score field.
 *
 * @param statistics per width; null where nothing varies
 * @param rules likewise
 * @param lines that have noise of their own; null where none stands out
 */
record Measured(WidthStatistics[] statistics, ScoreRule[] rules, LineNoise lines) {}
