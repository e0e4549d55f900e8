package railglow.camera.motion;

import java.util.Locale;

/** Why a shift can't be seen, as sentences. */
final class BlindnessText {
  static final String TOO_SMALL =
      "The picture is too small for a moved camera to be seen: keep camera and board still";

  private BlindnessText() {}

  /**
   * @param sigmaPixels to which a shift is known; infinite where none could be told
   * @param neededPixels to which it must be
   */
  static String tooPlain(double sigmaPixels, double neededPixels) {
    String known =
        Double.isInfinite(sigmaPixels)
            ? "no shift could be told"
            : String.format(
                Locale.ROOT,
                "a shift is known to %.2f pixel, needed are %.2f",
                sigmaPixels,
                neededPixels);
    return "The scene is too plain for a moved camera to be seen ("
        + known
        + "): keep camera and board still, or let something warmer or colder than the board"
        + " stand in view";
  }
}
