package railglow.cli;

import java.util.Locale;
import railglow.journal.Findings;
import railglow.live.LiveStage;
import railglow.live.sound.Loudspeaker;
import railglow.live.sound.MachineLoudspeaker;
import railglow.live.sound.Sound;
import railglow.live.sound.SoundPlayer;
import railglow.run.handsfree.Contact;
import railglow.run.handsfree.TouchStart;
import railglow.safety.StopCause;
import railglow.units.Quantity;
import railglow.units.Unit;

/** Tells the operator of a hands-free session what happens: by ear, in words, and on the page. */
final class TouchVoice implements AutoCloseable {
  private final Terminal terminal;
  private final TouchScreen screen;
  private final SoundPlayer sounds;

  /**
   * @param volume 0 to 1; 0 for silence
   */
  TouchVoice(Terminal terminal, double volume, TouchScreen screen) {
    this(terminal, volume, screen, new MachineLoudspeaker());
  }

  TouchVoice(Terminal terminal, double volume, TouchScreen screen, Loudspeaker loudspeaker) {
    this.terminal = terminal;
    this.screen = screen;
    this.sounds =
        new SoundPlayer(
            loudspeaker,
            volume,
            sound -> {
              screen.machineIsSilent();
              terminal.bell();
              terminal.say("Sound      " + sound.words());
            });
  }

  /** Plays and prints every sound there is. */
  void all() {
    for (Sound sound : Sound.values()) {
      terminal.say(
          String.format(Locale.ROOT, "%-20s %s", sound.words(), String.join(" ", tones(sound))));
      sounds.play(sound);
    }
  }

  private static java.util.List<String> tones(Sound sound) {
    return sound.score().stream()
        .map(
            tone ->
                tone.hertz() == 0
                    ? String.format(Locale.ROOT, "- %.0f ms,", 1e3 * tone.seconds())
                    : String.format(
                        Locale.ROOT, "%.0f Hz %.0f ms,", tone.hertz(), 1e3 * tone.seconds()))
        .toList();
  }

  void felt(TouchStart.Event event, Contact contact) {
    switch (event) {
      case FELT -> {
        play(Sound.CONTACT_FELT);
        terminal.say("Felt       contact, " + ohms(contact.ohms()));
        screen.stage(LiveStage.CONTACT_FELT, ohms(contact.ohms()));
      }
      case NOT_SETTLING -> {
        String sentence =
            "the contact does not settle: its resistance swings from "
                + ohms(contact.lowestOhms())
                + " to "
                + ohms(contact.highestOhms())
                + "; press harder, clean the pad, or rest the hand";
        terminal.say("Unsteady   " + sentence);
        screen.stage(LiveStage.UNSTEADY, sentence);
      }
      case LIFTED -> {
        terminal.say("Lifted");
        screen.stage(LiveStage.LISTENING, "");
      }
      case READY -> screen.stage(LiveStage.LISTENING, "");
      default -> {}
    }
  }

  /** The probe met the board with a surge; the output was driven off for it, and listens anew. */
  void surged(String evidence) {
    String sentence =
        "as the probe met the board: " + evidence + "; output driven off and proven off";
    Summary.sentence(terminal, "Surge      ", sentence);
    screen.onMessage(sentence);
    screen.stage(LiveStage.UNSTEADY, "a surge as the probe met the board: set it down anew");
  }

  private void play(Sound sound) {
    sounds.play(sound);
    screen.sound(sound);
  }

  /**
   * @param felt in words; may be empty
   */
  void keepStill(String label, int number, String felt) {
    play(Sound.KEEP_STILL);
    screen.stage(LiveStage.KEEP_STILL, felt);
    terminal.say("");
    terminal.say(
        "Touch "
            + number
            + "    "
            + label
            + ": keep still"
            + (felt.isEmpty() ? "" : "; felt " + felt));
  }

  /**
   * @param found in words
   */
  void ended(Findings.Verdict verdict, boolean contactLost, String found) {
    if (verdict == Findings.Verdict.HEAT_FOUND) {
      play(Sound.FOUND);
      screen.stage(LiveStage.FOUND, found);
    } else if (verdict == Findings.Verdict.NOTHING_FOUND) {
      play(Sound.NOTHING_FOUND);
      screen.stage(LiveStage.NOTHING_FOUND, "");
    } else {
      screen.stage(LiveStage.LIFTED, found);
    }
    play(Sound.LIFT);
    terminal.say(
        contactLost ? "Lifted     set the probe down on the next point" : "Lift       the probe");
  }

  void stopped(StopCause cause, String evidence) {
    screen.stage(LiveStage.STOPPED, evidence);
    if (cause.kind() == StopCause.Kind.LIMIT) {
      play(Sound.STOPPED_BY_LIMIT);
    }
  }

  @Override
  public void close() {
    sounds.close();
  }

  private static String ohms(double ohms) {
    if (Double.isInfinite(ohms)) {
      return "open";
    }
    return Double.isNaN(ohms) ? "unknown" : Quantity.format(ohms, Unit.OHM);
  }
}
