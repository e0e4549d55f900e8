package railglow.board.compare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.apache.commons.statistics.distribution.NormalDistribution;
import railglow.board.compare.ComparedSource.Presence;
import railglow.board.geometry.BoardPosition;
import railglow.thermal.HeatSource;

/**
 * Matches the heat sources of two runs by place and compares what they do per watt. Pure and
 * deterministic.
 *
 * @param sources those in both first, then by rise
 * @param inMillimetres whether places are board millimetres; pixels otherwise
 * @param bySwing whether swings are compared; settled rises otherwise, since the runs pulsed
 *     differently
 */
public record RunComparison(List<ComparedSource> sources, boolean inMillimetres, boolean bySwing) {
  /** How far the warmest place of one part wanders between injection points; own choice. */
  private static final double WANDER = 0.5;

  private static final double GATE_SIGMAS = 3.03;
  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

  public RunComparison {
    sources = List.copyOf(sources);
  }

  /**
   * Both runs must be registered, or neither: then the camera must not have moved between them.
   *
   * @throws IllegalArgumentException when only one is registered
   */
  public static RunComparison of(ComparedRun first, ComparedRun second) {
    if (first.registration().isPresent() != second.registration().isPresent()) {
      throw new IllegalArgumentException(
          "only one of the two runs has a registration; places can't be compared");
    }
    boolean millimetres = first.registration().isPresent();
    List<Pair> pairs = pairs(first, second, millimetres ? WANDER : 2 * WANDER);
    Set<Integer> firstUsed = new TreeSet<>();
    Set<Integer> secondUsed = new TreeSet<>();
    List<ComparedSource> found = new ArrayList<>();
    for (Pair pair : pairs) {
      if (!firstUsed.contains(pair.first) && !secondUsed.contains(pair.second)) {
        firstUsed.add(pair.first);
        secondUsed.add(pair.second);
        found.add(both(first, second, pair));
      }
    }
    found.sort(Comparator.comparingInt(ComparedSource::first));
    for (int i = 0; i < first.sources().size(); i++) {
      if (!firstUsed.contains(i)) {
        found.add(firstOnly(first, second, i));
      }
    }
    for (int i = 0; i < second.sources().size(); i++) {
      if (!secondUsed.contains(i)) {
        found.add(mirrored(firstOnly(second, first, i)));
      }
    }
    return new RunComparison(found, millimetres, PerWatt.bySwing(first, second));
  }

  /**
   * The same where a source that one run did not call is as warm in its picture all the same: it is
   * not absent.
   *
   * @param asWarm whether both pictures show the same heat at a source's place
   */
  public RunComparison lookedAt(Predicate<ComparedSource> asWarm) {
    return new RunComparison(
        sources.stream()
            .map(
                source ->
                    !source.presence().isInBoth() && asWarm.test(source)
                        ? source.seenByThePicture()
                        : source)
            .toList(),
        inMillimetres,
        bySwing);
  }

  private record Pair(int first, int second, double sigmas) {}

  private static List<Pair> pairs(ComparedRun first, ComparedRun second, double wander) {
    List<Pair> pairs = new ArrayList<>();
    for (int i = 0; i < first.sources().size(); i++) {
      for (int j = 0; j < second.sources().size(); j++) {
        double sigmas =
            sigmas(
                first.place(first.sources().get(i)),
                second.place(second.sources().get(j)).withAdded(wander));
        if (sigmas <= GATE_SIGMAS) {
          pairs.add(new Pair(i, j, sigmas));
        }
      }
    }
    pairs.sort(
        Comparator.comparingDouble(Pair::sigmas)
            .thenComparingInt(Pair::first)
            .thenComparingInt(Pair::second));
    return pairs;
  }

  private static double sigmas(BoardPosition a, BoardPosition b) {
    double xx = a.xVariance() + b.xVariance();
    double yy = a.yVariance() + b.yVariance();
    double xy = a.covariance() + b.covariance();
    double dx = a.xMillimetres() - b.xMillimetres();
    double dy = a.yMillimetres() - b.yMillimetres();
    double determinant = xx * yy - xy * xy;
    return Math.sqrt((dx * dx * yy - 2 * dx * dy * xy + dy * dy * xx) / determinant);
  }

  private static ComparedSource both(ComparedRun first, ComparedRun second, Pair pair) {
    HeatSource a = first.sources().get(pair.first);
    HeatSource b = second.sources().get(pair.second);
    BoardPosition place = first.place(a);
    PerWatt compared = PerWatt.of(first, a, second, b);
    return new ComparedSource(
        Presence.BOTH,
        pair.first,
        pair.second,
        place.xMillimetres(),
        place.yMillimetres(),
        compared.first(),
        compared.second(),
        compared.difference(),
        compared.sigma(),
        twoSided(compared.difference() / compared.sigma()),
        true);
  }

  /** A source the second run does not show: there it is at most the second's upper limit. */
  private static ComparedSource firstOnly(ComparedRun first, ComparedRun second, int index) {
    HeatSource source = first.sources().get(index);
    BoardPosition place = first.place(source);
    boolean bySwing = PerWatt.bySwing(first, second);
    double share = bySwing ? 1 : second.pulses().swingShare(source.timeConstantSeconds());
    double most = second.upperLimitKelvin() / share / second.watts();
    PerWatt.Known known = bySwing ? PerWatt.swing(first, source) : PerWatt.settled(first, source);
    double here = known.value();
    double sigma = known.sigma();
    double difference = most - here;
    boolean sure = difference < 0 && -difference > 1.645 * sigma;
    return new ComparedSource(
        Presence.FIRST_ONLY,
        index,
        -1,
        place.xMillimetres(),
        place.yMillimetres(),
        here,
        most,
        difference,
        sigma,
        difference < 0 ? twoSided(difference / sigma) : Double.NaN,
        sure);
  }

  private static ComparedSource mirrored(ComparedSource source) {
    return new ComparedSource(
        Presence.SECOND_ONLY,
        -1,
        source.first(),
        source.x(),
        source.y(),
        source.secondPerWatt(),
        source.firstPerWatt(),
        -source.difference(),
        source.differenceSigma(),
        source.p(),
        source.absenceIsSure());
  }

  private static double twoSided(double z) {
    return Double.isNaN(z) ? Double.NaN : 2 * NORMAL.survivalProbability(Math.abs(z));
  }
}
