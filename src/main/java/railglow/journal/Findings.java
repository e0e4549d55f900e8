package railglow.journal;

import java.util.List;
import java.util.Map;
import railglow.board.HeatPath;
import railglow.board.Lead;
import railglow.board.Suspect;
import railglow.board.TrueRise;
import railglow.thermal.HeatSource;

/**
 * What a run found; a pure function of its folder, so that a replay gives the same bits.
 *
 * @param verdict what can be said
 * @param headline one sentence for the operator
 * @param nextStep what to do next and which reading would confirm it; empty when nothing is
 * @param sources strongest first
 * @param suspects by rank
 * @param paths heat that is most likely of the current's way
 * @param cyclesUsed cycles that count
 * @param cyclesRejected cycles left out
 * @param framesByMark frames left out by reason
 * @param unit "K" or "counts": the unit of every rise here
 * @param upperLimit a source stronger than this would have been called, in that unit
 * @param upperLimitMilliwatts the same as power at the fault; NaN where no source calibrates it
 * @param onVolts mean at the board during settled ON halves; NaN when not measured
 * @param onAmperes likewise
 * @param onWatts at the board, leads subtracted
 * @param railOhms onVolts / onAmperes; NaN when not measured
 * @param power the heat in view as power
 * @param trueRises what places truly warm by, where their surface is known and rises are in kelvin
 */
public record Findings(
    Verdict verdict,
    String headline,
    String nextStep,
    List<HeatSource> sources,
    List<Suspect> suspects,
    List<HeatPath> paths,
    int cyclesUsed,
    int cyclesRejected,
    Map<String, Integer> framesByMark,
    String unit,
    double upperLimit,
    double upperLimitMilliwatts,
    double onVolts,
    double onAmperes,
    double onWatts,
    double railOhms,
    HeatPower power,
    List<TrueRise> trueRises) {
  /** What the data allow to say. */
  public enum Verdict {
    HEAT_FOUND,
    NOTHING_FOUND,
    /** Too few good cycles for any statement. */
    NOT_ENOUGH_DATA
  }

  /** The source and the part that everything said in one sentence is about. */
  public Lead lead() {
    return Lead.of(suspects, paths);
  }
}
