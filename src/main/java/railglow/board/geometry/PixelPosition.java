package railglow.board.geometry;

/**
 * A position in the thermal picture: 0, 0 is the centre of the upper left pixel, rows downwards.
 */
public record PixelPosition(double column, double row) {}
