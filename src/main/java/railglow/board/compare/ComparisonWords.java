package railglow.board.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import railglow.board.compare.ComparedSource.Presence;

/** What a comparison means, in sentences. Pure. */
public final class ComparisonWords {
  private static final double DIFFERS_P = 0.01;

  /** Why two runs are compared. */
  public enum Question {
    /** The same board, injected at two points. */
    TWO_POINTS,
    /** Before and after lifting or replacing a part. */
    BEFORE_AFTER,
    /** A known-good board first, the faulty one second. */
    KNOWN_GOOD
  }

  private ComparisonWords() {}

  /**
   * @param unit of the rises per watt, for example "K/W"
   * @param name what to call the place of a source, for example "C37"
   * @return the conclusion first, then one sentence per source
   */
  public static List<String> of(
      Question question,
      ComparedRun first,
      ComparedRun second,
      RunComparison comparison,
      String unit,
      Function<ComparedSource, String> name) {
    List<String> lines = new ArrayList<>();
    lines.add(conclusion(question, first, second, comparison, name));
    for (ComparedSource source : comparison.sources()) {
      lines.add(sentence(first, second, source, unit, name.apply(source)));
    }
    if (!comparison.sources().isEmpty()) {
      lines.add(
          comparison.bySwing()
              ? "Per watt are swings in step with the pulse."
              : "Per watt are settled rises, estimated by the same model for both runs: they pulsed"
                  + " differently, so swings can't be compared.");
    }
    return lines;
  }

  private static String conclusion(
      Question question,
      ComparedRun first,
      ComparedRun second,
      RunComparison comparison,
      Function<ComparedSource, String> name) {
    return switch (question) {
      case TWO_POINTS -> twoPoints(comparison, name);
      case BEFORE_AFTER -> beforeAfter(comparison, name);
      case KNOWN_GOOD -> knownGood(first, second, comparison, name);
    };
  }

  private static String twoPoints(RunComparison comparison, Function<ComparedSource, String> name) {
    List<String> both = inBoth(comparison, name);
    List<String> others = new ArrayList<>(names(comparison, Presence.FIRST_ONLY, name));
    others.addAll(names(comparison, Presence.SECOND_ONLY, name));
    if (both.isEmpty()) {
      return others.isEmpty()
          ? "Neither run shows heat: inject more, or longer."
          : "Nothing stays hot at both points: what was hot is path, or the fault was not reached"
              + " from one of them.";
    }
    String path =
        others.isEmpty() ? "" : "; " + String.join(", ", others) + " warms only as a path";
    return String.join(" and ", both)
        + (both.size() == 1 ? " stays" : " stay")
        + " hot at both points: the fault is there"
        + path
        + ".";
  }

  private static String beforeAfter(
      RunComparison comparison, Function<ComparedSource, String> name) {
    List<String> left = inBoth(comparison, name);
    List<String> arisen = names(comparison, Presence.SECOND_ONLY, name);
    List<ComparedSource> gone =
        comparison.sources().stream()
            .filter(source -> source.presence() == Presence.FIRST_ONLY)
            .toList();
    if (left.isEmpty() && arisen.isEmpty() && !gone.isEmpty()) {
      boolean sure = gone.stream().allMatch(ComparedSource::absenceIsSure);
      String names = String.join(", ", gone.stream().map(name).toList());
      return sure
          ? names + " is gone and nothing else is hot: the repair is confirmed."
          : names
              + " is not seen any more, but the second run could have missed it: run longer or"
              + " harder to confirm.";
    }
    if (left.isEmpty() && arisen.isEmpty()) {
      return "Neither run shows heat.";
    }
    List<String> open = new ArrayList<>(left);
    open.addAll(arisen);
    return "Not mended yet: " + String.join(", ", open) + " is still or newly hot.";
  }

  private static String knownGood(
      ComparedRun good,
      ComparedRun bad,
      RunComparison comparison,
      Function<ComparedSource, String> name) {
    List<String> faulty = new ArrayList<>();
    for (ComparedSource source : comparison.sources()) {
      boolean stronger =
          source.presence() == Presence.BOTH && source.difference() > 0 && source.p() < DIFFERS_P;
      boolean alone = source.presence() == Presence.SECOND_ONLY && source.absenceIsSure();
      if (stronger || alone) {
        faulty.add(name.apply(source));
      }
    }
    return faulty.isEmpty()
        ? "Per watt, no place of " + bad.label() + " is surely warmer than on " + good.label() + "."
        : String.join(", ", faulty)
            + (faulty.size() == 1 ? " is" : " are")
            + " warmer per watt than on "
            + good.label()
            + ": the fault is there.";
  }

  private static List<String> inBoth(
      RunComparison comparison, Function<ComparedSource, String> name) {
    return comparison.sources().stream()
        .filter(source -> source.presence().isInBoth())
        .map(name)
        .toList();
  }

  private static List<String> names(
      RunComparison comparison, Presence presence, Function<ComparedSource, String> name) {
    return comparison.sources().stream()
        .filter(source -> source.presence() == presence)
        .map(name)
        .toList();
  }

  private static String sentence(
      ComparedRun first, ComparedRun second, ComparedSource source, String unit, String name) {
    if (source.presence() == Presence.BOTH) {
      String verdict =
          Double.isNaN(source.p())
              ? "the power is not known, so they can't be compared per watt"
              : String.format(
                  Locale.ROOT,
                  "%s against %s %s, difference %s +- %s (p = %.2g)",
                  digits(source.firstPerWatt()),
                  digits(source.secondPerWatt()),
                  unit,
                  digits(source.difference()),
                  digits(source.differenceSigma()),
                  source.p());
      return name + ": in both, " + verdict + ".";
    }
    boolean uncalledInFirst = source.presence() == Presence.UNCALLED_IN_FIRST;
    if (uncalledInFirst || source.presence() == Presence.UNCALLED_IN_SECOND) {
      return String.format(
          Locale.ROOT,
          "%s: called only in %s, %s %s; the picture of %s is as warm there, though nothing was"
              + " called: see its finding for the reason.",
          name,
          uncalledInFirst ? second.label() : first.label(),
          digits(uncalledInFirst ? source.secondPerWatt() : source.firstPerWatt()),
          unit,
          uncalledInFirst ? first.label() : second.label());
    }
    boolean inFirst = source.presence() == Presence.FIRST_ONLY;
    double here = inFirst ? source.firstPerWatt() : source.secondPerWatt();
    double there = inFirst ? source.secondPerWatt() : source.firstPerWatt();
    return String.format(
        Locale.ROOT,
        "%s: only in %s, %s %s; in %s at most %s %s%s.",
        name,
        inFirst ? first.label() : second.label(),
        digits(here),
        unit,
        inFirst ? second.label() : first.label(),
        digits(there),
        unit,
        source.absenceIsSure() ? "" : ", so it may be there unseen");
  }

  /** Three digits, without powers of ten where they can be avoided. */
  private static String digits(double value) {
    double magnitude = Math.abs(value);
    int decimals = magnitude >= 100 ? 0 : magnitude >= 10 ? 1 : magnitude >= 1 ? 2 : 3;
    return Double.isNaN(value)
        ? "an unknown"
        : String.format(Locale.ROOT, "%." + decimals + "f", value);
  }
}
