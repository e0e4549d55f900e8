package railglow.thermal;

import java.util.List;
import railglow.units.Interval;

/** A heat source of which a test says what matters to it; the rest is usual. */
public final class InventedSource {
  private final double column;
  private final double row;
  private double columnVariance = 0.02;
  private double rowVariance = 0.02;
  private double covariance;
  private double swing = 1;
  private Interval swing95 = new Interval(0.9, 1.1);
  private double settled = 1;
  private Interval settled95 = new Interval(0.9, 1.1);
  private double inPhase = 1;
  private double quadrature;
  private double timeConstantSeconds = 1;
  private double widthPixels = 2;
  private double familyWiseP = 1e-4;
  private double consistency = 1;
  private List<RiseByModel> models = List.of();

  private InventedSource(double column, double row) {
    this.column = column;
    this.row = row;
  }

  public static InventedSource at(double column, double row) {
    return new InventedSource(column, row);
  }

  /** Another at the same place, known as well. */
  public static InventedSource like(HeatSource other) {
    return at(other.column(), other.row())
        .variances(other.columnVariance(), other.rowVariance(), other.covariance());
  }

  public InventedSource variance(double pixels2) {
    return variances(pixels2, pixels2, 0);
  }

  public InventedSource variances(double ofColumn, double ofRow, double ofBoth) {
    columnVariance = ofColumn;
    rowVariance = ofRow;
    covariance = ofBoth;
    return this;
  }

  /** Its swing and its settled rise are the same, all of it in phase. */
  public InventedSource rises(double kelvin, Interval interval95) {
    return swings(kelvin, interval95).settles(kelvin, interval95).channels(kelvin, 0);
  }

  public InventedSource swings(double kelvin, Interval interval95) {
    swing = kelvin;
    swing95 = interval95;
    return this;
  }

  public InventedSource settles(double kelvin, Interval interval95) {
    settled = kelvin;
    settled95 = interval95;
    return this;
  }

  public InventedSource channels(double ofPulse, double slow) {
    inPhase = ofPulse;
    quadrature = slow;
    return this;
  }

  public InventedSource timeConstant(double seconds) {
    timeConstantSeconds = seconds;
    return this;
  }

  public InventedSource width(double pixels) {
    widthPixels = pixels;
    return this;
  }

  public InventedSource p(double familyWise) {
    familyWiseP = familyWise;
    return this;
  }

  public InventedSource consistency(double share) {
    consistency = share;
    return this;
  }

  public InventedSource models(List<RiseByModel> rises) {
    models = rises;
    return this;
  }

  public HeatSource source() {
    return new HeatSource(
        column,
        row,
        columnVariance,
        rowVariance,
        covariance,
        swing,
        swing95,
        settled,
        settled95,
        inPhase,
        quadrature,
        timeConstantSeconds,
        widthPixels,
        familyWiseP,
        consistency,
        models);
  }
}
