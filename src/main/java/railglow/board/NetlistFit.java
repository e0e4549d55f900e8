package railglow.board;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import railglow.board.imports.Netlist;
import railglow.board.imports.Pad;
import railglow.board.imports.PlacedPart;

/**
 * Lays a netlist over a placement: both may count from different origins, so the offset most parts
 * agree on is taken out. Pure.
 */
final class NetlistFit {
  private static final double SAME_ORIGIN_MILLIMETRES = 0.3;
  private static final double FAR_MILLIMETRES = 5.0;

  private NetlistFit() {}

  static Netlist onto(
      List<PlacedPart> placed, Netlist netlist, List<String> gaps, List<String> notes) {
    List<PlacedPart> common = new ArrayList<>();
    List<PadBounds> bounds = new ArrayList<>();
    for (PlacedPart part : placed) {
      List<Pad> pads = netlist.padsOf(part.reference());
      if (!pads.isEmpty()) {
        common.add(part);
        bounds.add(PadBounds.of(pads));
      }
    }
    if (common.isEmpty()) {
      gaps.add(
          "placement and netlist have no part in common: they are of different boards, or the"
              + " references differ");
      return netlist;
    }
    Offset move = Offset.mostCommon(common, bounds, netlist);
    if (Math.hypot(move.x(), move.y()) < SAME_ORIGIN_MILLIMETRES) {
      move = Offset.NONE;
    } else {
      notes.add(
          String.format(
              Locale.ROOT,
              "the netlist counts from another origin than the placement: moved by %.2f, %.2f mm, on"
                  + " which %d of %d parts agree",
              move.x(),
              move.y(),
              move.votes(),
              common.size()));
    }
    Set<String> apart = new TreeSet<>();
    for (int i = 0; i < common.size(); i++) {
      double reach = FAR_MILLIMETRES + Math.hypot(bounds.get(i).width(), bounds.get(i).height());
      double dx = common.get(i).xMillimetres() - bounds.get(i).centreX() - move.x();
      double dy = common.get(i).yMillimetres() - bounds.get(i).centreY() - move.y();
      if (Math.hypot(dx, dy) > reach) {
        apart.add(common.get(i).reference());
      }
    }
    if (!apart.isEmpty()) {
      gaps.add(
          "placement and netlist disagree about the place of "
              + PartAssembly.shown(apart)
              + "; check the side and unit of both before trusting these names");
    }
    return moved(netlist, move);
  }

  private static Netlist moved(Netlist netlist, Offset move) {
    if (move.isNothing()) {
      return netlist;
    }
    List<Pad> pads =
        netlist.pads().stream()
            .map(pad -> pad.at(pad.xMillimetres() + move.x(), pad.yMillimetres() + move.y()))
            .toList();
    return new Netlist(pads, netlist.notes());
  }

  /**
   * Placement minus netlist, mm.
   *
   * @param votes how many parts agree
   */
  private record Offset(double x, double y, int votes) {
    static final Offset NONE = new Offset(0, 0, 0);
    private static final double SAME_MILLIMETRES = 0.1;

    /** Each part by itself: the comparison of whole records is made when first used (0110). */
    boolean isNothing() {
      return x == 0 && y == 0;
    }

    /**
     * The offset most parts agree on. A part's place is the middle of its pads or, in many
     * libraries, its first pad, so each part votes for both.
     */
    static Offset mostCommon(List<PlacedPart> parts, List<PadBounds> bounds, Netlist netlist) {
      double[] x = new double[2 * parts.size()];
      double[] y = new double[2 * parts.size()];
      for (int i = 0; i < parts.size(); i++) {
        PlacedPart part = parts.get(i);
        Pad first = firstPad(netlist.padsOf(part.reference()));
        x[2 * i] = part.xMillimetres() - bounds.get(i).centreX();
        y[2 * i] = part.yMillimetres() - bounds.get(i).centreY();
        x[2 * i + 1] = part.xMillimetres() - first.xMillimetres();
        y[2 * i + 1] = part.yMillimetres() - first.yMillimetres();
      }
      Offset best = new Offset(0, 0, votes(x, y, 0, 0));
      for (int i = 0; i < x.length; i++) {
        int votes = votes(x, y, x[i], y[i]);
        if (votes > best.votes) {
          best = new Offset(x[i], y[i], votes);
        }
      }
      return best;
    }

    private static int votes(double[] x, double[] y, double atX, double atY) {
      int votes = 0;
      for (int i = 0; i < x.length; i += 2) {
        votes += same(x[i] - atX, y[i] - atY) || same(x[i + 1] - atX, y[i + 1] - atY) ? 1 : 0;
      }
      return votes;
    }

    private static boolean same(double dx, double dy) {
      return Math.abs(dx) < SAME_MILLIMETRES && Math.abs(dy) < SAME_MILLIMETRES;
    }

    private static Pad firstPad(List<Pad> pads) {
      return pads.stream()
          .filter(pad -> pad.pin().equals("1") || pad.pin().equals("A1"))
          .findFirst()
          .orElse(pads.get(0));
    }
  }
}
