package railglow.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import railglow.board.Board;
import railglow.board.HeatFacts;
import railglow.board.Lead;
import railglow.board.NextStep;
import railglow.board.Ranking;
import railglow.board.SurfaceWords;
import railglow.board.Suspect;
import railglow.board.SuspectRanking;
import railglow.journal.Findings;
import railglow.journal.Findings.Verdict;
import railglow.journal.RunHeader;
import railglow.run.reduction.Reduced;
import railglow.thermal.HeatShape;
import railglow.thermal.HeatSource;
import railglow.thermal.Look;
import railglow.thermal.Plane;
import railglow.thermal.PlaneNoise;
import railglow.thermal.RefusedSource;
import railglow.thermal.inverse.PowerMap;
import railglow.units.Interval;
import railglow.units.Probability;
import railglow.units.Quantity;
import railglow.units.Unit;

/** From what a run's frames were reduced to, to what can be said. Pure and deterministic. */
public final class FindingsMaker {
  private FindingsMaker() {}

  /**
   * @param board null when no board file was given
   */
  public static Findings make(RunHeader header, Reduced reduced, Board board) {
    return make(header, reduced, board, RunPower.map(header, reduced, board));
  }

  /**
   * @param stated the board as its file says; null when no board file was given
   * @param power the map of heat sources, made from the same
   */
  public static Findings make(
      RunHeader header, Reduced reduced, Board stated, Optional<PowerMap> power) {
    Board board =
        stated != null && absolute(header, reduced)
            ? SurfaceWords.withReflectedMeasured(stated, reduced.background())
            : stated;
    String unit = Double.isNaN(header.camera().kelvinPerCount()) ? "counts" : "K";
    List<HeatSource> sources = reduced.look() == null ? List.of() : reduced.look().sources();
    HeatFacts facts = board == null ? HeatFacts.NONE : facts(header, reduced, sources);
    Ranking ranking =
        board == null ? Ranking.NOTHING : SuspectRanking.of(board, header.rail(), sources, facts);
    double railOhms = reduced.onVolts() / reduced.onAmperes();
    Verdict verdict = verdict(reduced, sources);
    return new Findings(
        verdict,
        headline(verdict, header, reduced, unit, sources, ranking.lead()) + notHeat(reduced.look()),
        nextStep(verdict, header, board, ranking, railOhms),
        sources,
        ranking.suspects(),
        ranking.paths(),
        reduced.cyclesUsed(),
        reduced.cyclesRejected(),
        reduced.framesLeftOut(),
        unit,
        reduced.look() == null ? Double.NaN : reduced.look().upperLimitKelvin(),
        Double.NaN,
        reduced.onVolts(),
        reduced.onAmperes(),
        reduced.onWatts(),
        railOhms,
        RunPower.describe(power, board),
        board == null ? List.of() : SurfaceWords.trueRises(board, sources, facts.startCelsius()));
  }

  /** Power and starting temperatures, as far as the camera has a scale for them. */
  private static HeatFacts facts(RunHeader header, Reduced reduced, List<HeatSource> sources) {
    if (Double.isNaN(header.camera().kelvinPerCount())) {
      return new HeatFacts(Double.NaN, List.of(), shapes(reduced.look(), sources));
    }
    boolean absolute = absolute(header, reduced);
    List<Double> start = new ArrayList<>();
    for (HeatSource source : sources) {
      start.add(absolute ? at(reduced.background(), source) : Double.NaN);
    }
    return new HeatFacts(reduced.onWatts(), start, shapes(reduced.look(), sources));
  }

  private static List<HeatShape> shapes(Look look, List<HeatSource> sources) {
    return sources.stream()
        .map(source -> HeatShape.of(look.inPhase(), look.quadrature(), source))
        .toList();
  }

  private static boolean absolute(RunHeader header, Reduced reduced) {
    return reduced.background() != null && !Double.isNaN(header.camera().celsiusAtZero());
  }

  private static double at(Plane plane, HeatSource source) {
    int column = (int) Math.max(0, Math.min(plane.width() - 1, Math.round(source.column())));
    int row = (int) Math.max(0, Math.min(plane.height() - 1, Math.round(source.row())));
    return plane.at(column, row);
  }

  /** A rise with its unit, "62.1 mK" or "2.50 counts". */
  public static String rise(double value, String unit) {
    return unit.equals("K")
        ? Quantity.format(value, Unit.KELVIN)
        : String.format(Locale.ROOT, "%.2f %s", value, unit);
  }

  /** An interval of such values, in words. */
  public static String between(Interval interval, String unit) {
    return rise(interval.low(), unit) + " to " + rise(interval.high(), unit);
  }

  private static Verdict verdict(Reduced reduced, List<HeatSource> sources) {
    if (reduced.look() == null) {
      return Verdict.NOT_ENOUGH_DATA;
    }
    return sources.isEmpty() ? Verdict.NOTHING_FOUND : Verdict.HEAT_FOUND;
  }

  private static String headline(
      Verdict verdict,
      RunHeader header,
      Reduced reduced,
      String unit,
      List<HeatSource> sources,
      Lead lead) {
    return switch (verdict) {
      case NOT_ENOUGH_DATA ->
          String.format(
              Locale.ROOT,
              "No statement possible: %d good cycles (%d rejected), at least %d are needed.",
              reduced.cyclesUsed(),
              reduced.cyclesRejected(),
              header.detection().minCycles());
      case NOTHING_FOUND ->
          String.format(
              Locale.ROOT,
              "Nothing found in %d cycles; a place that swings by more than %s%s in step with the"
                  + " pulse would have been seen (95 %%).",
              reduced.cyclesUsed(),
              rise(reduced.look().upperLimitKelvin(), unit),
              inNoise(reduced.look().upperLimitKelvin(), unit, reduced.look()));
      case HEAT_FOUND -> found(sources, lead, unit, reduced.look());
    };
  }

  /** A sentence about the strongest thing that follows the pulse without being heat, or none. */
  private static String notHeat(Look look) {
    if (look == null || look.refused().isEmpty()) {
      return "";
    }
    RefusedSource first = look.refused().get(0);
    return String.format(
        Locale.ROOT,
        " Something at column %.0f, row %.0f follows the pulse, but not as heat does (%s): not"
            + " called.",
        first.source().column(),
        first.source().row(),
        first.reason().words());
  }

  /** What counts alone don't say: how large a rise is beside the noise; empty in kelvin. */
  private static String inNoise(double rise, String unit, Look look) {
    return unit.equals("K")
        ? ""
        : String.format(
            Locale.ROOT,
            ", %.1f times the noise of one pixel of the difference,",
            rise / PlaneNoise.sigma(look.inPhase()));
  }

  private static String found(List<HeatSource> sources, Lead lead, String unit, Look look) {
    HeatSource first = sources.get(lead.source());
    String where =
        lead.suspect()
            .map(suspect -> "Heat at " + suspect.part())
            .or(() -> lead.path().map(path -> "Heat " + path.place()))
            .orElseGet(
                () ->
                    String.format(
                        Locale.ROOT, "Heat at column %.1f, row %.1f", first.column(), first.row()));
    String more =
        switch (sources.size()) {
          case 1 -> "";
          case 2 -> ", and one more place";
          default -> String.format(", and %d more places", sources.size() - 1);
        };
    return String.format(
        Locale.ROOT,
        "%s%s: it swings by %s%s in step with the pulse (95 %%: %s); probability that noise alone"
            + " shows this: %s.",
        where,
        more,
        rise(first.swingKelvin(), unit),
        inNoise(first.swingKelvin(), unit, look),
        between(first.swingInterval95(), unit),
        Probability.inWords(first.familyWiseP()));
  }

  private static String nextStep(
      Verdict verdict, RunHeader header, Board board, Ranking ranking, double railOhms) {
    return switch (verdict) {
      case HEAT_FOUND ->
          board == null
              ? "Look for the part at that place; with a board file it would be named."
              : NextStep.text(board, header.rail(), ranking, railOhms)
                  + NextStep.readToo(board, wrong(header, ranking.lead()));
      case NOTHING_FOUND ->
          "Raise the level within the limits, run longer, or inject nearer to the suspected area;"
              + " shade the board and tape bare metal.";
      case NOT_ENOUGH_DATA ->
          "Run again; the rejected cycles and their reasons are in the journal.";
    };
  }

  /** The injected rail, and the part that everything is said about. */
  private static List<String> wrong(RunHeader header, Lead lead) {
    List<String> wrong = new ArrayList<>(List.of(header.rail()));
    lead.suspect().map(Suspect::part).ifPresent(wrong::add);
    return wrong;
  }
}
