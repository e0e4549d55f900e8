package railglow.sim.heat;

/**
 * The heat equation of a thin plate, rho c t dT/dt = k t laplace(T) - h(T) T + heat, on square
 * cells with insulated edges, stepped explicitly. A step of any length is divided so that each part
 * is stable. Cell (column, row) is at {@code row * columns + column}; row 0 lies at y = 0.
 *
 * <p>Deterministic. Not thread-safe.
 */
public final class ThinPlate {
  /** Share of the largest stable explicit step that is used. */
  private static final double STABILITY = 0.8;

  private static final int LOSS_ENTRIES = 2048;
  private static final double LOSS_KELVIN_PER_ENTRY = 0.125;

  private final int columns;
  private final int rows;
  private final double cellMetres;
  private final PlateMaterial material;
  private final float[] lossPerSecond = new float[LOSS_ENTRIES];
  private final float[] cellLoss;
  private float[] rise;
  private float[] next;
  private final float[] middle;

  public ThinPlate(
      int columns, int rows, double cellMetres, PlateMaterial material, SurfaceLoss loss) {
    this.columns = columns;
    this.rows = rows;
    this.cellMetres = cellMetres;
    this.material = material;
    rise = new float[columns * rows];
    next = new float[columns * rows];
    middle = new float[columns * rows];
    cellLoss = new float[columns * rows];
    double perArea = material.heatCapacity() * material.thicknessMetres();
    for (int i = 0; i < LOSS_ENTRIES; i++) {
      double kelvin = (i + 0.5) * LOSS_KELVIN_PER_ENTRY;
      lossPerSecond[i] = (float) (loss.coefficient(kelvin) / perArea);
    }
  }

  public int columns() {
    return columns;
  }

  public int rows() {
    return rows;
  }

  public double cellMetres() {
    return cellMetres;
  }

  /** Heat capacity of one cell, J/K. */
  public double cellCapacity() {
    return material.heatCapacity() * material.thicknessMetres() * cellMetres * cellMetres;
  }

  /** Rise above the room of each cell, kelvin. The live array, replaced by every step. */
  public float[] rise() {
    return rise;
  }

  /** How many parts a step of this length must be divided into. */
  public int divisions(double seconds) {
    double most = STABILITY * cellMetres * cellMetres / (4 * material.diffusivity());
    return Math.max(1, (int) Math.ceil(seconds / most));
  }

  /** Looks up each cell's loss at its present temperature; once per step is enough. */
  public void refreshLosses() {
    float scale = (float) (1 / LOSS_KELVIN_PER_ENTRY);
    for (int i = 0; i < rise.length; i++) {
      int entry = (int) (Math.abs(rise[i]) * scale);
      cellLoss[i] = lossPerSecond[Math.min(entry, LOSS_ENTRIES - 1)];
    }
  }

  /** Puts heat into one cell at once. */
  public void addJoules(int cell, double joules) {
    rise[cell] += (float) (joules / cellCapacity());
  }

  /** Spreads heat over all cells at once. */
  public void addEvenly(double joules) {
    float kelvin = (float) (joules / (cellCapacity() * rise.length));
    for (int i = 0; i < rise.length; i++) {
      rise[i] += kelvin;
    }
  }

  /**
   * Conducts and loses heat for one stable part of a step: by the slope in its middle, so that the
   * error is of second order (Runge's midpoint rule).
   */
  public void conduct(double seconds) {
    follow(rise, middle, seconds / 2);
    follow(middle, next, seconds);
    float[] before = rise;
    rise = next;
    next = before;
  }

  /** From the present rise on, with the slope that one rise has. */
  private void follow(float[] slopeOf, float[] to, double seconds) {
    float a = (float) (material.diffusivity() * seconds / (cellMetres * cellMetres));
    float dt = (float) seconds;
    for (int row = 0; row < rows; row++) {
      int start = row * columns;
      int above = row == 0 ? start : start - columns;
      int below = row == rows - 1 ? start : start + columns;
      followRow(slopeOf, to, start, above, below, a, dt);
    }
  }

  private void followRow(
      float[] slopeOf, float[] to, int start, int above, int below, float a, float dt) {
    int last = columns - 1;
    float[] from = rise;
    float[] loss = cellLoss;
    for (int x = 1; x < last; x++) {
      float here = slopeOf[start + x];
      float around =
          slopeOf[start + x - 1]
              + slopeOf[start + x + 1]
              + slopeOf[above + x]
              + slopeOf[below + x]
              - 4 * here;
      to[start + x] = from[start + x] + a * around - dt * loss[start + x] * here;
    }
    edge(slopeOf, to, start, start + Math.min(1, last), above, below, 0, a, dt);
    edge(slopeOf, to, start, start + Math.max(0, last - 1), above, below, last, a, dt);
  }

  /** A cell at the left or right border: the missing neighbour is the cell itself (insulated). */
  private void edge(
      float[] slopeOf,
      float[] to,
      int start,
      int inner,
      int above,
      int below,
      int x,
      float a,
      float dt) {
    float here = slopeOf[start + x];
    float around = slopeOf[inner] + here + slopeOf[above + x] + slopeOf[below + x] - 4 * here;
    to[start + x] = rise[start + x] + a * around - dt * cellLoss[start + x] * here;
  }
}
