package railglow.live.sound;

import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Plays sounds one after another on a thread of its own; asking for one never waits. Where nothing
 * can be heard, every sound goes to the bell instead. {@link #play} may be called from any thread.
 */
public final class SoundPlayer implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(SoundPlayer.class);

  /** More than these would be told long after they happened. */
  private static final int MOST_WAITING = 6;

  private static final long LONGEST_END_SECONDS = 3;
  private final BlockingQueue<Sound> waiting = new ArrayBlockingQueue<>(MOST_WAITING);
  private final Loudspeaker loudspeaker;
  private final Consumer<Sound> bell;
  private final double volume;
  private final Thread thread;
  private volatile boolean closing;
  private boolean mute;

  /**
   * @param volume 0 to 1; at 0 neither loudspeaker nor bell is used
   * @param bell called on the player's thread, or the caller's when it can't keep up
   */
  public SoundPlayer(Loudspeaker loudspeaker, double volume, Consumer<Sound> bell) {
    this.loudspeaker = loudspeaker;
    this.volume = volume;
    this.bell = bell;
    this.thread = new Thread(this::loop, "sounds");
    thread.setDaemon(true);
    thread.start();
  }

  /** Asks for a sound. One that finds no room is left out: those before it are told first. */
  public void play(Sound sound) {
    if (volume > 0 && !waiting.offer(sound)) {
      LOG.warn("no room for the sound '{}'", sound.words());
    }
  }

  /** Lets what was asked for be heard, for at most some seconds. */
  @Override
  public void close() {
    closing = true;
    try {
      TimeUnit.SECONDS.timedJoin(thread, LONGEST_END_SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void loop() {
    try {
      while (true) {
        Sound sound = waiting.poll(100, TimeUnit.MILLISECONDS);
        if (sound != null) {
          sound(sound);
        } else if (closing) {
          return;
        }
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      loudspeaker.close();
    }
  }

  private void sound(Sound sound) {
    if (!mute) {
      try {
        loudspeaker.play(Synthesis.samples(sound.score(), volume));
        return;
      } catch (Loudspeaker.SilentException e) {
        mute = true;
        LOG.info("{}; the terminal's bell is used", e.getMessage());
      }
    }
    bell.accept(sound);
  }
}
