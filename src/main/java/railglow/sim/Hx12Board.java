package railglow.sim;

import java.util.List;
import railglow.sim.heat.PlacedPart;
import railglow.sim.heat.PlateMaterial;
import railglow.sim.picture.BoardView;

/**
 * The HX-12 greenhouse irrigation controller as heat and picture know it: four copper layers, 120 x
 * 80 mm, the larger parts and those of the 3V3 rail. An invented board.
 */
final class Hx12Board {
  /** Reference, x, y, width, height, body height (all mm), emissivity. */
  private static final String PARTS =
      """
      J1 8 66 14 16 12 0.90
      J2 8 40 14 22 12 0.90
      J3 8 14 14 18 12 0.90
      J4 112 66 12 18 10 0.30
      Q1 26 70 6.5 6 2.3 0.90
      Q2 26 58 6.5 6 2.3 0.90
      Q3 26 46 6.5 6 2.3 0.90
      Q4 26 34 6.5 6 2.3 0.90
      D1 24 22 4.6 2.8 2.3 0.90
      D2 24 14 4.6 2.8 2.3 0.90
      L1 42 68 10 10 4 0.90
      L2 60 70 6 6 3 0.90
      L3 96 44 4 4 2 0.90
      U1 42 52 5 6.2 1.5 0.90
      U2 60 58 5 4 1.5 0.90
      U3 72 50 10 10 1.4 0.90
      U4 96 56 6.5 3.5 1.6 0.90
      U5 92 30 5 4 1.2 0.90
      U6 58 30 6 5 1.5 0.90
      U7 44 28 5 4 1.5 0.90
      U8 106 36 4.4 5 1.2 0.90
      Y1 84 58 3.2 2.5 0.8 0.15
      K1 46 12 15 11 12 0.92
      C1 34 68 8 8 10 0.25
      C2 52 60 6.3 6.3 6 0.25
      C10 66 66 3.2 1.6 1.6 0.90
      C11 66 62 3.2 1.6 1.6 0.90
      C31 66 44 2.0 1.25 1.25 0.90
      C32 78 44 2.0 1.25 1.25 0.90
      C33 80 50 2.0 1.25 1.25 0.90
      C34 66 36 2.0 1.25 1.25 0.90
      C35 72 36 2.0 1.25 1.25 0.90
      C36 72 31 2.0 1.25 1.25 0.90
      C37 78 31 2.0 1.25 1.25 0.90
      C38 84 31 2.0 1.25 1.25 0.90
      C39 86 36 2.0 1.25 1.25 0.90
      C40 98 30 2.0 1.25 1.25 0.90
      R21 78 26 1.6 0.8 0.5 0.88
      R22 82 26 1.6 0.8 0.5 0.88
      R23 70 26 1.6 0.8 0.5 0.88
      TP1 90 20 2 2 0.2 0.06
      TP2 96 20 2 2 0.2 0.06
      TP3 102 20 2 2 0.2 0.06
      SH1 104 50 14 14 2.5 0.12
      """;

  /** Soldered at two end caps. */
  private static final double CONTACT_SMALL = 60_000;

  /** C37 is cracked at its end cap: most of its heat arises at the pad. */
  private static final double CRACKED_BODY_SHARE = 0.15;

  private static final double CONTACT_LARGE = 4_000;
  private static final double SMALL_SQUARE_MILLIMETRES = 6;
  private static final double BOARD_MILLIMETRES = 1.6;

  /** Four layers of 70 um: the valves draw amperes. */
  private static final double COPPER_MILLIMETRES = 0.28;

  /** A greenhouse is damp: the board is varnished, about 0.15 mm thick. */
  private static final double COAT_SECONDS = 0.2;

  private Hx12Board() {}

  static BoardLayout layout() {
    return new BoardLayout(
        120,
        80,
        1.0,
        PlateMaterial.board(BOARD_MILLIMETRES * 1e-3, COPPER_MILLIMETRES * 1e-3),
        parts(),
        0.90,
        0.8,
        COAT_SECONDS,
        BoardView.fromAbove(2, 7.5, 175.5));
  }

  private static List<PlacedPart> parts() {
    return PARTS.lines().map(Hx12Board::part).toList();
  }

  private static PlacedPart part(String line) {
    String[] word = line.strip().split(" +");
    double[] number = new double[word.length];
    for (int i = 1; i < word.length; i++) {
      number[i] = Double.parseDouble(word[i]);
    }
    boolean small = number[3] * number[4] < SMALL_SQUARE_MILLIMETRES;
    PlacedPart part =
        PlacedPart.of(
            word[0],
            number[1] * 1e-3,
            number[2] * 1e-3,
            number[3] * 1e-3,
            number[4] * 1e-3,
            number[5] * 1e-3,
            small ? CONTACT_SMALL : CONTACT_LARGE,
            number[6]);
    return word[0].equals("C37") ? part.withBodyShare(CRACKED_BODY_SHARE) : part;
  }
}
