package railglow.live.sound;

/**
 * One tone or silence of a score.
 *
 * @param hertz pitch; 0 for silence
 * @param seconds length
 */
public record Tone(double hertz, double seconds) {
  public Tone {
    if (!(hertz >= 0 && hertz <= 5000 && seconds > 0 && seconds <= 2)) {
      throw new IllegalArgumentException("no tone of " + hertz + " Hz for " + seconds + " s");
    }
  }

  static Tone silence(double seconds) {
    return new Tone(0, seconds);
  }
}
