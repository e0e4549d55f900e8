package railglow.thermal.inverse;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import railglow.thermal.FirstOrderResponse;
import railglow.thermal.Plane;

/** Rise maps made by adding up the plate's own modes, with white noise. */
class SourceInversionTest {
  private static final double PERIOD = 2;
  private static final double PITCH = 0.5e-3;
  private static final double NOISE = 0.004;
  private static final Plate BOARD = Plate.board(1.6e-3, 0.28e-3, 15);
  private static final int SIZE = 96;

  private static RiseMaps maps(Plane inPhase, Plane quadrature, double noise) {
    return new RiseMaps(
        inPhase,
        quadrature,
        noise,
        noise,
        PITCH,
        0.7,
        0.9,
        PERIOD,
        0,
        tau -> FirstOrderResponse.of(tau, PERIOD));
  }

  /** Gaussian sources of 1 pixel: column, row, watts. */
  private static RiseMaps of(double noise, double[]... sources) {
    Spectrum spectrum = new Spectrum(SIZE, SIZE, 32);
    int n = spectrum.size();
    double[][] power = {new double[n], new double[n]};
    for (double[] source : sources) {
      for (int i = 0; i < n; i++) {
        double dx = i % spectrum.columns() - source[0];
        double dy = (double) (i / spectrum.columns()) - source[1];
        double shape = Math.exp(-(dx * dx + dy * dy) / 2) / (2 * Math.PI);
        power[0][i] += source[2] * shape / (PITCH * PITCH);
      }
    }
    spectrum.forward(power);
    double[][] inPhase = {power[0].clone(), power[1].clone()};
    double[][] quadrature = {power[0].clone(), power[1].clone()};
    for (int k = 0; k < n; k++) {
      double square = spectrum.waveNumberSquared(k);
      double tau = BOARD.modeTimeConstantSeconds(Math.sqrt(square) / PITCH);
      FirstOrderResponse seen = FirstOrderResponse.of(tau, PERIOD);
      double scale = 0.9 * Math.exp(-square * 0.49 / 2) * tau / BOARD.areaCapacity();
      for (int part = 0; part < 2; part++) {
        inPhase[part][k] *= scale * seen.inPhase();
        quadrature[part][k] *= scale * seen.quadrature();
      }
    }
    spectrum.inverse(inPhase);
    spectrum.inverse(quadrature);
    SplittableRandom random = new SplittableRandom(7);
    return maps(
        plane(inPhase[0], spectrum, random, noise),
        plane(quadrature[0], spectrum, random, noise),
        noise);
  }

  private static Plane plane(
      double[] values, Spectrum spectrum, SplittableRandom random, double noise) {
    Plane plane = new Plane(SIZE, SIZE);
    for (int i = 0; i < SIZE * SIZE; i++) {
      double value = values[i / SIZE * spectrum.columns() + i % SIZE];
      plane.values()[i] = (float) (value + noise * random.nextGaussian());
    }
    return plane;
  }

  private static double[] source(double column, double row, double watts) {
    return new double[] {column, row, watts};
  }

  private static Optional<PowerMap> invert(RiseMaps maps) {
    return SourceInversion.of(maps, BOARD, true, new double[] {48}, new double[] {48});
  }

  @Test
  void theWattsOfASingleSourceComeBack() {
    PowerMap map = invert(of(NOISE, source(48.3, 47.6, 0.06))).orElseThrow();
    assertEquals(1, map.places().size());
    assertEquals(0.06, map.seenWatts(), 0.05 * 0.06 + 3 * map.noiseWatts());
    assertEquals(48.3, map.places().get(0).column(), 0.4);
    assertEquals(47.6, map.places().get(0).row(), 0.4);
    assertEquals(1, map.misfit(), 0.12);
  }

  @Test
  void twoSourcesWhoseWarmAreasAreOneAreToldApart() {
    RiseMaps maps = of(NOISE, source(44, 48, 0.06), source(51, 48, 0.03));
    PowerMap map = invert(maps).orElseThrow();
    assertEquals(2, map.places().size(), map.places().toString());
    assertEquals(44, map.places().get(0).column(), 0.5);
    assertEquals(51, map.places().get(1).column(), 0.7);
    assertEquals(0.06, map.places().get(0).watts(), 0.012);
    assertEquals(0.03, map.places().get(1).watts(), 0.012);
    double dip = maps.inPhase().at(48, 48) / maps.inPhase().at(51, 48);
    double dipOfMap = map.wattsPerSquareMetre().at(48, 48) / map.wattsPerSquareMetre().at(51, 48);
    assertTrue(dip > 0.9 && dipOfMap < 0.7, dip + " before, " + dipOfMap + " after");
  }

  @Test
  void moreNoiseMeansLessResolution() {
    double sharp = invert(of(0.0004, source(48, 48, 0.06))).orElseThrow().resolutionPixels();
    double blunt = invert(of(0.02, source(48, 48, 0.06))).orElseThrow().resolutionPixels();
    assertTrue(sharp > 1 && sharp < blunt, sharp + " px and " + blunt + " px");
  }

  @Test
  void deadPixelsAndFlatPlanesGiveDefinedAnswers() {
    RiseMaps broken = of(NOISE, source(48, 48, 0.06));
    broken.inPhase().set(48, 48, Float.NaN);
    broken.quadrature().set(10, 10, Float.NEGATIVE_INFINITY);
    PowerMap map = invert(broken).orElseThrow();
    for (float value : map.wattsPerSquareMetre().values()) {
      assertTrue(value >= 0 && value < Float.MAX_VALUE, () -> "a power of " + value);
    }
    RiseMaps flat = maps(new Plane(SIZE, SIZE), new Plane(SIZE, SIZE), NOISE);
    assertTrue(invert(flat).isEmpty());
    assertTrue(SourceInversion.of(flat, BOARD, true, new double[0], new double[0]).isEmpty());
  }

  @Test
  void theSameInputGivesTheSameBits() {
    PowerMap first = invert(of(NOISE, source(48, 48, 0.06))).orElseThrow();
    PowerMap second = invert(of(NOISE, source(48, 48, 0.06))).orElseThrow();
    assertTrue(first.wattsPerSquareMetre().sameBitsAs(second.wattsPerSquareMetre()));
    assertEquals(first.seenWatts(), second.seenWatts());
  }

  @Test
  void aSourceInTheCornerOfThePictureIsInverted() {
    RiseMaps maps = of(NOISE, source(12, 11, 0.06));
    PowerMap map =
        SourceInversion.of(maps, BOARD, true, new double[] {12}, new double[] {11}).orElseThrow();
    // some of its heat is out of view
    assertTrue(map.seenWatts() > 0.04 && map.seenWatts() < 0.065, map.seenWatts() + " W");
  }
}
