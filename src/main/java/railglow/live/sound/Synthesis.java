package railglow.live.sound;

import java.util.List;

/** Makes samples from a score. Pure. */
public final class Synthesis {
  /** Samples a second of everything here. */
  public static final int RATE = 44_100;

  /** Rises and falls so softly that nothing clicks. */
  public static final double RAMP_SECONDS = 0.008;

  /** A little of the octave makes a tone heard on small speakers. */
  public static final double OCTAVE_SHARE = 0.2;

  private Synthesis() {}

  /**
   * Sixteen-bit samples of one channel; never clipped.
   *
   * @param volume 0 (silent) to 1 (full scale)
   * @return as long as the tones together, each rounded to whole samples
   */
  public static short[] samples(List<Tone> score, double volume) {
    if (!(volume >= 0 && volume <= 1)) {
      throw new IllegalArgumentException("volume " + volume + " is not between 0 and 1");
    }
    int length = score.stream().mapToInt(Synthesis::length).sum();
    short[] samples = new short[length];
    int at = 0;
    for (Tone tone : score) {
      write(samples, at, tone, volume);
      at += length(tone);
    }
    return samples;
  }

  private static int length(Tone tone) {
    return (int) Math.round(tone.seconds() * RATE);
  }

  private static void write(short[] samples, int from, Tone tone, double volume) {
    if (tone.hertz() == 0) {
      return;
    }
    int length = length(tone);
    double ramp = Math.min(RAMP_SECONDS * RATE, length / 2.0);
    for (int i = 0; i < length; i++) {
      double edge = Math.min(1, (Math.min(i, length - 1 - i) + 0.5) / ramp);
      double envelope = 0.5 - 0.5 * Math.cos(Math.PI * edge);
      double turns = tone.hertz() * i / RATE;
      double wave =
          (Math.sin(2 * Math.PI * turns) + OCTAVE_SHARE * Math.sin(4 * Math.PI * turns))
              / (1 + OCTAVE_SHARE);
      samples[from + i] = (short) Math.round(Short.MAX_VALUE * volume * envelope * wave);
    }
  }
}
