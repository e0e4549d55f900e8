package railglow.live.sound;

import java.util.List;

/**
 * What the operator is told by ear. Each has its own pitch and its own rhythm, so that either alone
 * tells them apart: for those who hear one range badly, and in a noisy room.
 */
public enum Sound {
  /** One short high tick. */
  CONTACT_FELT("contact felt", tone(1320, 0.06)),

  /** Two long even middle tones. */
  KEEP_STILL("keep still", tone(587, 0.22), rest(0.12), tone(587, 0.22)),

  /** Three quick rising tones. */
  FOUND("found", tone(784, 0.1), rest(0.03), tone(988, 0.1), rest(0.03), tone(1568, 0.3)),

  /** Short and long, falling. */
  NOTHING_FOUND("nothing found", tone(494, 0.12), rest(0.05), tone(330, 0.4)),

  /** Two quick ticks. */
  LIFT("lift", tone(1047, 0.05), rest(0.07), tone(1047, 0.05)),

  /** Five low fast beats. */
  STOPPED_BY_LIMIT(
      "stopped by a limit",
      tone(220, 0.14),
      rest(0.06),
      tone(220, 0.14),
      rest(0.06),
      tone(220, 0.14),
      rest(0.06),
      tone(220, 0.14),
      rest(0.06),
      tone(220, 0.14));

  private final String words;
  private final List<Tone> score;

  Sound(String words, Tone... score) {
    this.words = words;
    this.score = List.of(score);
  }

  /** What it means. */
  public String words() {
    return words;
  }

  public List<Tone> score() {
    return score;
  }

  public double seconds() {
    return score.stream().mapToDouble(Tone::seconds).sum();
  }

  private static Tone tone(double hertz, double seconds) {
    return new Tone(hertz, seconds);
  }

  private static Tone rest(double seconds) {
    return Tone.silence(seconds);
  }
}
