package railglow.thermal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * From the quarter means of cycles to heat sources with their certainty. A deterministic function
 * of settings and cycles in order: the same input gives the same bits. Not thread-safe.
 *
 * <p>Per cycle: both channels, drift taken out, spikes and common parts removed, filtered at every
 * width, running moments kept. Per look: typical noise, scores along the arc of delays, family-wise
 * bound, fit of each source. See docs/detection.md.
 */
public final class Detector {
  private final DetectionSettings settings;
  private final int width;
  private final int height;
  private final WidthPlanes[] widths;
  private final FilterBank bank;
  private final ChannelMoments plain;
  private final ChannelMoments scratch;
  private final ChannelMoments plainScratch;
  private final DriftFreeCycles cycles = new DriftFreeCycles();
  private final FramesUsed framesUsed;
  private final CycleSigns signs;
  private final CycleCorrelation correlation;
  private final ScoreField field;
  private final RunError runError;
  private ReducedCycle startBend;
  private float[] mask;
  private CommonParts.Removed removedI = CommonParts.Removed.NOTHING;
  private CommonParts.Removed removedC = CommonParts.Removed.NOTHING;
  private int accepted;
  private final double[] scoresToCall;
  private int firstCall = Integer.MAX_VALUE;

  public Detector(DetectionSettings settings, int width, int height) {
    if (width < 4 || height < 4) {
      throw new IllegalArgumentException(
          "a picture of " + width + " x " + height + " pixels; at least 4 x 4 are needed");
    }
    this.settings = settings;
    this.framesUsed = new FramesUsed(settings);
    this.width = width;
    this.height = height;
    int pixels = Math.multiplyExact(width, height);
    double[] sigmas = settings.filterSigmasPixels();
    widths = new WidthPlanes[sigmas.length];
    Arrays.setAll(widths, w -> new WidthPlanes(width, height, sigmas[w]));
    bank = new FilterBank(width, height, widths);
    plain = new ChannelMoments(pixels);
    scratch = new ChannelMoments(pixels);
    plainScratch = new ChannelMoments(pixels);
    signs = new CycleSigns(pixels);
    correlation = new CycleCorrelation(width, height);
    field = new ScoreField(width, height);
    scoresToCall = new double[settings.maxCycles() + 1];
    Arrays.fill(scoresToCall, Double.POSITIVE_INFINITY);
    runError = RunError.of(settings.minCycles(), settings.maxCycles());
  }

  /**
   * Takes one accepted cycle. Cycle numbers must ascend; a gap is a cycle left out.
   *
   * @throws IllegalStateException beyond the cap of the settings
   */
  public void addCycle(QuarterMeans means) {
    if (means.q1().width() != width || means.q1().height() != height) {
      throw new IllegalArgumentException(
          "a cycle of %d x %d in a run of %d x %d"
              .formatted(means.q1().width(), means.q1().height(), width, height));
    }
    if (accepted == settings.maxCycles()) {
      throw new IllegalStateException("more than the cap of " + accepted + " cycles");
    }
    cycles.next(means).ifPresent(this::settle);
    if (startBend == null && !settings.coded()) {
      cycles.startBend().ifPresent(this::takeStartBend);
    }
    framesUsed.add(means.cycle(), means.times());
    accepted++;
  }

  /** How many cycles were taken. */
  public int cycles() {
    return accepted;
  }

  /** The normal score that the last look asked for; infinite where it was not lawful. */
  double scoreToCall() {
    return scoresToCall[accepted];
  }

  private void settle(ReducedCycle cycle) {
    clean(cycle);
    plain.add(cycle.inPhase(), cycle.quadrature());
    bank.setLast(cycle, removedI, removedC);
    for (WidthPlanes each : widths) {
      each.settle();
    }
    correlation.add(widths[0].lastI());
    signs.add(middle().lastI(), middle().lastC());
  }

  private void takeStartBend(ReducedCycle bend) {
    DriftFreeCycles.maskInvalid(bend);
    CommonParts.remove(bend.inPhase(), width, height, mask);
    CommonParts.remove(bend.quadrature(), width, height, mask);
    startBend = bend;
  }

  private WidthPlanes middle() {
    return widths[widths.length / 2];
  }

  private void clean(ReducedCycle cycle) {
    float[] cycleMask = DriftFreeCycles.maskInvalid(cycle);
    if (!Arrays.equals(cycleMask, mask)) {
      mask = cycleMask;
      for (WidthPlanes each : widths) {
        each.filter().maskWith(mask);
      }
    }
    removedI = cleanPlane(cycle.inPhase());
    removedC = cleanPlane(cycle.quadrature());
  }

  private CommonParts.Removed cleanPlane(float[] plane) {
    CommonParts.Removed removed = CommonParts.remove(plane, width, height, mask);
    if (removed.sigma() > 0) {
      Spikes.replace(plane, width, height, removed.sigma());
    }
    return removed;
  }

  /**
   * What can be said now. Lawful at any time; before the first look and with less than two cycles
   * nothing is called and the upper limit is infinite.
   */
  public Look look() {
    return verdict(measure());
  }

  /**
   * Whether a look now would surely call nothing. Costs less than the look, and later looks need no
   * more of this one than is done here. Where this is false, look.
   */
  public boolean surelyCallsNothing() {
    Measured measured = measure();
    FieldFamily family = WidthStatistics.family(measured.statistics(), width, height);
    if (family == null) {
      return true;
    }
    double bound = runError.scale(accepted, family).bound(settings.familyWiseError());
    scoresToCall[accepted] = bound;
    return Double.isInfinite(bound) || !scoring(measured, bound).callsAny();
  }

  private LookScores scoring(Measured measured, double bound) {
    return new LookScores(
        width, height, widths, removedI, removedC, measured.rules(), field, scratch, bound);
  }

  /** The noise at every width, with the last cycle as it is known so far. */
  private Measured measure() {
    Optional<ReducedCycle> last = cycles.provisional();
    last.ifPresent(this::clean);
    last.ifPresent(
        cycle -> plainScratch.setTo(plain, cycle.inPhase(), cycle.quadrature(), 0, width * height));
    WidthStatistics[] statistics = new WidthStatistics[widths.length];
    ScoreRule[] rules = new ScoreRule[widths.length];
    LineNoise lines = accepted < 3 ? null : LineNoise.of(plainScratch, mask, width, height);
    if (accepted >= 2) {
      bank.setLast(last.orElseThrow(), removedI, removedC);
      signs.setLast(middle().lastI(), middle().lastC());
      measure(statistics, rules, lines);
    }
    return new Measured(statistics, rules, lines);
  }

  private void measure(WidthStatistics[] statistics, ScoreRule[] rules, LineNoise lines) {
    SpreadTable spread = SpreadTable.of(2.0 * (accepted - 1));
    for (int row = 0; row < height; row += CycleCorrelation.STRIDE) {
      widths[0].momentsInto(scratch, row * width, (row + 1) * width);
    }
    double scatterToMean = correlation.scatterToMean(scratch, widths[0].lastI());
    for (int w = 0; w < widths.length; w++) {
      MatchedFilter filter = widths[w].filter();
      double sigma = filter.sigma();
      float[] perDeviation = lines == null ? null : lines.perDeviation(sigma);
      // noise is measured on a lattice: its rows will do
      int stride = PooledNoise.stride(sigma);
      for (int row = Math.min(stride / 2, height - 1); row < height; row += stride) {
        widths[w].momentsInto(scratch, row * width, (row + 1) * width);
        if (perDeviation != null) {
          scratch.evenOut(perDeviation, row * width, (row + 1) * width);
        }
      }
      PooledNoise narrower = w > 0 && statistics[w - 1] != null ? statistics[w - 1].noise() : null;
      PooledNoise noise =
          PooledNoise.of(scratch, filter.scale(), width, sigma, spread, narrower, scatterToMean);
      if (noise != null) {
        DelayArc arc = DelayArc.of(settings, noise);
        rules[w] = new ScoreRule(noise, arc, scratch, filter.scale(), width, sigma, perDeviation);
        statistics[w] =
            new WidthStatistics(sigma, filter.fieldSigma(removedI), noise, arc, accepted - 1);
      }
    }
  }

  /**
   * Per pixel how far it follows the pulse alike in every cycle so far but the last: 1 where it
   * scatters no more than chance allows, less where there is a reflection, motion or flicker, 0
   * where it never changes.
   */
  public Plane trust() {
    ChannelMoments narrow = widths[0].settled();
    MatchedFilter filter = widths[0].filter();
    PooledNoise noise =
        narrow.cycles() < 3
            ? null
            : PooledNoise.of(
                narrow,
                filter.scale(),
                width,
                filter.sigma(),
                SpreadTable.of(2.0 * (narrow.cycles() - 1)),
                null,
                1);
    Plane trust = new Plane(width, height);
    Arrays.fill(trust.values(), 1);
    return noise == null ? trust : TrustMap.of(narrow, noise, cycles.alive(), width, height);
  }

  private Look verdict(Measured measured) {
    WidthStatistics[] statistics = measured.statistics();
    Plane significance = new Plane(width, height);
    FieldFamily family = WidthStatistics.family(statistics, width, height);
    if (family == null) {
      return new Look(
          accepted,
          List.of(),
          null,
          Double.POSITIVE_INFINITY,
          plane(plainScratch.meanI()),
          plane(plainScratch.meanC()),
          significance,
          framesUsed.ofOneLag()::seen);
    }
    RunError.Scale scale = runError.scale(accepted, family);
    double bound = scale.bound(settings.familyWiseError());
    scoresToCall[accepted] = bound;
    ReducedCycle later = startBend == null ? null : plainScratch.withoutFirst(startBend);
    LookScores lookScores = scoring(measured, bound);
    WidthStatistics widest = statistics[statistics.length - 1];
    lookScores.scoreAll(widest != null, firstCall <= accepted);
    lookScores.clearLines(plainScratch, mask, widest == null ? null : widest.arc());
    Plane inPhase = plane(plainScratch.meanI());
    Plane quadrature = plane(plainScratch.meanC());
    float[] scores = field.scores();
    for (int i = 0; i < scores.length; i++) {
      significance.values()[i] = Float.isFinite(scores[i]) ? scores[i] : 0;
    }
    SourceFit fit =
        new SourceFit(
            framesUsed.ofSwings(),
            new MeanPlanes(plainScratch, width, height),
            new MeanPlanes(plainScratch, later, width, height),
            statistics);
    SourceSearch search = new SourceSearch(fit, field, width, height, statistics, accepted);
    int stopped = firstCall;
    List<FoundSource> found =
        search.sources(
            bound,
            scale::familyWiseP,
            z -> stopped >= accepted ? EarlyStop.of(scoresToCall, accepted, z) : EarlyStop.NONE,
            lookScores);
    List<HeatSource> sources = new ArrayList<>();
    List<RefusedSource> refused = new ArrayList<>();
    HeatSource strongest = null;
    for (FoundSource one : found) {
      HeatSource source = fit.describe(one, signs);
      Optional<NotHeat> objection = fit.objection(one, source);
      if (source.familyWiseP() > settings.familyWiseError()) {
        strongest = strongest == null ? source : strongest;
        if (sources.isEmpty() && one.candidate().score() >= bound) {
          refused.add(new RefusedSource(source, NotHeat.NO_STRONGER_THAN_COLD));
        }
      } else if (objection.isPresent()) {
        refused.add(new RefusedSource(source, objection.get()));
      } else {
        strongest = strongest == null ? source : strongest;
        firstCall = Math.min(firstCall, accepted);
        sources.add(source);
      }
    }
    double limit =
        WidthStatistics.upperLimit(
            statistics, widths, settings, removedI, measured.lines(), scoreToCall());
    return new Look(
        accepted,
        sources,
        refused,
        strongest,
        limit,
        inPhase,
        quadrature,
        significance,
        framesUsed.ofOneLag()::seen);
  }

  private Plane plane(float[] values) {
    return new Plane(width, height, values.clone());
  }
}
