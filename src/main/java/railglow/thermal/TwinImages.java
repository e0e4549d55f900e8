package railglow.thermal;

/**
 * Whether what a wide filter took for one image is two narrower ones side by side: a pair of equal
 * width, so far apart that it dips in between, explains the picture clearly better than one round
 * Gaussian and than a drawn out image, which is a pair without a dip; and the picture itself dips.
 * Made for one window.
 */
final class TwinImages {
  /** Widths of the pair over that of the wide filter. */
  private static final double[] WIDTHS = {0.4, 0.5, 0.65};

  /** Distances of either image from the middle, in widths of the pair. */
  private static final double[] APART = {0.5, 0.8, 1.1, 1.4, 1.7, 2.0, 2.4};

  /** Nearer images, in widths of the pair, have no dip to speak of. */
  private static final double NEAREST = 2.6;

  private static final int ANGLES = 12;

  /** By so much a pair must explain more than one round image: chance does this once in 1e5. */
  private static final double BEYOND_ROUND = 25;

  /** By so much it must explain more than a drawn out one. */
  private static final double BEYOND_LONG = 12;

  /** The dip over the height of the images; about 0.43 for two equal ones at 1.5 full widths. */
  private static final double LEAST_DIP = 0.22;

  private final GaussianFit.Window window;
  private final double column;
  private final double row;
  private final double[][] firstShapes;
  private final double[][] secondShapes;

  private TwinImages(GaussianFit.Window window, double column, double row) {
    this.window = window;
    this.column = column;
    this.row = row;
    firstShapes = new double[APART.length][window.values().length];
    secondShapes = new double[APART.length][window.values().length];
  }

  /**
   * Two Gaussians of one width.
   *
   * @param sigma of both
   * @param explained sum of squares they take out of the window
   */
  record Pair(
      double column1,
      double row1,
      double amplitude1,
      double column2,
      double row2,
      double amplitude2,
      double sigma,
      double explained) {
    /** Place of the stronger, column and row. */
    double[] stronger() {
      return amplitude1 >= amplitude2 ? new double[] {column1, row1} : new double[] {column2, row2};
    }

    /** Place of the other. */
    double[] weaker() {
      return amplitude1 >= amplitude2 ? new double[] {column2, row2} : new double[] {column1, row1};
    }
  }

  /**
   * The pair in a window of whitened mean planes, noise 1 per cycle; null where one image is as
   * good.
   *
   * @param column where the wide filter sees its image
   * @param row likewise
   * @param sigma of that filter
   */
  static Pair in(GaussianFit.Window window, double column, double row, double sigma, int cycles) {
    TwinImages twins = new TwinImages(window, column, row);
    Pair pair = twins.best(sigma, true);
    if (pair == null
        || cycles * (pair.explained - bySingle(window, column, row, sigma)) < BEYOND_ROUND) {
      return null;
    }
    Pair drawnOut = twins.best(sigma, false);
    if (drawnOut != null && cycles * (pair.explained - drawnOut.explained) < BEYOND_LONG) {
      return null;
    }
    LineProfile line =
        new LineProfile(window, pair.column1, pair.row1, pair.column2, pair.row2, pair.sigma);
    double atImages = (line.at(0) + line.at(1)) / 2;
    return atImages - line.at(0.5) > LEAST_DIP * atImages ? pair : null;
  }

  /** Sum of squares that the best single Gaussian takes out. */
  private static double bySingle(
      GaussianFit.Window window, double column, double row, double sigma) {
    double all = 0;
    for (int k = 0; k < window.values().length; k++) {
      all += window.valid()[k] ? window.values()[k] * window.values()[k] : 0;
    }
    GaussianFit fit = GaussianFit.of(window, column, row, sigma);
    double amplitude = GaussianFit.bestAmplitude(window, column, row, sigma);
    double byFilter = amplitude * amplitude * GaussianFit.energy(window, column, row, sigma);
    return fit == null ? byFilter : Math.max(byFilter, all - fit.squaredMisfit(window));
  }

  /** One image of a pair, with what it shares with itself and with the picture. */
  private record Image(double column, double row, double[] shape, double energy, double share) {}

  private Pair best(double sigma, boolean dips) {
    Pair best = null;
    for (double share : WIDTHS) {
      double width = share * sigma;
      for (int k = 0; k < ANGLES; k++) {
        double dx = Math.cos(Math.PI * k / ANGLES) * width;
        double dy = Math.sin(Math.PI * k / ANGLES) * width;
        Image[] first = images(-dx, -dy, width, firstShapes);
        Image[] second = images(dx, dy, width, secondShapes);
        for (int one = 0; one < APART.length; one++) {
          int dipping = firstDipping(APART[one]);
          int from = dips ? dipping : 0;
          int to = dips ? APART.length : dipping;
          double[] shared = shared(first[one], second, from, to);
          for (int two = from; two < to; two++) {
            best = better(best, first[one], second[two], shared[two], width);
          }
        }
      }
    }
    return best;
  }

  private Image[] images(double dx, double dy, double width, double[][] shapes) {
    Image[] images = new Image[APART.length];
    for (int k = 0; k < images.length; k++) {
      double atColumn = column + APART[k] * dx;
      double atRow = row + APART[k] * dy;
      double[] shape = shapes[k];
      fill(shape, atColumn, atRow, width);
      double energy = 0;
      double share = 0;
      for (int i = 0; i < shape.length; i++) {
        energy += shape[i] * shape[i];
        share += shape[i] == 0 ? 0 : shape[i] * window.values()[i];
      }
      images[k] = new Image(atColumn, atRow, shape, energy, share);
    }
    return images;
  }

  private void fill(double[] shape, double atColumn, double atRow, double width) {
    double[] across = new double[window.columns()];
    for (int x = 0; x < across.length; x++) {
      double d = (window.left() + x - atColumn) / width;
      across[x] = Math.exp(-0.5 * d * d);
    }
    for (int y = 0, k = 0; y < window.rows(); y++) {
      double d = (window.top() + y - atRow) / width;
      double down = Math.exp(-0.5 * d * d);
      for (int x = 0; x < across.length; x++, k++) {
        shape[k] = window.valid()[k] ? down * across[x] : 0;
      }
    }
  }

  /** The nearest image on the other side of the middle with a dip in between. */
  private static int firstDipping(double apart) {
    int k = 0;
    while (k < APART.length && apart + APART[k] < NEAREST) {
      k++;
    }
    return k;
  }

  /**
   * Sums of the products of an image and of each from one to before another: two side by side,
   * since every addition waits for the one before.
   */
  private static double[] shared(Image image, Image[] others, int from, int to) {
    double[] sums = new double[others.length];
    for (int two = from; two < to; two += 2) {
      int next = Math.min(two + 1, to - 1);
      double[] shape = image.shape;
      double[] left = others[two].shape;
      double[] right = others[next].shape;
      double leftSum = 0;
      double rightSum = 0;
      for (int k = 0; k < shape.length; k++) {
        leftSum += shape[k] * left[k];
        rightSum += shape[k] * right[k];
      }
      sums[two] = leftSum;
      sums[next] = rightSum;
    }
    return sums;
  }

  /** The pair of two images that share so much, if both are warm and it explains more. */
  private static Pair better(Pair best, Image first, Image second, double ab, double width) {
    double aa = first.energy;
    double bb = second.energy;
    double av = first.share;
    double bv = second.share;
    double determinant = aa * bb - ab * ab;
    double a = (bb * av - ab * bv) / determinant;
    double b = (aa * bv - ab * av) / determinant;
    double explained = a * av + b * bv;
    if (!(a > 0 && b > 0) || best != null && !(explained > best.explained)) {
      return best;
    }
    return new Pair(first.column, first.row, a, second.column, second.row, b, width, explained);
  }
}
