package railglow.board;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import railglow.board.geometry.PackageOutline;
import railglow.board.imports.Netlist;
import railglow.board.imports.Pad;
import railglow.board.imports.PlacedPart;
import railglow.board.imports.Placement;

/**
 * Joins placement and netlist to parts: outlines from stated sizes, package names or pads; nets
 * from the netlist. Pure.
 *
 * @param parts in the placement's order, then those only the netlist knows
 * @param netlist the netlist in board coordinates, if there is one
 * @param gaps what could not be joined and what that costs
 * @param notes what was assumed
 */
public record PartAssembly(
    List<Part> parts, Optional<Netlist> netlist, List<String> gaps, List<String> notes) {
  private static final double ASSUMED_MILLIMETRES = 2.0;
  private static final int NAMES_SHOWN = 8;

  /**
   * @param placement as read; empty when there is none
   * @param rawNetlist as read
   * @param sizes outlines by package name that the board file states
   */
  public static PartAssembly of(
      Optional<Placement> placement,
      Optional<Netlist> rawNetlist,
      Map<String, PackageOutline> sizes) {
    List<String> gaps = new ArrayList<>();
    List<String> notes = new ArrayList<>();
    placement.ifPresent(read -> notes.addAll(read.notes()));
    rawNetlist.ifPresent(read -> notes.addAll(read.notes()));
    List<PlacedPart> placed = placement.map(Placement::parts).orElse(List.of());
    Optional<Netlist> netlist =
        rawNetlist.map(
            list -> placed.isEmpty() ? list : NetlistFit.onto(placed, list, gaps, notes));
    List<Part> parts = new ArrayList<>();
    Set<String> guessed = new TreeSet<>();
    for (PlacedPart part : placed) {
      parts.add(part(part, netlist, sizes, guessed));
    }
    if (!guessed.isEmpty()) {
      notes.add(
          "no size is known for "
              + shown(guessed)
              + ": 2 x 2 mm is assumed ('sizes' in the board file states better)");
    }
    netlist.ifPresent(list -> addUnplaced(placed, list, parts, gaps));
    netlist.ifPresent(list -> sameInNetlist(placed, list, gaps));
    return new PartAssembly(List.copyOf(parts), netlist, List.copyOf(gaps), List.copyOf(notes));
  }

  private static Part part(
      PlacedPart part,
      Optional<Netlist> netlist,
      Map<String, PackageOutline> sizes,
      Set<String> guessed) {
    List<Pad> pads = netlist.map(list -> list.padsOf(part.reference())).orElse(List.of());
    PackageOutline size = sizes.get(part.packageName());
    if (size == null) {
      size = PackageOutline.of(part.packageName()).orElse(null);
    }
    if (size == null && pads.size() > 1) {
      PadBounds bounds = PadBounds.of(pads);
      return new Part(
          part.reference(),
          part.value(),
          part.packageName(),
          bounds.centreX(),
          bounds.centreY(),
          bounds.width(),
          bounds.height(),
          0,
          part.side(),
          nets(pads));
    }
    if (size == null) {
      guessed.add(part.reference());
      size = new PackageOutline(ASSUMED_MILLIMETRES, ASSUMED_MILLIMETRES);
    }
    return new Part(
        part.reference(),
        part.value(),
        part.packageName(),
        part.xMillimetres(),
        part.yMillimetres(),
        size.widthMillimetres(),
        size.heightMillimetres(),
        part.rotationDegrees(),
        part.side(),
        nets(pads));
  }

  /** The netlist keeps six letters of a reference: longer ones may fall together. */
  private static void sameInNetlist(List<PlacedPart> placed, Netlist netlist, List<String> gaps) {
    Map<String, Set<String>> written = new TreeMap<>();
    for (PlacedPart part : placed) {
      if (!netlist.padsOf(part.reference()).isEmpty()) {
        written
            .computeIfAbsent(Netlist.writtenReference(part.reference()), key -> new TreeSet<>())
            .add(part.reference());
      }
    }
    written.forEach(
        (name, parts) -> {
          if (parts.size() > 1) {
            gaps.add(
                String.join(" and ", parts)
                    + " are all written "
                    + name
                    + " in the netlist, which keeps six letters: which of its pads are whose can't be"
                    + " told, so each is taken to be on all of their nets; place and value are sure");
          }
        });
  }

  private static void addUnplaced(
      List<PlacedPart> placed, Netlist netlist, List<Part> parts, List<String> gaps) {
    Set<String> unplaced = new TreeSet<>(netlist.references());
    for (PlacedPart part : placed) {
      netlist.padsOf(part.reference()).forEach(pad -> unplaced.remove(pad.reference()));
    }
    if (unplaced.isEmpty()) {
      return;
    }
    for (String reference : unplaced) {
      List<Pad> pads = netlist.padsOf(reference);
      PadBounds bounds = PadBounds.of(pads);
      boolean bottom = pads.stream().allMatch(pad -> pad.access() == Pad.Access.BOTTOM);
      parts.add(
          new Part(
              reference,
              "",
              "",
              bounds.centreX(),
              bounds.centreY(),
              bounds.width(),
              bounds.height(),
              0,
              bottom ? Side.BOTTOM : Side.TOP,
              nets(pads)));
    }
    gaps.add(
        (placed.isEmpty() ? "no placement is known: " : "in the netlist but not in the placement: ")
            + shown(unplaced)
            + "; they are placed by their pads, without value and package");
  }

  private static Set<String> nets(List<Pad> pads) {
    Set<String> nets = new TreeSet<>();
    pads.stream().map(Pad::net).filter(net -> !net.isEmpty()).forEach(nets::add);
    return nets;
  }

  static String shown(Set<String> names) {
    List<String> sorted =
        names.stream()
            .sorted(Comparator.comparing((String name) -> name.toUpperCase(Locale.ROOT)))
            .toList();
    String list = String.join(", ", sorted.subList(0, Math.min(NAMES_SHOWN, sorted.size())));
    return sorted.size() <= NAMES_SHOWN
        ? list
        : list + " and " + (sorted.size() - NAMES_SHOWN) + " more";
  }
}
