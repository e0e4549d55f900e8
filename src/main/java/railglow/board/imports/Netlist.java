package railglow.board.imports;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * What an IPC-D-356A netlist says.
 *
 * @param pads in the file's order
 * @param notes what was left out or assumed, one sentence each
 */
public record Netlist(List<Pad> pads, List<String> notes) {
  /** The widest net and reference the format's columns hold. */
  private static final int NET_WIDTH = 14;

  private static final int REFERENCE_WIDTH = 6;

  public Netlist {
    pads = List.copyOf(pads);
    notes = List.copyOf(notes);
  }

  /** The nets a part's pads are on, sorted. */
  public Set<String> netsOf(String reference) {
    return padsOf(reference).stream()
        .map(Pad::net)
        .filter(net -> !net.isEmpty())
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** A reference as the file writes it: six letters of a longer one. */
  public static String writtenReference(String reference) {
    return clipped(reference, REFERENCE_WIDTH, false);
  }

  public List<Pad> padsOf(String reference) {
    String written = writtenReference(reference);
    return pads.stream().filter(pad -> pad.reference().equals(written)).toList();
  }

  /** Every pad and via of a net named as on the schematic. */
  public List<Pad> padsOn(String net) {
    return pads.stream().filter(pad -> sameNet(pad.net(), net)).toList();
  }

  /** References of all parts, sorted. */
  public Set<String> references() {
    return pads.stream()
        .filter(pad -> !pad.isVia())
        .map(Pad::reference)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** Whether a name in the file stands for a schematic net: upper case, the tail of a long name. */
  public static boolean sameNet(String written, String net) {
    if (written.isEmpty()) {
      return false;
    }
    String wanted = net.strip().toUpperCase(Locale.ROOT);
    return written.equalsIgnoreCase(wanted)
        || (written.length() == NET_WIDTH
            && wanted.length() > NET_WIDTH
            && written.equalsIgnoreCase(clipped(wanted, NET_WIDTH, true)));
  }

  private static String clipped(String text, int width, boolean keepTail) {
    if (text.length() <= width) {
      return text;
    }
    return keepTail ? text.substring(text.length() - width) : text.substring(0, width);
  }
}
