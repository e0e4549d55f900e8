package railglow.supply;

/**
 * The words that move a supply's sensing, as templates with {@code {channel}}.
 *
 * @param atTerminals for two wires
 * @param atBoard for four wires
 */
public record SenseWords(String atTerminals, String atBoard) {}
