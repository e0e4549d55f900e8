package railglow.live.sound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.Test;

class SoundPlayerTest {
  private final List<Integer> heard = new CopyOnWriteArrayList<>();
  private final List<Sound> rung = new CopyOnWriteArrayList<>();

  @Test
  void soundsAreHeardInOrderBeforeTheEnd() {
    try (SoundPlayer player = new SoundPlayer(new Fake(false), 0.5, rung::add)) {
      player.play(Sound.CONTACT_FELT);
      player.play(Sound.FOUND);
    }
    assertEquals(List.of(length(Sound.CONTACT_FELT), length(Sound.FOUND)), heard);
    assertEquals(List.of(), rung);
  }

  @Test
  void whereNothingCanBeHeardTheBellRingsForEverySound() {
    try (SoundPlayer player = new SoundPlayer(new Fake(true), 0.5, rung::add)) {
      player.play(Sound.LIFT);
      player.play(Sound.NOTHING_FOUND);
    }
    assertEquals(List.of(Sound.LIFT, Sound.NOTHING_FOUND), rung);
    assertEquals(List.of(), heard);
  }

  @Test
  void withoutVolumeThereIsNeitherSoundNorBell() {
    try (SoundPlayer player = new SoundPlayer(new Fake(true), 0, rung::add)) {
      player.play(Sound.STOPPED_BY_LIMIT);
    }
    assertTrue(rung.isEmpty() && heard.isEmpty());
  }

  private static int length(Sound sound) {
    return Synthesis.samples(sound.score(), 0.5).length;
  }

  private final class Fake implements Loudspeaker {
    private final boolean broken;

    Fake(boolean broken) {
      this.broken = broken;
    }

    @Override
    public void play(short[] samples) throws SilentException {
      if (broken) {
        throw new SilentException("no loudspeaker here", null);
      }
      heard.add(samples.length);
    }

    @Override
    public void close() {}
  }
}
