package railglow.board;

import railglow.board.geometry.Outline;

/**
 * Where a clip or probe holds the board: its contact takes heat of its own from the current.
 *
 * @param name for example "C9", "C9 pin 1"
 * @param outline of what it holds
 */
public record Clip(String name, Outline outline) {}
