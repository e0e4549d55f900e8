package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static railglow.thermal.SmallPicture.PIXELS;
import static railglow.thermal.SmallPicture.moments;
import static railglow.thermal.SmallPicture.noise;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Loops laid out for the compiler give what the plain loop of the formula gives, to the bit. */
class FastLoopsTest {
  @Test
  void cyclesAreCountedAsPositiveFromTheLeastPositiveNumberOn() {
    float[] inPhase = {0, -0f, Float.MIN_VALUE, -Float.MIN_VALUE, 1, -1, 1e38f, -1e38f, 0, 0};
    float[] quadrature = {0, 0, 0, 0, 0, 0, 0, 0, 1e-3f, -1e-3f};
    CycleSigns signs = new CycleSigns(inPhase.length);
    for (int cycle = 0; cycle < 3; cycle++) {
      signs.add(inPhase, quadrature);
    }
    for (int i = 0; i < inPhase.length; i++) {
      assertEquals(inPhase[i] > 0 ? 1 : 0, signs.share(i, 0), 0, "in phase " + inPhase[i]);
      assertEquals(
          0.43f * inPhase[i] + 0.9f * quadrature[i] > 0 ? 1 : 0,
          signs.share(i, 1.13),
          0,
          "at " + i);
    }
  }

  @Test
  void movingMomentsOnInOneGoIsWelfordsUpdateToTheBit() {
    ChannelMoments moments = new ChannelMoments(PIXELS);
    ChannelMoments moved = new ChannelMoments(PIXELS);
    float[][] plain = new float[5][PIXELS];
    for (int cycle = 1; cycle <= 4; cycle++) {
      float[] x = noise(10 + cycle);
      float[] y = noise(20 + cycle);
      moved.setTo(moments, x, y, 0, PIXELS);
      moments.add(x, y);
      welford(plain, x, y, cycle);
      for (ChannelMoments m : List.of(moments, moved)) {
        assertEquals(cycle, m.cycles());
        assertArrayEquals(plain[0], m.meanI());
        assertArrayEquals(plain[1], m.meanC());
        assertArrayEquals(plain[2], m.squaresI());
        assertArrayEquals(plain[3], m.squaresC());
        assertArrayEquals(plain[4], m.products());
      }
    }
  }

  @Test
  void theCloseTableOfScoresIsWithinTwentyMillionthsOfTheOther() {
    for (double nu : new double[] {1, 2, 3, 9, 29, 300, 1e5, 1e7}) {
      NormalScore.Table table = NormalScore.Table.of(nu);
      for (double t = 0; t < 12; t += 0.00137) {
        assertEquals(table.score((float) t), table.near((float) t), 2e-5, nu + " at " + t);
      }
    }
    assertEquals(0, NormalScore.Table.of(0).near(3));
  }

  @Test
  void scoresAroundASourceTakenOutAreThoseOfDoingItEverywhere() {
    int width = 150;
    int height = 120;
    WhiteCycles cycles =
        new WhiteCycles(width, height, 0.014, 4)
            .with(new WhiteCycles.Source(30, 40, 2, 0.05, 0), 0, 2);
    WidthPlanes[] widths = {new WidthPlanes(width, height, 1.5), new WidthPlanes(width, height, 3)};
    FilterBank bank = new FilterBank(width, height, widths);
    CommonParts.Removed nothing = CommonParts.Removed.NOTHING;
    DriftFreeCycles drift = new DriftFreeCycles();
    for (int k = 0; k < 6; k++) {
      drift
          .next(cycles.next())
          .ifPresent(
              cycle -> {
                bank.setLast(cycle, nothing, nothing);
                for (WidthPlanes each : widths) {
                  each.settle();
                }
              });
    }
    ChannelMoments scratch = new ChannelMoments(width * height);
    DetectionSettings settings = DetectionSettings.usual(2, 0, 0.05, 4, 30);
    ScoreRule[] rules = new ScoreRule[2];
    bank.setLast(drift.provisional().orElseThrow(), nothing, nothing);
    for (int w = 0; w < 2; w++) {
      MatchedFilter filter = widths[w].filter();
      widths[w].momentsInto(scratch, 0, width * height);
      PooledNoise noise =
          PooledNoise.of(
              scratch, filter.scale(), width, filter.sigma(), SpreadTable.of(10), null, 1);
      rules[w] =
          new ScoreRule(
              noise,
              DelayArc.of(settings, noise),
              scratch,
              filter.scale(),
              width,
              filter.sigma(),
              null);
    }
    Blob elsewhere = new Blob(110, 80, 3, 0.02, 0.02);
    Blob blob = new Blob(30.2, 39.9, 2, 0.05, 0.01);
    ScoreField field = new ScoreField(width, height);
    LookScores scores =
        new LookScores(width, height, widths, nothing, nothing, rules, field, scratch, 5);
    scores.scoreAll(false, false);
    assertTrue(field.scores()[40 * width + 30] > 6, "the source is in");
    scores.without(List.of(elsewhere));
    scores.without(List.of(elsewhere, blob));
    ScoreField everywhere = new ScoreField(width, height);
    everywhere.clear(Area.whole(width, height));
    float[] modelI = new float[width * height];
    float[] modelC = new float[width * height];
    for (Blob each : List.of(elsewhere, blob)) {
      for (int i = 0; i < width * height; i++) {
        double shape = each.shape(i % width, i / width);
        modelI[i] += (float) (each.inPhase() * shape);
        modelC[i] += (float) (each.quadrature() * shape);
      }
    }
    float[] fI = new float[width * height];
    float[] fC = new float[width * height];
    float[] squares = new float[width];
    RowMoments moments = new RowMoments(width);
    for (int w = 0; w < 2; w++) {
      MatchedFilter filter = widths[w].filter();
      filter.apply(modelI, fI);
      filter.apply(modelC, fC);
      for (int from = 0; from < width * height; from += width) {
        moments.set(widths[w], from, width, true);
        moments.takeOut(
            Arrays.copyOfRange(fI, from, from + width), Arrays.copyOfRange(fC, from, from + width));
        rules[w].squares(moments.moments(), squares, 0, width);
        includeEach(
            new RowTests(w, rules[w], filter.scale(), moments, squares, from, width), everywhere);
      }
    }
    // profiles are filtered, planes are filtered here: the last bits differ
    assertArrayEquals(everywhere.scores(), field.scores(), 2e-4f);
    assertTrue(field.scores()[40 * width + 30] < 6, "the source is out");
  }

  /** Every width and pixel for itself, whether it can win or not. */
  private static void includeEach(RowTests tests, ScoreField field) {
    for (int x = 0; x < tests.pixels(); x++) {
      int i = tests.start() + x;
      float score = tests.score(i);
      if (score > ScoreField.WORTH_A_SECOND_LOOK) {
        LargestScore best = new LargestScore(Double.NEGATIVE_INFINITY);
        tests.takeDoubted(x, Double.POSITIVE_INFINITY, best);
        score = (float) best.score();
      }
      field.scores()[i] = Math.max(field.scores()[i], score);
    }
  }

  @Test
  void squaresOfOppositeDirectionsAreThoseOfTheMirroredRule() {
    ChannelMoments moments = moments(5, 30, 40);
    ScoreRule rule = SmallPicture.rule(moments);
    float[] alone = new float[PIXELS];
    float[] opposite = new float[PIXELS];
    float[] both = new float[PIXELS];
    float[] mirrored = new float[PIXELS];
    rule.squares(moments, alone, 0, PIXELS);
    rule.mirrored().squares(moments, opposite, 0, PIXELS);
    rule.squares(moments, both, mirrored, new float[PIXELS], 0, PIXELS);
    assertArrayEquals(alone, both);
    assertArrayEquals(opposite, mirrored);
  }

  @Test
  void noDirectionsSquareIsAboveThePixelsBound() {
    ChannelMoments moments = moments(5, 50, 60);
    PooledNoise noise = SmallPicture.pooled(moments);
    DelayArc arc = SmallPicture.arc(noise);
    float[] most = new float[PIXELS];
    float[] least = new float[PIXELS];
    float[] bounds = new float[PIXELS];
    Extremes.mostAndLeast(moments, arc, most, least, 0, PIXELS);
    Extremes.bounds(moments, noise, bounds, 0, PIXELS);
    float closest = 0;
    for (int i = 0; i < PIXELS; i++) {
      float y = Math.max(Math.abs(most[i]), Math.abs(least[i]));
      float square = moments.cycles() * y * y;
      assertTrue(square <= bounds[i], square + " above " + bounds[i]);
      closest = Math.max(closest, square / bounds[i]);
    }
    assertTrue(closest > 0.98, "along a direction it is reached: " + closest);
    assertTrue(Extremes.reach(new float[] {1, 3, Float.NaN, 2}, 3, 4));
    assertFalse(Extremes.reach(new float[] {1, 3, Float.NaN, 4}, 3.5f, 3), "only the first count");
  }

  @Test
  void noSmallerSquareHasAScoreAsHigh() {
    ScoreRule rule = SmallPicture.rule(moments(3, 50, 60));
    for (double score = 3; score < 12; score += 0.1) {
      float below = Math.nextDown(rule.squareBelow(score));
      assertTrue(rule.score(below) < score, score + " at " + below);
      assertTrue(rule.score(1.1f * below) > score, score + " at " + below);
    }
  }

  /** Technometrics 4, 1962, p. 419, in single precision. */
  private static void welford(float[][] m, float[] x, float[] y, int cycles) {
    float share = 1f / cycles;
    float rest = 1 - share;
    for (int i = 0; i < x.length; i++) {
      float dX = x[i] - m[0][i];
      float dY = y[i] - m[1][i];
      m[0][i] += dX * share;
      m[1][i] += dY * share;
      m[2][i] += dX * dX * rest;
      m[3][i] += dY * dY * rest;
      m[4][i] += dX * dY * rest;
    }
  }
}
