package railglow.board.imports;

import railglow.board.Side;

/**
 * One row of a placement file, in board coordinates: millimetres from the board's lower left
 * corner, x right, y up, seen from the top.
 *
 * @param reference for example C37
 * @param packageName as written
 * @param rotationDegrees counter-clockwise seen from the top, 0 up to 360
 * @param line of the file, from 1
 */
public record PlacedPart(
    String reference,
    String value,
    String packageName,
    double xMillimetres,
    double yMillimetres,
    double rotationDegrees,
    Side side,
    int line) {}
