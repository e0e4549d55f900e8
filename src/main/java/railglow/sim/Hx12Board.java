package railglow.sim;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import railglow.sim.heat.PlacedPart;
import railglow.sim.heat.PlateMaterial;
import railglow.sim.picture.BoardView;

/**
 * The HX-12 greenhouse irrigation controller as heat and picture know it: four copper layers, 120 x
 * 80 mm, its parts as in the example's placement, with the bare metal of its mounting holes (H) and
 * fiducial marks (FID). An invented board.
 */
final class Hx12Board {
  /** The place of the short in {@link #withShortInChip}. */
  static final String CHIP_CORNER = "U6.corner";

  /** The place of the trace in {@link #withLongTrace}. */
  static final String LONG_TRACE = "trace";

  /** The resistor of the bench without a board. */
  static final String RESISTOR = "R1";

  /** Reference, x, y, width, height, body height (all mm), emissivity. */
  private static final String PARTS =
      """
      J1 8 60.5 8 10.2 11 0.9
      F1 8 50 3.2 4.5 1.5 0.85
      D1 8 44.6 4.6 3.6 2.3 0.9
      Q1 16.5 49.5 4.9 3.9 1.5 0.9
      R1 16.5 45.4 1.6 0.8 0.8 0.9
      C1 8.5 35 10 10 10 0.25
      C2 17.2 40.6 2.5 3.2 2 0.9
      U1 24.2 42 4.9 3.9 1.5 0.9
      R10 24.2 37.4 1.6 0.8 0.8 0.9
      R11 24.2 35.4 1.6 0.8 0.8 0.9
      D6 31.5 35.2 4.3 2.6 2.2 0.9
      L1 34.5 43 10 10 4 0.9
      C3 42.6 45.4 2.5 3.2 2 0.9
      C4 42.6 40.6 2.5 3.2 2 0.9
      U2 18 28 4.9 3.9 1.5 0.9
      C5 10.4 26.5 1.6 3.2 1.6 0.9
      L2 28 28.2 8 8 3.5 0.9
      C6 35.4 30.4 2.5 3.2 2 0.9
      C7 35.4 26 2.5 3.2 2 0.9
      R12 18 23.4 1.6 0.8 0.8 0.9
      R13 21 23.4 1.6 0.8 0.8 0.9
      C8 8.6 15.6 1.25 2 1.25 0.9
      U3 12.6 15.6 2.9 1.6 1.2 0.9
      L3 19.6 15.6 6 6 2.8 0.9
      C9 25.4 17.4 1.25 2 1.25 0.9
      C10 25.4 13.6 1.25 2 1.25 0.9
      R14 12.6 11.6 1.6 0.8 0.8 0.9
      R15 12.6 9.6 1.6 0.8 0.8 0.9
      U4 32 17 2.9 1.6 1.2 0.9
      C11 28.8 12.4 1.6 0.8 0.8 0.9
      C12 35.6 17 0.8 1.6 0.8 0.9
      U5 37 10.6 3 3 0.9 0.9
      L4 42.6 10.6 4 4 1.8 0.9
      C13 47 12.6 1.25 2 1.25 0.9
      C14 47 8.8 1.25 2 1.25 0.9
      U6 58 30 14 14 1.4 0.9
      C20 48.2 34.8 0.5 1 0.5 0.9
      C21 53.4 19.6 1 0.5 0.5 0.9
      C22 48.2 30 0.5 1 0.5 0.9
      C23 63.6 40.4 1 0.5 0.5 0.9
      C24 67.8 24.6 0.5 1 0.5 0.9
      C25 67.8 36 0.5 1 0.5 0.9
      Y1 47.4 25.6 2.5 3.2 0.8 0.15
      U8 70.4 12 4.9 3.9 1.5 0.9
      C26 75 12 0.5 1 0.5 0.9
      U9 59.6 12 3 3 1 0.9
      C27 63.8 12 0.5 1 0.5 0.9
      C36 80.8 31 0.8 1.6 0.8 0.9
      C37 78 31 1.25 2 1.25 0.9
      C38 75.6 31.3 0.5 1 0.5 0.9
      R22 77.6 34.2 1.6 0.8 0.8 0.9
      R23 80.8 34.2 1.6 0.8 0.8 0.9
      FB1 78 27.9 1.6 0.8 0.8 0.9
      U10 87 31 4.4 6.5 1 0.9
      C39 92.6 33 0.8 1.6 0.8 0.9
      R30 101 37.4 1.6 0.8 0.8 0.9
      R31 101 34.4 1.6 0.8 0.8 0.9
      R32 101 31.4 1.6 0.8 0.8 0.9
      R33 101 28.4 1.6 0.8 0.8 0.9
      J7 114 34 2.5 15.2 6 0.9
      A1 91 14 25 18 3 0.3
      C40 80.6 24.8 2 1.25 1.25 0.9
      U7 107.4 14 4.9 3.9 1.5 0.9
      C41 107.4 19 1.6 0.8 0.8 0.9
      J6 115 17 8 15.3 11 0.9
      J2 24 73 10.2 8 11 0.9
      J3 40 73 10.2 8 11 0.9
      J4 56 73 10.2 8 11 0.9
      J5 72 73 10.2 8 11 0.9
      Q2 24 63 6.5 3.5 1.6 0.9
      Q3 40 63 6.5 3.5 1.6 0.9
      Q4 56 63 6.5 3.5 1.6 0.9
      Q5 72 63 6.5 3.5 1.6 0.9
      D2 24 56.6 4.3 2.6 2.2 0.9
      D3 40 56.6 4.3 2.6 2.2 0.9
      D4 56 56.6 4.3 2.6 2.2 0.9
      D5 72 56.6 4.3 2.6 2.2 0.9
      K1 103 57 20 16 15 0.92
      Q6 88 58 2.9 1.3 1 0.9
      D7 88 53.4 4.3 2.6 2.2 0.9
      J8 99 73 10.2 8 11 0.9
      D8 112 46.4 2 1.25 0.8 0.9
      R9 107.6 46.4 1.6 0.8 0.8 0.9
      H1 4 4 6 6 0.1 0.06
      H2 116 4 6 6 0.1 0.06
      H3 116 76 6 6 0.1 0.06
      H4 4 76 6 6 0.1 0.06
      FID1 84 46 2 2 0.1 0.06
      FID2 28 6 2 2 0.1 0.06
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

  /** The trunk of 3V3 is broad copper from the converter's capacitor C9 to C37; mm. */
  private static final double TRUNK_START_X = 25.4;

  private static final double TRUNK_START_Y = 17.4;
  private static final double TRUNK_END_X = 78;
  private static final double TRUNK_END_Y = 31;

  /** Branches off it are 0.2 mm wide in 35 um of copper: 17.2 nohm m / (0.2 mm 35 um). */
  private static final double STUB_OHMS_PER_MILLIMETRE = 2.46e-3;

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
        BoardView.fromAbove(2, 8, 176));
  }

  /** The layout with a spot of heat under one corner of the large chip. */
  static BoardLayout withShortInChip() {
    return with(
        PlacedPart.of(CHIP_CORNER, 62.5e-3, 34.5e-3, 2e-3, 2e-3, 0.3e-3, CONTACT_LARGE, 0.9));
  }

  /** The layout with a narrow trace of some length that is no part, across a place without any. */
  static BoardLayout withLongTrace() {
    return with(
        PlacedPart.of(LONG_TRACE, 72.5e-3, 26e-3, 1e-3, 20e-3, 0.05e-3, CONTACT_LARGE, 0.9));
  }

  /** The layout with something more that the camera does not see. */
  private static BoardLayout with(PlacedPart hidden) {
    BoardLayout layout = layout();
    List<PlacedPart> parts = new ArrayList<>(layout.parts());
    parts.add(hidden.onBottom());
    return layout.withParts(parts);
  }

  /** The bare board, out of focus so to speak, with a resistor held by its wires before it. */
  static BoardLayout bareResistor() {
    return layout()
        .withParts(
            List.of(
                new PlacedPart(RESISTOR, 60e-3, 40e-3, 2e-3, 1.25e-3, 2.75e-3, 7e-3, 1, 0.9, true)))
        .withCoatSeconds(0);
  }

  /**
   * Copper from each part's pad to the trunk of 3V3: the way to the nearest place of the trunk, at
   * the resistance of the narrow copper.
   */
  static Map<String, Double> stubOhms() {
    Map<String, Double> stubs = new HashMap<>();
    double alongX = TRUNK_END_X - TRUNK_START_X;
    double alongY = TRUNK_END_Y - TRUNK_START_Y;
    for (PlacedPart part : parts()) {
      double x = part.xMetres() * 1e3 - TRUNK_START_X;
      double y = part.yMetres() * 1e3 - TRUNK_START_Y;
      double share =
          Math.max(0, Math.min(1, (x * alongX + y * alongY) / (alongX * alongX + alongY * alongY)));
      double millimetres = Math.hypot(x - share * alongX, y - share * alongY);
      stubs.put(part.name(), STUB_OHMS_PER_MILLIMETRE * millimetres);
    }
    return stubs;
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
