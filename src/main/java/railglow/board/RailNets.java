package railglow.board;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import railglow.board.imports.Netlist;
import railglow.board.imports.Pad;

/** Finds which net of a netlist is which rail, and calls it by the rail's name. Pure. */
public final class RailNets {
  private RailNets() {}

  /**
   * @param nets for rails whose net has another name
   * @param gaps gets a sentence for each rail without a pad
   */
  public static Netlist named(
      Netlist netlist, List<Rail> rails, Map<String, String> nets, List<String> gaps) {
    Map<String, String> railOfNet = new TreeMap<>();
    for (Rail rail : rails) {
      Optional<String> net = find(netlist, Optional.ofNullable(nets.get(rail.name())), rail.name());
      net.ifPresent(found -> railOfNet.put(found, rail.name()));
      if (net.isEmpty()) {
        gaps.add(
            "no pad of the netlist is on rail "
                + rail.name()
                + ": which parts are on it is not known; give the net's name with 'net:'");
      }
    }
    List<Pad> pads =
        netlist.pads().stream()
            .map(pad -> railOfNet.containsKey(pad.net()) ? pad.on(railOfNet.get(pad.net())) : pad)
            .toList();
    return new Netlist(pads, netlist.notes());
  }

  private static Optional<String> find(Netlist netlist, Optional<String> given, String railName) {
    List<String> names = netlist.pads().stream().map(Pad::net).distinct().sorted().toList();
    String wanted = given.orElse(railName);
    Optional<String> exact =
        names.stream().filter(name -> Netlist.sameNet(name, wanted)).findFirst();
    if (exact.isPresent() || given.isPresent()) {
      return exact;
    }
    return names.stream().filter(name -> bare(name).equals(bare(railName))).findFirst();
  }

  /** Drawing programs put a sign or a sheet's path before a net's name. */
  private static String bare(String net) {
    return net.replaceAll("^.*[/+]", "").toUpperCase(Locale.ROOT);
  }
}
