package railglow.live.sound;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class SynthesisTest {
  @ParameterizedTest
  @EnumSource(Sound.class)
  void everySoundIsAsLongAsItsScoreAndNeverClipped(Sound sound) {
    short[] samples = Synthesis.samples(sound.score(), 1);
    assertEquals(sound.seconds() * Synthesis.RATE, samples.length, sound.score().size());
    int most = 0;
    for (short sample : samples) {
      most = Math.max(most, Math.abs(sample));
    }
    assertTrue(most > 0.5 * Short.MAX_VALUE && most < Short.MAX_VALUE, "peak " + most);
  }

  @ParameterizedTest
  @EnumSource(Sound.class)
  void inEveryToneItsOwnPitchIsTheStrongest(Sound sound) {
    short[] samples = Synthesis.samples(sound.score(), 0.5);
    int at = 0;
    for (Tone tone : sound.score()) {
      int length = (int) Math.round(tone.seconds() * Synthesis.RATE);
      if (tone.hertz() > 0) {
        double own = power(samples, at, length, tone.hertz());
        for (Sound other : Sound.values()) {
          for (Tone another : other.score()) {
            boolean far = Math.abs(another.hertz() - tone.hertz()) > 1.5 / tone.seconds();
            if (another.hertz() > 0 && far) {
              double its = power(samples, at, length, another.hertz());
              assertTrue(own > 4 * its, sound + ": " + another.hertz() + " Hz in it");
            }
          }
        }
      }
      at += length;
    }
  }

  @Test
  void theSoundsDifferInPitchAndInRhythm() {
    for (Sound one : Sound.values()) {
      for (Sound other : Sound.values()) {
        if (one != other) {
          assertNotEquals(highest(one), highest(other), one + " and " + other);
          assertNotEquals(rhythm(one), rhythm(other), one + " and " + other);
        }
      }
    }
  }

  @Test
  void aToneBeginsAndEndsSoftlySoThatNothingClicks() {
    short[] samples = Synthesis.samples(List.of(new Tone(1000, 0.1)), 1);
    assertTrue(Math.abs(samples[5]) < 0.02 * Short.MAX_VALUE, "starts at " + samples[5]);
    assertTrue(Math.abs(samples[samples.length - 6]) < 0.02 * Short.MAX_VALUE);
  }

  @Test
  void silenceIsSilent() {
    assertArrayEquals(
        new short[441], Synthesis.samples(List.of(Tone.silence(441.0 / Synthesis.RATE)), 1));
  }

  @Property(tries = 50, seed = "1")
  void theVolumeScalesThePeak(
      @ForAll @DoubleRange(min = 0.01, max = 1) double volume,
      @ForAll @DoubleRange(min = 100, max = 4000) double hertz) {
    int most = 0;
    for (short sample : Synthesis.samples(List.of(new Tone(hertz, 0.2)), volume)) {
      most = Math.max(most, Math.abs(sample));
    }
    assertTrue(most <= volume * Short.MAX_VALUE + 0.5, "peak " + most);
    assertTrue(most >= 0.7 * volume * Short.MAX_VALUE, "peak " + most);
  }

  private static double highest(Sound sound) {
    return sound.score().stream().mapToDouble(Tone::hertz).max().orElseThrow();
  }

  private static List<Double> rhythm(Sound sound) {
    return sound.score().stream().map(Tone::seconds).toList();
  }

  /** Goertzel, "An Algorithm for the Evaluation of Finite Trigonometric Series", 1958. */
  private static double power(short[] samples, int from, int length, double hertz) {
    double coefficient = 2 * Math.cos(2 * Math.PI * hertz / Synthesis.RATE);
    double before = 0;
    double last = 0;
    for (int i = from; i < from + length; i++) {
      double now = samples[i] + coefficient * last - before;
      before = last;
      last = now;
    }
    return last * last + before * before - coefficient * last * before;
  }
}
