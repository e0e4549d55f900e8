package railglow.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import railglow.journal.CameraFacts;
import railglow.journal.Entry;
import railglow.journal.Journal;

/**
 * A followed place over a whole log.
 *
 * @param mean of its mean in all frames
 * @param low its lowest pixel in any frame
 * @param high its highest
 * @param riseMean above the baseline; NaN without one
 * @param unit of the values: degrees Celsius, kelvin or counts
 * @param riseUnit kelvin or counts
 */
public record PlaceSummary(
    String name,
    double mean,
    double low,
    double high,
    double riseMean,
    double riseLow,
    double riseHigh,
    String unit,
    String riseUnit) {
  /** The places that a log followed, in its order; empty without any or without frames. */
  public static List<PlaceSummary> of(Journal journal) {
    List<String> names = journal.of(Entry.PlaceNamed.class).map(Entry.PlaceNamed::name).toList();
    return of(names, journal.of(Entry.Followed.class).toList(), journal.header().camera());
  }

  static List<PlaceSummary> of(
      List<String> names, List<Entry.Followed> followed, CameraFacts camera) {
    List<PlaceSummary> places = new ArrayList<>();
    for (int i = 0; i < names.size() && !followed.isEmpty(); i++) {
      int place = i;
      places.add(
          new PlaceSummary(
              names.get(i),
              followed.stream().mapToDouble(f -> f.mean()[place]).average().orElseThrow(),
              followed.stream().mapToDouble(f -> f.low()[place]).min().orElseThrow(),
              followed.stream().mapToDouble(f -> f.high()[place]).max().orElseThrow(),
              rises(followed, place).average().orElse(Double.NaN),
              followed.stream()
                  .mapToDouble(f -> f.riseLow()[place])
                  .filter(Double::isFinite)
                  .min()
                  .orElse(Double.NaN),
              followed.stream()
                  .mapToDouble(f -> f.riseHigh()[place])
                  .filter(Double::isFinite)
                  .max()
                  .orElse(Double.NaN),
              unit(camera),
              riseUnit(camera)));
    }
    return List.copyOf(places);
  }

  private static java.util.stream.DoubleStream rises(List<Entry.Followed> followed, int place) {
    return followed.stream().mapToDouble(f -> f.riseMean()[place]).filter(Double::isFinite);
  }

  /** The unit of a followed value as printed in text and tables. */
  static String unit(CameraFacts camera) {
    if (Double.isNaN(camera.kelvinPerCount())) {
      return "counts";
    }
    return Double.isNaN(camera.celsiusAtZero()) ? "K" : "degC";
  }

  static String riseUnit(CameraFacts camera) {
    return Double.isNaN(camera.kelvinPerCount()) ? "counts" : "K";
  }

  public String format(double value) {
    return Double.isNaN(value) ? "" : String.format(Locale.ROOT, "%.2f %s", value, unit);
  }

  public String formatRise(double value) {
    return Double.isNaN(value) ? "" : String.format(Locale.ROOT, "%+.2f %s", value, riseUnit);
  }
}
