package railglow.board;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * The nets an injected current reaches besides the rail itself: through inductors, ferrites, fuses
 * and resistors below an ohm. Pure.
 *
 * @param through net name to the part it is reached through, nearest the rail first in case of ties
 */
record RailReach(Map<String, String> through) {
  static final double LOW_OHMS = 1.0;

  /** A net on more parts than this share is a ground or shield: current ends there. */
  private static final double GROUND_SHARE = 0.3;

  private static final int GROUND_PARTS = 5;

  static RailReach of(Board board, String railName) {
    Map<String, String> through = new TreeMap<>();
    Set<String> seen = new TreeSet<>(Set.of(railName.toUpperCase(Locale.ROOT)));
    Deque<String> open = new ArrayDeque<>(seen);
    while (!open.isEmpty()) {
      String from = open.removeFirst();
      for (Part part : board.parts()) {
        if (part.nets().size() != 2 || !carries(part) || !on(part, from)) {
          continue;
        }
        for (String net : part.nets()) {
          String key = net.toUpperCase(Locale.ROOT);
          if (!isGround(board, net) && board.rail(net).isEmpty() && seen.add(key)) {
            through.put(key, part.reference());
            open.addLast(key);
          }
        }
      }
    }
    return new RailReach(through);
  }

  /** The part through which one of a part's nets is reached; null when none is. */
  String feeds(Part part) {
    for (String net : part.nets()) {
      String via = through.get(net.toUpperCase(Locale.ROOT));
      if (via != null && !via.equals(part.reference())) {
        return via;
      }
    }
    return null;
  }

  private static boolean on(Part part, String net) {
    return part.nets().stream().anyMatch(own -> own.equalsIgnoreCase(net));
  }

  private static boolean carries(Part part) {
    return switch (PartKind.of(part.reference())) {
      case INDUCTOR, FUSE -> true;
      case RESISTOR -> PartValue.ohms(part.value()) < LOW_OHMS;
      default -> false;
    };
  }

  static boolean isGround(Board board, String net) {
    String upper = net.toUpperCase(Locale.ROOT);
    if (upper.matches("(.*[/_])?[ADP]?GND.*|.*[/_]?VSS[A-Z]?|0V|EARTH|CHASSIS|SHIELD")) {
      return true;
    }
    long parts = board.parts().stream().filter(part -> on(part, net)).count();
    return parts > Math.max(GROUND_PARTS, GROUND_SHARE * board.parts().size());
  }
}
