package railglow.journal;

import railglow.thermal.CountSamples;
import railglow.thermal.FloatSamples;
import railglow.thermal.Samples;

/** What one pixel of a stored frame is. */
public enum SampleType {
  UINT16("uint16", 2),
  FLOAT32("float32", 4);

  private final String word;
  private final int bytes;

  SampleType(String word, int bytes) {
    this.word = word;
    this.bytes = bytes;
  }

  /** As in file headers and in {@link CameraFacts#sampleType()}. */
  public String word() {
    return word;
  }

  public int bytes() {
    return bytes;
  }

  public Samples newSamples(int width, int height) {
    return this == UINT16 ? new CountSamples(width, height) : new FloatSamples(width, height);
  }

  public static SampleType of(Samples samples) {
    return samples instanceof CountSamples ? UINT16 : FLOAT32;
  }

  /**
   * The type with this word.
   *
   * @throws JournalException when there is none
   */
  public static SampleType named(String word) throws JournalException {
    for (SampleType type : values()) {
      if (type.word.equals(word)) {
        return type;
      }
    }
    throw new JournalException(
        "sample type '" + word + "' is not known; it is 'uint16' or 'float32'");
  }
}
