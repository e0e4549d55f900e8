package railglow.board.geometry;

/**
 * A mark found both on the board and in the thermal picture.
 *
 * @param name for example H1
 * @param xMillimetres on the board
 * @param yMillimetres on the board
 * @param column in the thermal picture, 0 is the centre of the left column
 * @param row in the thermal picture, 0 is the centre of the top row
 */
public record RegistrationPoint(
    String name, double xMillimetres, double yMillimetres, double column, double row) {}
