package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

class PulseNoiseTest {
  private static final DetectionSettings MINUTE = DetectionSettings.usual(2, 0, 0.05, 4, 30);
  private static final PulseNoise WHITE = PulseNoise.white(0.05, 25);

  /** By filtering made noise: first order along rows and columns, 0.3 and 0.2. */
  @Test
  void whatAFilterLetsThroughOfNoiseThatNeighboursShareIsAsCalculated() {
    int side = 400;
    double h = 0.3;
    double v = 0.2;
    Random random = new Random(4);
    double[] values = new double[side * side];
    for (int y = 0; y < side; y++) {
      for (int x = 0; x < side; x++) {
        double left = x > 0 ? values[y * side + x - 1] : 0;
        double up = y > 0 ? values[(y - 1) * side + x] : 0;
        double both = x > 0 && y > 0 ? values[(y - 1) * side + x - 1] : 0;
        double fresh = random.nextGaussian() * Math.sqrt((1 - h * h) * (1 - v * v));
        values[y * side + x] = h * left + v * up - h * v * both + fresh;
      }
    }
    PulseNoise noise = WHITE.withNeighbours(h, v);
    for (double sigma : new double[] {0.8, 2}) {
      assertEquals(filteredVariance(values, side, sigma), noise.filteredVariancePart(sigma), 0.12);
    }
    assertEquals(1, WHITE.filteredVariancePart(2), 1e-12);
  }

  /** A random walk of the offset, by hand: the difference of means of two halves. */
  @Test
  void driftCostsWhatTheAllanDeviationSays() {
    Random random = new Random(5);
    int half = 25;
    int cycles = 4000;
    double[] halves = new double[2 * cycles];
    double walk = 0;
    for (int k = 0; k < halves.length; k++) {
      for (int i = 0; i < half; i++) {
        walk += 0.01 * random.nextGaussian();
        halves[k] += (walk + 0.05 * random.nextGaussian()) / half;
      }
    }
    double squares = 0;
    for (int k = 1; k < halves.length; k++) {
      squares += (halves[k] - halves[k - 1]) * (halves[k] - halves[k - 1]);
    }
    double allan = Math.sqrt(squares / 2 / (halves.length - 1));
    PulseNoise measured = WHITE.measuredAt(2, allan);
    double quadrature = 0;
    for (int k = 0; k < cycles; k++) {
      double c = halves[2 * k + 1] - halves[2 * k];
      quadrature += c * c / cycles;
    }
    assertEquals(1, measured.quadratureVariance(2) / quadrature, 0.06);
    assertTrue(measured.variancePart() > 5, measured.toString());
  }

  @Test
  void theForecastAsksForMoreRiseWhereNeighboursShareNoiseOrTheCameraDrifts() {
    double white = smallest(WHITE);
    double shared = smallest(WHITE.withNeighbours(0.3, 0.3));
    // A source of two pixels behind a filter of about that width: (1 + 0.3) / (1 - 0.3), nearly.
    assertEquals(1.3 / 0.7, shared / white, 0.2);
    assertEquals(white, smallest(WHITE.measuredAt(2, 0.05 / 5)), 1e-6);
    assertEquals(2 * white, smallest(WHITE.measuredAt(2, 2 * 0.05 / 5)), 1e-6);
    assertTrue(smallest(WHITE.withNeighbours(-0.2, -0.2)) < white);
    assertEquals(WHITE, WHITE.measuredAt(2, Double.NaN), "what was not measured changes nothing");
    assertThrows(IllegalArgumentException.class, () -> WHITE.withNeighbours(1, 0));
  }

  /** The detector itself, on cycles whose neighbours share noise, finds what was forecast. */
  @Test
  void whatIsForecastWithSharedNoiseIsFound() {
    DetectionSettings settings = DetectionSettings.usual(2, 0, 0.05, 4, 20);
    double perPixel = 0.05 / Math.sqrt(12.5);
    PulseNoise noise = WHITE.withNeighbours(0.4, 0.4);
    double rise = Forecast.of(settings, 64, 48, noise, 2, 0).smallestRiseKelvin(20);
    int found = 0;
    int runs = 16;
    for (int run = 0; run < runs; run++) {
      Detector detector = new Detector(settings, 64, 48);
      Random random = new Random(100 + run);
      boolean seen = false;
      for (int k = 0; k < 20; k++) {
        detector.addCycle(cycle(k, random, perPixel, 0.4, rise));
        seen |= k >= 3 && !detector.look().sources().isEmpty();
      }
      found += seen ? 1 : 0;
    }
    // Binomial, 16 runs at 95 %: fewer than 13 happen once in 140.
    assertTrue(found >= 13, found + " of " + runs + " at " + rise + " K");
  }

  private static QuarterMeans cycle(
      int number, Random random, double noise, double shared, double rise) {
    Plane[] quarters = new Plane[4];
    for (int q = 0; q < 4; q++) {
      Plane plane = new Plane(64, 48);
      for (int y = 0; y < 48; y++) {
        for (int x = 0; x < 64; x++) {
          double left = x > 0 ? plane.at(x - 1, y) : 0;
          double up = y > 0 ? plane.at(x, y - 1) : 0;
          double both = x > 0 && y > 0 ? plane.at(x - 1, y - 1) : 0;
          double fresh = noise * random.nextGaussian() * (1 - shared * shared);
          plane.set(x, y, (float) (shared * (left + up) - shared * shared * both + fresh));
        }
      }
      quarters[q] = plane;
    }
    for (int q = 1; q < 3; q++) {
      for (int y = 0; y < 48; y++) {
        for (int x = 0; x < 64; x++) {
          double square = (x - 40) * (x - 40) + (y - 20) * (y - 20);
          quarters[q].set(
              x, y, (float) (quarters[q].at(x, y) + rise * Math.exp(-square / (2 * 2 * 2))));
        }
      }
    }
    return new QuarterMeans(
        number, quarters[0], quarters[1], quarters[2], quarters[3], new int[] {12, 12, 12, 12});
  }

  private static double smallest(PulseNoise noise) {
    return Forecast.of(MINUTE, 256, 192, noise, 2, 0).smallestRiseKelvin(30);
  }

  private static double filteredVariance(double[] values, int side, double sigma) {
    int reach = (int) Math.ceil(4 * sigma);
    double[] kernel = new double[2 * reach + 1];
    double norm = 0;
    for (int d = -reach; d <= reach; d++) {
      kernel[d + reach] = Math.exp(-d * d / (2 * sigma * sigma));
      norm += kernel[d + reach] * kernel[d + reach];
    }
    double squares = 0;
    int count = 0;
    for (int y = 20; y < side - reach; y += 2) {
      for (int x = 20; x < side - reach; x += 2) {
        double sum = 0;
        for (int dy = -reach; dy <= reach; dy++) {
          double row = 0;
          for (int dx = -reach; dx <= reach; dx++) {
            row += kernel[dx + reach] * values[(y + dy) * side + x + dx];
          }
          sum += kernel[dy + reach] * row;
        }
        squares += sum * sum;
        count++;
      }
    }
    return squares / count / (norm * norm);
  }
}
