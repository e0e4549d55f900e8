package railglow.journal;

/**
 * A place in a stored file that can't be trusted and was left out.
 *
 * @param file its name in the run folder
 * @param byteOffset where it begins
 * @param what one sentence: what is wrong there, with its line or frame
 */
public record Damage(String file, long byteOffset, String what) {
  @Override
  public String toString() {
    return file + ", byte " + byteOffset + ": " + what;
  }
}
