package railglow.thermal.inverse;

import railglow.thermal.FirstOrderResponse;

/**
 * Every spatial frequency of a window for itself: what a watt per area shows of it in both
 * channels, and what the data say of it, both weighted by the noise. Immutable.
 *
 * <p>A pattern of wave number k warms the plate as a first-order body of time constant rho c t / (h
 * + k t k^2); what sits on the plate adds a rise of its own, the power per area times its contact's
 * resistance, without that lag. Roughness is the squared slope.
 */
final class Modes {
  private final ChannelSpectra data;
  private final ModePowers powers;

  /** Gain over noise variance, by group. */
  private final double[] weightI;

  private final double[] weightC;

  /** Squared gain over noise variance, both channels together. */
  private final double[] gain;

  /** Squares of the weighted data. */
  private final double[] power;

  private double dataPower;

  private Modes(ChannelSpectra data, ModePowers powers) {
    this.data = data;
    this.powers = powers;
    weightI = new double[powers.groups()];
    weightC = new double[powers.groups()];
    gain = new double[powers.groups()];
    power = new double[powers.groups()];
  }

  /**
   * @param noiseFactor by which all noise is larger than the maps say: what the model can't explain
   */
  static Modes of(
      RiseMaps maps, ChannelSpectra data, ModePowers powers, Optics optics, double noiseFactor) {
    double wI = 1 / Math.pow(noiseFactor * maps.sigmaInPhase(), 2);
    double wC = 1 / Math.pow(noiseFactor * maps.sigmaQuadrature(), 2);
    Modes modes = new Modes(data, powers);
    FirstOrderResponse direct = optics.seen(maps, 0);
    double contact = optics.contactResistance();
    double blur = maps.opticsSigmaPixels() * maps.opticsSigmaPixels() / 2;
    for (int g = 0; g < powers.groups(); g++) {
      double square = powers.roughness(g);
      double tau =
          optics.plate().modeTimeConstantSeconds(Math.sqrt(square) / maps.metresPerPixel());
      FirstOrderResponse plate = optics.seen(maps, tau);
      double scale = maps.emissivity() * Math.exp(-square * blur);
      double perArea = tau / optics.plate().areaCapacity();
      double gI = scale * (perArea * plate.inPhase() + contact * direct.inPhase());
      double gC = scale * (perArea * plate.quadrature() + contact * direct.quadrature());
      modes.weightI[g] = gI * wI;
      modes.weightC[g] = gC * wC;
      modes.gain[g] = gI * gI * wI + gC * gC * wC;
      modes.power[g] = powers.power(g, gI * wI, gC * wC);
      modes.dataPower += powers.power(g, Math.sqrt(wI), 0) + powers.power(g, 0, Math.sqrt(wC));
    }
    return modes;
  }

  /**
   * The predictive risk of a regularisation by its unbiased estimate: squared misfit in units of
   * the noise plus twice the number of effective parameters (C. R. Vogel, Computational Methods for
   * Inverse Problems, SIAM 2002, section 7.1; Mallows' C_p).
   */
  double risk(double strength) {
    return misfit(strength) + 2 * parameters(strength);
  }

  /** Squared misfit of both channels in units of the noise; one per value for noise alone. */
  double misfit(double strength) {
    double sum = dataPower;
    for (int g = 0; g < gain.length; g++) {
      double whole = gain[g] + strength * powers.roughness(g);
      sum += power[g] * (gain[g] / whole - 2) / whole;
    }
    return sum / powers.modes();
  }

  /** How many numbers the data truly decide: the trace of the influence matrix. */
  double parameters(double strength) {
    double sum = 0;
    for (int g = 0; g < gain.length; g++) {
      sum += powers.count(g) * gain[g] / (gain[g] + strength * powers.roughness(g));
    }
    return sum * powers.pixels() / powers.modes();
  }

  /** Values in both channels that are not used up by parameters. */
  double freedom(double strength) {
    return 2.0 * powers.pixels() - parameters(strength);
  }

  /** Of the strengths in steps of 10^(1/4) the one of least risk. */
  double best() {
    double most = 0;
    for (double one : gain) {
      most = Math.max(most, one);
    }
    double best = most;
    double least = Double.POSITIVE_INFINITY;
    for (int step = 0; step <= 48; step++) {
      double strength = most * Math.pow(10, 1 - step / 4.0);
      double risk = risk(strength);
      if (risk < least) {
        least = risk;
        best = strength;
      }
    }
    return best;
  }

  double gain(int k) {
    return gain[powers.groupOf(k)];
  }

  /** Gain and penalty together: what the data of a mode are divided by. */
  double whole(int k, double strength) {
    int g = powers.groupOf(k);
    return gain[g] + strength * powers.roughness(g);
  }

  double dataRe(int k) {
    return data(k, 0);
  }

  double dataIm(int k) {
    return data(k, 1);
  }

  private double data(int k, int part) {
    int g = powers.groupOf(k);
    return weightI[g] * data.inPhase()[part][k] + weightC[g] * data.quadrature()[part][k];
  }

  Spectrum spectrum() {
    return data.spectrum();
  }
}
