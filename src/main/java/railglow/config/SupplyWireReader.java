package railglow.config;

import java.util.Optional;
import railglow.link.LineEnd;
import railglow.link.LinkSettings;
import railglow.link.ProofQuestion;
import railglow.link.ReplyPattern;
import railglow.link.SerialLine;
import railglow.supply.IdentityProof;
import railglow.supply.LineManners;
import railglow.supply.SupplyCommands;
import railglow.supply.WireManners;
import railglow.units.Unit;

/** Reads the sections 'wire' and 'serial' of a supply descriptor. */
final class SupplyWireReader {
  private static final double NANOS = 1e9;

  private SupplyWireReader() {}

  static WireManners wire(ConfigSection section, ReplyPattern identity, SupplyCommands words) {
    LinkSettings usual = LinkSettings.USUAL;
    double replyWithin = section.quantity("reply-within", Unit.SECOND, 0.02, 10);
    double pause = section.optionalQuantity("pause", Unit.SECOND, 0, 2).orElse(0);
    double quiet = section.optionalQuantity("quiet", Unit.SECOND, 0.01, 5).orElse(0.2);
    if (pause >= replyWithin) {
      section.report("pause", "is " + pause + " s, not below 'reply-within' " + replyWithin + " s");
    }
    LinkSettings link =
        usual
            .withEnds(end(section, "send-end"), end(section, "reply-end"))
            .withPause(nanos(pause))
            .withEcho(section.flag("echo", false))
            .withQuiet(nanos(quiet))
            .withProof(proof(section, identity, words));
    return new WireManners(
        link,
        nanos(replyWithin),
        section.flag("compound", false),
        nanos(section.quantity("reading-interval", Unit.SECOND, 0.01, 2)));
  }

  /** A settable register where the supply has one; else its identity and a number. */
  private static ProofQuestion proof(
      ConfigSection section, ReplyPattern identity, SupplyCommands words) {
    Optional<ConfigSection> marker = section.optionalSection("marker");
    if (marker.isEmpty()) {
      return IdentityProof.of(
          words.identify(), identity, words.measureVolts().replace("{channel}", "1"));
    }
    String set = SupplyWordsReader.template(marker.get(), "set", "{number}");
    int low = marker.get().integer("lowest", 0, 65535);
    int high = marker.get().integer("highest", 0, 65535);
    if (low >= high) {
      marker.get().report("lowest", "is " + low + ", not below 'highest' " + high);
    }
    String format = set.replace("%", "%%").replace("{number}", "%d");
    return ProofQuestion.marker(
        format, SupplyWordsReader.template(marker.get(), "ask", ""), low, Math.max(low + 1, high));
  }

  static Optional<LineManners> line(Optional<ConfigSection> found) {
    return found.map(
        section ->
            new LineManners(
                section.integer("baud", 50, 4_000_000),
                section.optionalInteger("data-bits", 7, 8).orElse(8),
                section
                    .optionalChoice("parity", SerialLine.Parity.class)
                    .orElse(SerialLine.Parity.NONE),
                section
                    .optionalChoice("stop-bits", SerialLine.StopBits.class)
                    .orElse(SerialLine.StopBits.ONE),
                section
                    .optionalChoice("flow-control", SerialLine.FlowControl.class)
                    .orElse(SerialLine.FlowControl.NONE)));
  }

  private static LineEnd end(ConfigSection section, String key) {
    LineEnd end = section.optionalChoice(key, LineEnd.class).orElse(LineEnd.LF);
    if (end == LineEnd.NONE && key.equals("send-end")) {
      section.report(key, "is 'none'; a message that is sent needs an end");
      return LineEnd.LF;
    }
    return end;
  }

  private static long nanos(double seconds) {
    return Double.isNaN(seconds) ? 1_000_000_000L : Math.round(seconds * NANOS);
  }
}
