package railglow.run.pulsed;

import java.util.Locale;
import java.util.function.Consumer;
import railglow.camera.CameraReader;
import railglow.camera.FrameSource;

/**
 * Tells when a run's camera is lost and when it is back, each once, in sentences. {@link #check}
 * belongs to one thread; {@link #trouble} may be read by any.
 */
public final class CameraLosses {
  private final FrameSource source;
  private final CameraReader reader;
  private final Consumer<String> told;
  private int seen;
  private boolean away;
  private long framesBefore;
  private volatile String trouble = "";

  public CameraLosses(FrameSource source, CameraReader reader, Consumer<String> told) {
    this.source = source;
    this.reader = reader;
    this.told = told;
  }

  /** Looks; call it often. */
  public void check() {
    int losses = source.losses();
    if (losses > seen) {
      seen = losses;
      away = true;
      framesBefore = reader.framesArrived();
      told.accept(
          String.format(
              Locale.ROOT,
              "The camera was lost (%s): %s; it is tried again every half second",
              losses == 1 ? "once" : losses + " times",
              source.lastTrouble().orElse("no reason given")));
    }
    if (away && reader.framesArrived() > framesBefore) {
      away = false;
      told.accept("The camera gives frames again; those in between are missing");
    }
    trouble = away ? "the camera was lost: " + source.lastTrouble().orElse("it ended") : "";
  }

  /** What is wrong now, as half a sentence; empty when nothing is. */
  public String trouble() {
    return trouble;
  }
}
