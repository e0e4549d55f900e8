package railglow.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.Test;
import railglow.journal.Findings;
import railglow.live.sound.Loudspeaker;
import railglow.live.sound.Sound;
import railglow.run.handsfree.Contact;
import railglow.run.handsfree.ContactState;
import railglow.run.handsfree.TouchStart;
import railglow.safety.StopCause;

/** What the operator of a hands-free session is told, in words and by ear. */
class TouchVoiceTest {
  private final Typed typed = Typed.together();
  private final Terminal terminal = typed.terminal();

  @Test
  void aContactThatNeverSettlesIsToldWithWhatItSwingsBetweenAndWhatToDo() {
    try (TouchVoice voice = voice(0, new CopyOnWriteArrayList<>())) {
      voice.felt(TouchStart.Event.NOT_SETTLING, swinging(6.81, 12.7));
      voice.felt(TouchStart.Event.NOT_SETTLING, swinging(6.81, Double.POSITIVE_INFINITY));
    }
    List<String> lines = said().lines().toList();
    assertEquals(
        "Unsteady   the contact does not settle: its resistance swings from 6.81 ohm to 12.7 ohm;"
            + " press harder, clean the pad, or rest the hand",
        lines.get(0));
    assertTrue(lines.get(1).contains("from 6.81 ohm to open;"), lines.get(1));
  }

  @Test
  void everyStepOfATouchHasItsSound() {
    List<Integer> played = new CopyOnWriteArrayList<>();
    try (TouchVoice voice = voice(0.5, played)) {
      voice.felt(TouchStart.Event.FELT, swinging(6.8, 6.9));
      voice.keepStill("amber", 1, "");
      voice.ended(Findings.Verdict.HEAT_FOUND, false, "C37, 420 mK");
    }
    try (TouchVoice voice = voice(0.5, played)) {
      voice.ended(Findings.Verdict.NOTHING_FOUND, false, "");
      voice.stopped(StopCause.CURRENT_ABOVE_LIMIT, "current 600 mA");
    }
    assertEquals(
        lengths(
            Sound.CONTACT_FELT,
            Sound.KEEP_STILL,
            Sound.FOUND,
            Sound.LIFT,
            Sound.NOTHING_FOUND,
            Sound.LIFT,
            Sound.STOPPED_BY_LIMIT),
        played);
  }

  @Test
  void silenceIsNeitherSoundNorBellNorWordsOfSounds() {
    List<Integer> played = new CopyOnWriteArrayList<>();
    try (TouchVoice voice = voice(0, played)) {
      voice.keepStill("amber", 1, "");
      voice.stopped(StopCause.CURRENT_ABOVE_LIMIT, "current 600 mA");
    }
    assertEquals(List.of(), played);
    assertTrue(!said().contains("Sound") && said().indexOf(7) < 0, said());
  }

  private static List<Integer> lengths(Sound... sounds) {
    return List.of(sounds).stream()
        .map(sound -> railglow.live.sound.Synthesis.samples(sound.score(), 0.5).length)
        .toList();
  }

  private static Contact swinging(double lowest, double highest) {
    return new Contact(ContactState.BOUNCING, 4_000_000_000L, 7, lowest, highest, 0);
  }

  private TouchVoice voice(double volume, List<Integer> played) {
    Loudspeaker loudspeaker =
        new Loudspeaker() {
          @Override
          public void play(short[] samples) {
            played.add(samples.length);
          }

          @Override
          public void close() {}
        };
    return new TouchVoice(terminal, volume, TouchScreen.NONE, loudspeaker);
  }

  private String said() {
    return typed.answers();
  }
}
