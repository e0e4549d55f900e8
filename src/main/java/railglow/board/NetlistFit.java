package railglow.board;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import railglow.board.imports.Netlist;
import railglow.board.imports.Pad;
import railglow.board.imports.PlacedPart;

/**
 * Lays a netlist over a placement: both may count from different origins, so the median distance
 * between a part's place and the middle of its pads is taken out. Pure.
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
    double[] dx = new double[common.size()];
    double[] dy = new double[common.size()];
    for (int i = 0; i < common.size(); i++) {
      dx[i] = common.get(i).xMillimetres() - bounds.get(i).centreX();
      dy[i] = common.get(i).yMillimetres() - bounds.get(i).centreY();
    }
    double moveX = median(dx);
    double moveY = median(dy);
    if (Math.hypot(moveX, moveY) < SAME_ORIGIN_MILLIMETRES) {
      moveX = 0;
      moveY = 0;
    } else {
      notes.add(
          String.format(
              Locale.ROOT,
              "the netlist counts from another origin than the placement: moved by %.2f, %.2f mm",
              moveX,
              moveY));
    }
    Set<String> apart = new TreeSet<>();
    for (int i = 0; i < common.size(); i++) {
      double reach = FAR_MILLIMETRES + Math.hypot(bounds.get(i).width(), bounds.get(i).height());
      if (Math.hypot(dx[i] - moveX, dy[i] - moveY) > reach) {
        apart.add(common.get(i).reference());
      }
    }
    if (!apart.isEmpty()) {
      gaps.add(
          "placement and netlist disagree about the place of "
              + PartAssembly.shown(apart)
              + "; check the side and unit of both before trusting these names");
    }
    return moved(netlist, moveX, moveY);
  }

  private static Netlist moved(Netlist netlist, double moveX, double moveY) {
    if (moveX == 0 && moveY == 0) {
      return netlist;
    }
    List<Pad> pads =
        netlist.pads().stream()
            .map(pad -> pad.at(pad.xMillimetres() + moveX, pad.yMillimetres() + moveY))
            .toList();
    return new Netlist(pads, netlist.notes());
  }

  private static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int middle = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
  }
}
