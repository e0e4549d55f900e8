package railglow.board.readings;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import railglow.board.ladder.LadderJudge;
import railglow.board.ladder.LadderStep;
import railglow.board.ladder.LadderVerdict;
import railglow.board.ladder.StraightLine;
import railglow.units.Quantity;
import railglow.units.Unit;

/**
 * A rail's resistance from a few gentle levels of the supply. The slope over the levels is used
 * where the path is ohmic: what the meters show at zero and thermal voltages cancel in it, as they
 * do when a current is reversed. Pure.
 *
 * @param readings as a meter would have given them; one for an ohmic path, two levels for a path
 *     that depends on the level, none when nothing can be said
 * @param atLeastOhms what the rail has at least where it drew nothing that can be told; NaN
 *     elsewhere
 * @param sentence what was measured and how well
 */
public record MeasuredRail(List<RailReading> readings, double atLeastOhms, String sentence) {
  private static final double SEEN_SIGMAS = 4;

  public MeasuredRail {
    readings = List.copyOf(readings);
  }

  /**
   * @param steps by rising level, volts at the board (leads taken off)
   * @param reversed whether the negative lead was on the rail
   */
  public static MeasuredRail of(
      String rail,
      List<LadderStep> steps,
      MeasuringLeads leads,
      MeterErrors meters,
      boolean reversed) {
    LadderVerdict verdict = LadderJudge.judge(steps);
    return new Maker(rail, steps, leads, meters, reversed).of(verdict);
  }

  private record Maker(
      String rail,
      List<LadderStep> steps,
      MeasuringLeads leads,
      MeterErrors meters,
      boolean reversed) {

    MeasuredRail of(LadderVerdict verdict) {
      return switch (verdict.kind()) {
        case OHMIC -> ohmic(verdict);
        case CURRENT_LIMITED -> single(last());
        case JUNCTION, BREAKING_DOWN -> byLevel(verdict);
        case DRIFTING -> drifting(verdict);
        case OPEN_CONTACT -> nothing();
        case TOO_FEW_STEPS ->
            new MeasuredRail(
                List.of(), Double.NaN, rail + " can't be said: " + verdict.reason() + ".");
      };
    }

    private MeasuredRail ohmic(LadderVerdict verdict) {
      double sigma =
          Math.hypot(
              verdict.ohmsSigma(),
              Math.hypot(leads.sigmaOhms(), meters.slopeSigma(verdict.ohms())));
      RailReading reading = reading(verdict.ohms(), sigma, last().volts());
      return new MeasuredRail(
          List.of(reading),
          Double.NaN,
          says(reading)
              + ", by the slope over "
              + steps.size()
              + " levels up to "
              + Quantity.format(last().amperes(), Unit.AMPERE)
              + ", in which the meters' errors at zero cancel; "
              + through()
              + coarse(reading));
    }

    private MeasuredRail single(LadderStep step) {
      RailReading reading = ratio(step);
      return new MeasuredRail(
          List.of(reading),
          Double.NaN,
          says(reading)
              + (step.supplyLimits()
                  ? ", with the supply at its current limit; "
                  : ", where the current no longer grows though the supply does not limit it; ")
              + through()
              + coarse(reading));
    }

    /**
     * Two readings, so that whoever judges them sees that they differ: the slope of the lower
     * levels, in which the meters' errors at zero cancel, and the last level.
     */
    private MeasuredRail byLevel(LadderVerdict verdict) {
      List<RailReading> readings = new ArrayList<>();
      long sound = steps.stream().filter(s -> s.volts() <= verdict.highestSoundVolts()).count();
      int cut = (int) Math.max(3, Math.min(sound, steps.size() - 1));
      StraightLine low = line(steps.subList(0, cut));
      double conductance = Math.max(low.slope(), 0) + low.slopeSigma();
      double ohms = 1 / (low.slope() > SEEN_SIGMAS * low.slopeSigma() ? low.slope() : conductance);
      double sigma = Math.hypot(ohms * ohms * low.slopeSigma(), meters.slopeSigma(ohms));
      readings.add(reading(ohms, sigma, steps.get(cut - 1).volts()));
      readings.add(ratio(last()));
      return new MeasuredRail(
          readings, Double.NaN, rail + " depends on the level: " + verdict.reason() + ".");
    }

    private static StraightLine line(List<LadderStep> steps) {
      return StraightLine.of(
          steps.stream().mapToDouble(LadderStep::volts).toArray(),
          steps.stream().mapToDouble(LadderStep::amperes).toArray(),
          steps.stream().mapToDouble(LadderStep::amperesSigma).toArray());
    }

    private MeasuredRail drifting(LadderVerdict verdict) {
      LadderStep sound = steps.get(0);
      for (LadderStep step : steps) {
        if (step.volts() <= verdict.highestSoundVolts() && conducts(step)) {
          sound = step;
        }
      }
      if (!conducts(sound)) {
        return new MeasuredRail(
            List.of(), Double.NaN, rail + " can't be said: " + verdict.reason() + ".");
      }
      RailReading reading = ratio(sound);
      return new MeasuredRail(
          List.of(reading), Double.NaN, says(reading) + "; but " + verdict.reason() + ".");
    }

    private MeasuredRail nothing() {
      double least = 0;
      for (LadderStep step : steps) {
        double told = SEEN_SIGMAS * Math.max(step.amperesSigma(), meters.amperes() / 2);
        least = Math.max(least, step.volts() / told);
      }
      return new MeasuredRail(
          List.of(),
          least,
          rail
              + " draws nothing this supply can tell up to "
              + Quantity.format(last().volts(), Unit.VOLT)
              + ": more than about "
              + Quantity.format(least, Unit.OHM)
              + ", or no contact. Read it with an ohm-meter.");
    }

    private boolean conducts(LadderStep step) {
      return step.amperes() > SEEN_SIGMAS * step.amperesSigma() && step.volts() > 0;
    }

    private RailReading ratio(LadderStep step) {
      double ohms = Math.max(0, step.volts()) / step.amperes();
      double random =
          Math.hypot(
              step.voltsSigma() / step.amperes(), ohms * step.amperesSigma() / step.amperes());
      double sigma =
          Math.hypot(
              Math.hypot(random, leads.sigmaOhms()),
              meters.ratioSigma(Math.max(0, step.volts()), step.amperes()));
      return reading(ohms, sigma, step.volts());
    }

    private RailReading reading(double ohms, double sigma, double volts) {
      return new RailReading(
          rail,
          Math.max(0, ohms) + leads.ohms(),
          leads.ohms(),
          Math.max(1e-6, sigma),
          volts,
          reversed ? RailReading.Polarity.NEGATIVE : RailReading.Polarity.POSITIVE);
    }

    private String says(RailReading reading) {
      return String.format(
          Locale.ROOT,
          "%s reads %s +- %s%s",
          rail,
          Quantity.format(reading.railOhms(), Unit.OHM),
          Quantity.format(reading.sigmaOhms(), Unit.OHM),
          reversed ? " with the leads swapped" : "");
    }

    /** What to do where the error is as large as what is read. */
    private String coarse(RailReading reading) {
      return reading.sigmaOhms() < reading.railOhms() / 2
          ? ""
          : leads.fourWire()
              ? " The error is as large as the reading: a higher --current-limit makes it smaller."
              : " The error is as large as the reading: sense at the board (4-wire), or give a"
                  + " higher --current-limit.";
    }

    private String through() {
      return leads.fourWire()
          ? "4-wire, sensed at the board: the leads are in none of it."
          : "2-wire: "
              + Quantity.format(leads.ohms(), Unit.OHM)
              + " of leads are taken off, known to "
              + Quantity.format(leads.sigmaOhms(), Unit.OHM)
              + ".";
    }

    private LadderStep last() {
      return steps.get(steps.size() - 1);
    }
  }
}
