package railglow.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import railglow.board.HeatPath;
import railglow.board.Suspect;
import railglow.journal.Findings;
import railglow.journal.HeatPower;
import railglow.journal.RunFolder;
import railglow.run.FindingsMaker;
import railglow.thermal.HeatSource;
import railglow.units.Probability;
import railglow.units.Quantity;
import railglow.units.Unit;

/** What was found, on one screen. */
final class Summary {
  private static final int MOST_SOURCES = 5;
  private static final int MOST_SUSPECTS = 5;
  private static final int WIDTH = 96;

  private Summary() {}

  static List<String> of(Findings findings, RunFolder folder) {
    List<String> lines = new ArrayList<>();
    lines.add("");
    wrap(lines, "Found      ", findings.headline());
    if (!findings.nextStep().isEmpty()) {
      wrap(lines, "Next       ", findings.nextStep());
    }
    suspects(lines, findings.suspects());
    paths(lines, findings.paths());
    sources(lines, findings);
    lines.add("");
    measured(lines, findings);
    power(lines, findings);
    lines.add(
        String.format(
            Locale.ROOT,
            "Cycles     %d used, %d rejected; frames left out: %s",
            findings.cyclesUsed(),
            findings.cyclesRejected(),
            counts(findings.framesByMark())));
    lines.add("");
    lines.add("Report     " + folder.report());
    lines.add("Pictures   " + folder.pictures());
    lines.add("Run        " + folder.root());
    return lines;
  }

  /** The same of one touch of many, for somebody whose eyes are on the board: all else is kept. */
  static List<String> ofTouch(Findings findings, RunFolder folder) {
    List<String> lines = new ArrayList<>();
    wrap(lines, "Found      ", findings.headline());
    if (!findings.nextStep().isEmpty()) {
      wrap(lines, "Next       ", findings.nextStep());
    }
    measured(lines, findings);
    lines.add(
        String.format(
            Locale.ROOT,
            "Cycles     %d used, %d rejected",
            findings.cyclesUsed(),
            findings.cyclesRejected()));
    lines.add("Report     " + folder.report());
    return lines;
  }

  private static void suspects(List<String> lines, List<Suspect> suspects) {
    if (suspects.isEmpty()) {
      return;
    }
    lines.add("");
    lines.add("Suspects");
    for (Suspect suspect : suspects.subList(0, Math.min(MOST_SUSPECTS, suspects.size()))) {
      wrap(
          lines,
          String.format(Locale.ROOT, "  %d. %-6s ", suspect.rank(), suspect.part()),
          suspect.reason());
    }
  }

  /** Heat that is most likely no fault, by its number; the next step speaks of what leads. */
  private static void paths(List<String> lines, List<HeatPath> paths) {
    List<HeatPath> beside =
        paths.stream().filter(path -> !path.leads()).limit(MOST_SOURCES).toList();
    for (HeatPath path : beside) {
      wrap(
          lines,
          "Path       ",
          "source " + (path.sourceIndex() + 1) + ", " + path.place() + ": " + path.reason() + ".");
    }
  }

  private static void sources(List<String> lines, Findings findings) {
    if (findings.sources().isEmpty()) {
      return;
    }
    lines.add("");
    lines.add(
        "Sources    swing      95 % interval         column, row               would settle at       p");
    int shown = Math.min(MOST_SOURCES, findings.sources().size());
    for (int i = 0; i < shown; i++) {
      HeatSource s = findings.sources().get(i);
      lines.add(
          String.format(
              Locale.ROOT,
              "  %d.       %-10s %-21s %-25s %-21s %s",
              i + 1,
              FindingsMaker.rise(s.swingKelvin(), findings.unit()),
              FindingsMaker.between(s.swingInterval95(), findings.unit()),
              String.format(
                  Locale.ROOT,
                  "%.1f +-%.1f, %.1f +-%.1f",
                  s.column(),
                  Math.sqrt(s.columnVariance()),
                  s.row(),
                  Math.sqrt(s.rowVariance())),
              s.settledRiseIsKnown()
                  ? FindingsMaker.between(s.riseInterval95(), findings.unit())
                  : "not known",
              Probability.brief(s.familyWiseP())));
    }
    if (shown < findings.sources().size()) {
      lines.add("  and " + (findings.sources().size() - shown) + " weaker ones in the report");
    }
  }

  private static void measured(List<String> lines, Findings findings) {
    if (!Double.isNaN(findings.onVolts())) {
      lines.add(
          "At board   "
              + Quantity.format(findings.onVolts(), Unit.VOLT)
              + ", "
              + Quantity.format(findings.onAmperes(), Unit.AMPERE)
              + ", "
              + Quantity.format(findings.onWatts(), Unit.WATT)
              + "; the rail reads "
              + Quantity.format(findings.railOhms(), Unit.OHM));
    }
    if (findings.onVolts() < 0) {
      lines.add(
          "           Less than nothing is left at the board: the bench file's lead resistance is too"
              + " high.");
    }
  }

  private static void power(List<String> lines, Findings findings) {
    HeatPower power = findings.power();
    if (!power.isKnown()) {
      return;
    }
    String injected =
        findings.onWatts() > 0
            ? " of " + Quantity.format(findings.onWatts(), Unit.WATT) + " injected"
            : "";
    StringBuilder places = new StringBuilder();
    for (HeatPower.Place place : power.places().subList(0, Math.min(3, power.places().size()))) {
      places
          .append(places.length() == 0 ? ": " : ", ")
          .append(Quantity.format(place.watts(), Unit.WATT))
          .append(
              place.part().isEmpty()
                  ? String.format(
                      Locale.ROOT, " at column %.1f, row %.1f", place.column(), place.row())
                  : " at " + place.part());
    }
    wrap(
        lines,
        "Power      ",
        String.format(
            Locale.ROOT,
            "%s +-%s%s is seen as heat, from %d %s%s; places %.1f mm apart are told apart",
            Quantity.format(power.seenWatts(), Unit.WATT),
            Quantity.format(power.errorWatts(), Unit.WATT),
            injected,
            power.places().size(),
            power.places().size() == 1 ? "place" : "places",
            places,
            power.resolutionMillimetres()));
  }

  private static String counts(Map<String, Integer> counts) {
    if (counts.isEmpty()) {
      return "none";
    }
    List<String> parts = new ArrayList<>();
    counts.forEach((reason, count) -> parts.add(count + " " + reason));
    return String.join(", ", parts);
  }

  static void sentence(Terminal terminal, String label, String sentence) {
    List<String> lines = new ArrayList<>();
    wrap(lines, label, sentence);
    terminal.say(lines);
  }

  /** Breaks a sentence into lines, the later ones indented as far as the first one's label. */
  static void wrap(List<String> lines, String label, String sentence) {
    StringBuilder line = new StringBuilder(label);
    boolean empty = true;
    for (String word : sentence.split(" ")) {
      if (!empty && line.length() + word.length() >= WIDTH) {
        lines.add(line.toString().stripTrailing());
        line = new StringBuilder(" ".repeat(label.length()));
        empty = true;
      }
      line.append(empty ? "" : " ").append(word);
      empty = false;
    }
    lines.add(line.toString());
  }
}
