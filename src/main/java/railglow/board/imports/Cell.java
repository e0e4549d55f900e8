package railglow.board.imports;

/**
 * One cell of a table.
 *
 * @param text without quotes and outer blanks
 * @param line where it starts, from 1
 * @param column where it starts, from 1
 */
public record Cell(String text, int line, int column) {}
