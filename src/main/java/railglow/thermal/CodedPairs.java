package railglow.thermal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Turns pairs of cycles of opposite sign into one: half of their difference, so that what is alike
 * in both (a disturbance that repeats with the period, an offset, a straight drift) is gone. Cycle
 * 2k and 2k + 1 are a pair; one whose partner was left out is left out, too. Not thread-safe.
 */
public final class CodedPairs {
  private QuarterMeans first;
  private boolean firstInverted;

  /**
   * @param means of the next accepted cycle, which becomes ours
   * @param inverted whether it was ON OFF OFF ON
   * @return the pair, as if it were one cycle OFF ON ON OFF; numbered by its first cycle, so that
   *     no two pairs are neighbours and nothing is bridged between them
   */
  public Optional<QuarterMeans> take(QuarterMeans means, boolean inverted) {
    if (means.cycle() % 2 == 0) {
      first = means;
      firstInverted = inverted;
      return Optional.empty();
    }
    QuarterMeans before = first;
    first = null;
    if (before == null || before.cycle() != means.cycle() - 1 || firstInverted == inverted) {
      return Optional.empty();
    }
    float sign = firstInverted ? -0.5f : 0.5f;
    int[] frames = before.framesPerQuarter().clone();
    for (int i = 0; i < 4; i++) {
      frames[i] += means.framesPerQuarter()[i];
    }
    return Optional.of(
        new QuarterMeans(
            before.cycle(),
            difference(before.q1(), means.q1(), sign),
            difference(before.q2(), means.q2(), sign),
            difference(before.q3(), means.q3(), sign),
            difference(before.q4(), means.q4(), sign),
            frames,
            times(before, means)));
  }

  /** Of both; none where those of either are not known. */
  private static List<CycleTimes> times(QuarterMeans before, QuarterMeans means) {
    if (before.times().isEmpty() || means.times().isEmpty()) {
      return List.of();
    }
    List<CycleTimes> times = new ArrayList<>(before.times());
    times.addAll(means.times());
    return times;
  }

  private static Plane difference(Plane a, Plane b, float factor) {
    float[] values = new float[a.values().length];
    for (int i = 0; i < values.length; i++) {
      values[i] = factor * (a.values()[i] - b.values()[i]);
    }
    return new Plane(a.width(), a.height(), values);
  }
}
