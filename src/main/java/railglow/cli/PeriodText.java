package railglow.cli;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import railglow.camera.CameraProfile;
import railglow.camera.noise.NoiseFigures;
import railglow.config.MeasuredCamera;
import railglow.config.MeasuredNoise;
import railglow.thermal.FirstOrderResponse;
import railglow.thermal.PeriodChoice;
import railglow.units.Quantity;
import railglow.units.Unit;

/** Why this period, or which would be better, in two lines. */
final class PeriodText {
  private static final double BODY_SECONDS = 0.5;
  private static final double SHORTEST = 0.5;
  private static final double LONGEST = 60;

  private PeriodText() {}

  static List<String> of(RunSetup setup) {
    CameraProfile camera = setup.camera().profile();
    double period = setup.sequence().periodSeconds();
    double lag = camera.timeConstantSeconds();
    FirstOrderResponse seen = FirstOrderResponse.of(BODY_SECONDS, lag, period);
    String first =
        String.format(
            Locale.ROOT,
            "Period     in %s a part that takes %.1f s to warm shows %.0f %% of its rise at once and"
                + " %.0f %% late",
            Quantity.format(period, Unit.SECOND),
            BODY_SECONDS,
            100 * seen.inPhase(),
            100 * seen.quadrature());
    return List.of(first, "           " + advice(setup, period, lag));
  }

  private static String advice(RunSetup setup, double period, double lag) {
    Optional<NoiseFigures> figures =
        setup.measured().flatMap(MeasuredCamera::noise).map(MeasuredNoise::figures);
    if (figures.isEmpty()) {
      return "the bench's drift was not measured (bench --keep): if the noise is white, longer"
          + " periods show slow parts better";
    }
    DoubleUnaryOperator allan = figures.get()::allanDeviationAt;
    double longest = Math.min(LONGEST, 2 * figures.get().seconds() / 4);
    double best = PeriodChoice.best(allan, BODY_SECONDS, lag, SHORTEST, longest);
    double ratio =
        PeriodChoice.worth(allan, period, BODY_SECONDS, lag)
            / PeriodChoice.worth(allan, best, BODY_SECONDS, lag);
    return Double.isNaN(ratio)
        ? "the bench's noise was measured for too short a time to say more"
        : String.format(
            Locale.ROOT,
            "by this bench's measured noise and drift %s would do: this period needs %.1f times as"
                + " long for the same certainty",
            Quantity.format(best, Unit.SECOND),
            1 / (ratio * ratio));
  }
}
