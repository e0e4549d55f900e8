package railglow.board;

/** The face of the board a part sits on. */
public enum Side {
  TOP,
  BOTTOM
}
