package railglow.supply;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
import railglow.link.LineEnd;
import railglow.link.LinkSettings;

/**
 * One way of asking an unknown instrument who it is. Pure.
 *
 * @param identify the question
 * @param line used on a serial line only
 */
public record TalkingWay(LinkSettings link, String identify, LineManners line) {
  private static final List<Integer> USUAL_BAUDS = List.of(115200, 57600, 38400, 19200, 4800, 2400);

  /**
   * Every way worth trying at an address, the likeliest first: those of the known supplies, then
   * the standard's words with every line end, on a serial line with and without echo, at the baud
   * rate the address gives or else at all usual ones.
   *
   * @param known descriptors, the likeliest first
   */
  public static List<TalkingWay> all(SupplyAddress address, List<SupplyDescriptor> known) {
    boolean serial = address.kind() == SupplyAddress.Kind.SERIAL;
    List<TalkingWay> ways = new ArrayList<>();
    for (SupplyDescriptor each : known) {
      ways.add(
          new TalkingWay(
              each.wire().link(),
              each.commands().identify(),
              serial ? each.line().orElse(LineManners.USUAL) : LineManners.USUAL));
    }
    LinkSettings plain = LinkSettings.USUAL;
    for (LineEnd end : List.of(LineEnd.LF, LineEnd.CRLF, LineEnd.CR)) {
      LineEnd reply = end == LineEnd.CR ? LineEnd.CR : LineEnd.LF;
      ways.add(plainly(plain.withEnds(end, reply)));
    }
    if (address.kind() == SupplyAddress.Kind.USBTMC) {
      ways.add(plainly(plain.withEnds(LineEnd.LF, LineEnd.NONE)));
    }
    ways.add(plainly(plain.withEcho(true)));
    ways.add(plainly(plain.withEnds(LineEnd.CR, LineEnd.CR).withEcho(true)));
    return different(serial ? atEveryRate(address, ways) : ways);
  }

  private static TalkingWay plainly(LinkSettings link) {
    return new TalkingWay(link, PlainSupply.descriptor().commands().identify(), LineManners.USUAL);
  }

  /** All ways at one rate before the next: a wrong rate spoils every one of them. */
  private static List<TalkingWay> atEveryRate(SupplyAddress address, List<TalkingWay> ways) {
    List<Integer> bauds = new ArrayList<>();
    if (address.number() > 0) {
      bauds.add(address.number());
    } else {
      bauds.add(LineManners.USUAL.baud());
      TreeSet<Integer> described = new TreeSet<>(ways.stream().map(w -> w.line().baud()).toList());
      bauds.addAll(described.descendingSet());
      bauds.addAll(USUAL_BAUDS);
    }
    List<TalkingWay> all = new ArrayList<>();
    for (int baud : bauds.stream().distinct().toList()) {
      for (TalkingWay way : ways) {
        all.add(new TalkingWay(way.link(), way.identify(), way.line().withBaud(baud)));
      }
    }
    return all;
  }

  private static List<TalkingWay> different(List<TalkingWay> ways) {
    Map<List<Object>, TalkingWay> different = new LinkedHashMap<>();
    for (TalkingWay way : ways) {
      different.putIfAbsent(
          List.of(
              way.link().sendEnd(),
              way.link().replyEnd(),
              way.link().echo(),
              way.identify(),
              way.line()),
          way);
    }
    return List.copyOf(different.values());
  }

  /** Whether messages end and come back as the other way has it. */
  public boolean framesAs(LinkSettings other) {
    return link.sendEnd() == other.sendEnd()
        && link.replyEnd() == other.replyEnd()
        && link.echo() == other.echo();
  }

  /** For the operator, such as "messages end with CR, echo". */
  public String framing() {
    return "messages end with "
        + word(link.sendEnd())
        + (link.replyEnd() == link.sendEnd() ? "" : ", replies with " + word(link.replyEnd()))
        + (link.echo() ? ", echo" : "");
  }

  private static String word(LineEnd end) {
    return switch (end) {
      case CRLF -> "CR LF";
      case NONE -> "their transfer";
      default -> end.name().toUpperCase(Locale.ROOT);
    };
  }
}
