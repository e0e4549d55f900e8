package railglow.live;

import railglow.safety.Envelope;

/**
 * What does not change during a run, for those who watch it.
 *
 * @param board its name
 * @param rail the injected rail
 * @param sequence the programme in a few words
 * @param familyWiseError at or below it a source counts as found
 * @param celsiusAtZero of a camera value of 0; NaN when it has no absolute scale
 * @param kelvinPerCount of a camera value; NaN when unknown
 */
public record LiveFacts(
    String board,
    String rail,
    String sequence,
    double familyWiseError,
    Envelope limits,
    double celsiusAtZero,
    double kelvinPerCount) {
  /** Unit of the current picture's values. */
  String pictureUnit() {
    return Double.isNaN(kelvinPerCount) || Double.isNaN(celsiusAtZero) ? "counts" : "degC";
  }

  double pictureValue(double cameraValue) {
    return pictureUnit().equals("counts")
        ? cameraValue
        : celsiusAtZero + kelvinPerCount * cameraValue;
  }
}
