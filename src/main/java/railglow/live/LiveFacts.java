package railglow.live;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import railglow.report.draw.ColourMap;
import railglow.safety.Bound;
import railglow.safety.Envelope;

/**
 * What does not change while a page is served, for those who watch it.
 *
 * @param board its name
 * @param rail the injected rail
 * @param sequence the programme in a few words
 * @param familyWiseError at or below it a source counts as found
 * @param celsiusAtZero of a camera value of 0; NaN when it has no absolute scale
 * @param kelvinPerCount of a camera value; NaN when unknown
 * @param soundVolume of the sounds on the page, 0 to 1; 0 for silence
 */
public record LiveFacts(
    String board,
    String rail,
    String sequence,
    double familyWiseError,
    Envelope limits,
    double celsiusAtZero,
    double kelvinPerCount,
    double soundVolume) {
  private static final int COLOURS = 255;

  /** Board and rail in a few words. */
  String place() {
    return board + ", rail " + rail;
  }

  /** Unit of the current picture's values. */
  String pictureUnit() {
    return Double.isNaN(kelvinPerCount) || Double.isNaN(celsiusAtZero) ? "counts" : "degC";
  }

  double pictureValue(double cameraValue) {
    return pictureUnit().equals("counts")
        ? cameraValue
        : celsiusAtZero + kelvinPerCount * cameraValue;
  }

  /** As the page reads them. */
  Map<String, Object> map() {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put("board", board);
    map.put("rail", rail);
    map.put("sequence", sequence);
    map.put("familyWiseError", familyWiseError);
    map.put("pictureUnit", pictureUnit());
    map.put("limits", limitList());
    map.put("temperatureColours", colours(ColourMap.TEMPERATURE));
    map.put("differenceColours", colours(ColourMap.DIFFERENCE));
    return map;
  }

  private List<Object> limitList() {
    List<Object> list = new ArrayList<>();
    limit(list, "voltage", "volts", "V", limits.maxVolts());
    limit(list, "current", "amperes", "A", limits.maxAmperes());
    limit(list, "power", "watts", "W", limits.maxWatts());
    limit(list, "hottest", "celsius", "\u00b0C", limits.maxCelsius());
    limit(list, "rise", "rise", "K", limits.maxRiseKelvin());
    return list;
  }

  private static void limit(
      List<Object> list, String name, String field, String unit, Bound bound) {
    if (bound.isSet()) {
      Map<String, Object> limit = new LinkedHashMap<>();
      limit.put("name", name);
      limit.put("field", field);
      limit.put("unit", unit);
      limit.put("limit", bound.value());
      limit.put("origin", bound.origin());
      list.add(limit);
    }
  }

  private static List<Integer> colours(ColourMap map) {
    List<Integer> colours = new ArrayList<>();
    for (int i = 0; i < COLOURS; i++) {
      colours.add(map.rgb(i / (COLOURS - 1.0)));
    }
    colours.add(map.rgb(Double.NaN));
    return colours;
  }
}
