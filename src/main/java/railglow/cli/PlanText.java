package railglow.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import railglow.board.Board;
import railglow.pulse.CycleWindow;
import railglow.pulse.PlannedEdge;
import railglow.pulse.PulseOrder;
import railglow.pulse.PulseSequence;
import railglow.safety.Bound;
import railglow.safety.Envelope;
import railglow.safety.Protection;
import railglow.safety.Refusal;
import railglow.safety.WorstCase;
import railglow.units.Quantity;
import railglow.units.Unit;

/** The dry run in words. */
final class PlanText {
  private static final double NANOS = 1e9;
  private static final double BYTES_A_MEGABYTE = 1e6;

  private PlanText() {}

  static List<String> of(RunSetup setup) {
    List<String> lines = new ArrayList<>();
    PulseSequence sequence = setup.sequence();
    lines.add("Sequence   " + sequence.name() + ": " + sequence.purpose());
    lines.add(
        "Bench      "
            + setup.bench().name()
            + ": "
            + setup.supply().name()
            + ", "
            + setup.camera().name());
    lines.addAll(board(setup));
    lines.add("");
    timeline(lines, setup);
    lines.add(room(setup));
    lines.add("");
    worstCase(lines, setup);
    lines.add("");
    limits(lines, setup.envelope());
    lines.add("");
    protections(lines, setup);
    return lines;
  }

  static List<String> refusals(List<Refusal> refusals) {
    List<String> lines = new ArrayList<>();
    lines.add(
        "Refused: "
            + refusals.size()
            + (refusals.size() == 1 ? " reason" : " reasons")
            + ". Nothing was opened.");
    for (Refusal refusal : refusals) {
      lines.add("  - " + refusal.sentence());
    }
    return lines;
  }

  static List<String> cautions() {
    return List.of(
        "Cautions   isolated low-voltage boards only, never mains-connected; batteries out;",
        "           capacitors discharged; parts get hot and may give off fumes; your local codes",
        "           and qualified practice come first.");
  }

  /** How much a run may write. */
  static String room(RunSetup setup) {
    return line(
        "Room       at most %.0f MB of frames, stored without loss",
        Hunt.plannedBytes(setup) / BYTES_A_MEGABYTE);
  }

  /** Board and rail, and what the board's files lack with what that costs. */
  static List<String> board(RunSetup setup) {
    List<String> lines = new ArrayList<>(List.of("Board      " + boardAndRail(setup)));
    if (setup.board() != null) {
      gaps(lines, setup.board());
    }
    return lines;
  }

  static void gaps(List<String> lines, Board board) {
    board.gaps().forEach(gap -> Summary.wrap(lines, "Gap        ", gap + "."));
  }

  private static String boardAndRail(RunSetup setup) {
    if (setup.rail() == null) {
      return setup.board() == null ? "none given, rail not named" : setup.boardName();
    }
    String rail = "rail " + setup.rail().name();
    if (!Double.isNaN(setup.rail().nominalVolts())) {
      rail += ", nominal " + Quantity.format(setup.rail().nominalVolts(), Unit.VOLT);
    }
    return setup.board() == null ? rail : setup.boardName() + ", " + rail;
  }

  static String pulses(PulseSequence s) {
    return Quantity.format(s.levelVolts(), Unit.VOLT)
        + " at most "
        + Quantity.format(s.maxAmperes(), Unit.AMPERE)
        + " every "
        + Quantity.format(s.periodSeconds(), Unit.SECOND)
        + ", at most "
        + s.maxCycles()
        + " cycles";
  }

  private static void timeline(List<String> lines, RunSetup setup) {
    PulseSequence s = setup.sequence();
    lines.add(s.order() == PulseOrder.CODED ? "Timeline, in coded order" : "Timeline");
    lines.add(line("  %9.3f s  output off, background", 0.0));
    List<CycleWindow> cycles = setup.timeline().cycles();
    if (s.order() == PulseOrder.CODED) {
      coded(lines, setup);
      cycles = List.of();
    }
    for (int i = 0; i < Math.min(2, cycles.size()); i++) {
      CycleWindow c = cycles.get(i);
      lines.add(
          line(
              "  %9.3f s  ON  %s, at most %s   (cycle %d)",
              c.onNanos() / NANOS,
              Quantity.format(s.levelVolts(), Unit.VOLT),
              Quantity.format(s.maxAmperes(), Unit.AMPERE),
              c.cycle() + 1));
      lines.add(line("  %9.3f s  off", c.offNanos() / NANOS));
    }
    if (cycles.size() > 2) {
      CycleWindow last = cycles.get(cycles.size() - 1);
      lines.add(
          "          ...     and so on every " + Quantity.format(s.periodSeconds(), Unit.SECOND));
      lines.add(
          line("  %9.3f s  off  (cycle %d, the last)", last.offNanos() / NANOS, last.cycle() + 1));
    }
    lines.add(line("  %9.3f s  end at the latest", setup.timeline().endOffsetNanos() / NANOS));
    if (s.untilSure()) {
      lines.add(
          line(
              "  ends early once it is sure (family-wise error %.3g %%), after %d cycles at the"
                  + " earliest",
              100 * s.familyWiseError(), s.minCycles()));
    }
  }

  private static void coded(List<String> lines, RunSetup setup) {
    List<PlannedEdge> edges = setup.timeline().edges();
    for (PlannedEdge edge : edges.subList(0, Math.min(6, edges.size()))) {
      lines.add(
          line(
              edge.on() ? "  %9.3f s  ON  %s" : "  %9.3f s  off",
              edge.offsetNanos() / NANOS,
              Quantity.format(edge.levelVolts(), Unit.VOLT)));
    }
    lines.add("          ...     and so on, never ON for longer than half a period");
  }

  private static void worstCase(List<String> lines, RunSetup setup) {
    WorstCase worst = WorstCase.of(setup.timeline());
    lines.add(
        "Worst case "
            + Quantity.format(worst.volts(), Unit.VOLT)
            + ", "
            + Quantity.format(worst.amperes(), Unit.AMPERE)
            + ", "
            + Quantity.format(worst.watts(), Unit.WATT)
            + " while ON, "
            + Quantity.format(worst.joules(), Unit.JOULE)
            + " in all");
    double into = setup.sequence().levelVolts() / setup.sequence().maxAmperes();
    lines.add(
        line(
            "           below %s of rail and leads the supply limits the current",
            Quantity.format(into, Unit.OHM)));
  }

  private static void limits(List<String> lines, Envelope envelope) {
    lines.add("Limits");
    limit(lines, "voltage", envelope.maxVolts(), Unit.VOLT);
    limit(lines, "current", envelope.maxAmperes(), Unit.AMPERE);
    limit(lines, "power", envelope.maxWatts(), Unit.WATT);
    limit(lines, "energy", envelope.maxJoules(), Unit.JOULE);
    limit(lines, "hottest pixel", envelope.maxCelsius(), Unit.CELSIUS);
    limit(lines, "largest rise", envelope.maxRiseKelvin(), Unit.KELVIN);
    limit(lines, "age of a reading", envelope.maxReadingAgeSeconds(), Unit.SECOND);
    limit(lines, "age of a frame", envelope.maxFrameAgeSeconds(), Unit.SECOND);
  }

  private static void limit(List<String> lines, String what, Bound bound, Unit unit) {
    if (bound.isSet()) {
      lines.add(
          line("  %-17s %-10s %s", what, Quantity.format(bound.value(), unit), bound.origin()));
    }
  }

  private static void protections(List<String> lines, RunSetup setup) {
    lines.add("Missing protection");
    int before = lines.size();
    for (Protection protection : setup.supply().missing()) {
      lines.add("  " + protection.key() + ": " + protection.without());
    }
    if (!setup.bench().companion()) {
      lines.add("  companion: " + Protection.COMPANION.without());
    }
    if (lines.size() == before) {
      lines.add("  none");
    }
  }

  private static String line(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
