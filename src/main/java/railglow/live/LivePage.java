package railglow.live;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import railglow.live.sound.Sound;
import railglow.live.sound.Synthesis;
import railglow.observed.Frame;
import railglow.observed.OutputState;
import railglow.run.RunEnding;
import railglow.run.RunProgress;
import railglow.run.RunWatcher;
import railglow.thermal.Look;
import railglow.time.MonotonicClock;
import railglow.time.Pause;

/**
 * A page on this machine that shows a run, or a hands-free session of many, as it goes and can ask
 * for a stop, and nothing else. Viewers ask for what is new; nothing waits for them.
 *
 * <p>Thread-safe.
 */
public final class LivePage implements RunWatcher, AutoCloseable {
  private static final long WATCHED_NANOS = 3_000_000_000L;
  private static final long FAREWELL_NANOS = 700_000_000L;

  private final LiveFacts facts;
  private final MonotonicClock clock;
  private final ObjectMapper json = new ObjectMapper();
  private final AtomicReference<LiveBrief> brief;
  private final LiveRecord record;
  private final LivePictures pictures;
  private final LiveServer server;
  private volatile long askedNanos;

  private LivePage(LiveFacts facts, LiveDoor door, MonotonicClock clock, Consumer<String> askStop)
      throws IOException {
    this.facts = facts;
    this.clock = clock;
    long now = clock.nanos();
    askedNanos = now - WATCHED_NANOS;
    brief = new AtomicReference<>(LiveBrief.first(facts.place(), now));
    record = new LiveRecord(now);
    pictures = new LivePictures(facts);
    server = new LiveServer(door, new Content(), askStop);
  }

  /**
   * Starts serving.
   *
   * @param askStop called with who asked, on a thread of its own; must return at once
   * @throws IOException when no port can be had
   */
  public static LivePage start(
      LiveFacts facts, LiveDoor door, MonotonicClock clock, Consumer<String> askStop)
      throws IOException {
    return new LivePage(facts, door, clock, askStop);
  }

  /** The paths that are served beside {@code /stop}. */
  Set<String> paths() {
    return server.paths();
  }

  /** The address to open, with this page's token. */
  public String address() {
    return server.address();
  }

  public int port() {
    return server.port();
  }

  /** Whether somebody looks at the moment. */
  public boolean isWatched() {
    return clock.nanos() - askedNanos < WATCHED_NANOS;
  }

  @Override
  public void onProgress(RunProgress progress) {
    news(progress.output(), progress.nanos(), true);
    record.onProgress(progress);
  }

  @Override
  public void onMessage(String sentence) {
    record.onMessage(sentence);
  }

  @Override
  public void onFrame(Frame frame) {
    if (isWatched()) {
      pictures.onFrame(frame);
    }
  }

  @Override
  public void onLook(Look look) {
    pictures.onLook(look);
    record.onLook(look);
  }

  /** All is over: the page keeps what it knows for those who look later. */
  @Override
  public void onEnded(RunEnding ending) {
    brief.updateAndGet(b -> b.ended(ending));
  }

  /** A run of a session begins. */
  public void onBegun() {
    record.begin();
    pictures.begin();
  }

  /** A run of a session, or a wait between two, is over; what is next has nothing to say yet. */
  public void onBetween(OutputState output) {
    news(output, clock.nanos(), false);
  }

  /** How the supply stands between the runs of a session. */
  public void onReading(LiveReading reading) {
    news(reading.output(), reading.nanos(), true);
    record.onReading(reading);
  }

  private void news(OutputState output, long nanos, boolean expected) {
    brief.updateAndGet(b -> b.with(output, nanos, expected));
  }

  /**
   * Where a session stands.
   *
   * @param point what is measured, in words
   * @param more a sentence; may be empty
   */
  public void onStage(LiveStage stage, String point, String more) {
    brief.updateAndGet(
        b -> b.at(facts.place() + (point.isEmpty() ? "" : ", " + point), stage, more));
  }

  /** A sound was played; the page plays it too where it has been asked to. */
  public void onSound(Sound sound) {
    brief.updateAndGet(b -> b.heard(sound));
  }

  /** The machine itself plays no sound. */
  public void onSilentMachine() {
    brief.updateAndGet(LiveBrief::onSilentMachine);
  }

  public void onTouches(LiveTouches touches) {
    record.onTouches(touches);
  }

  /** Ends all connections, after those who look have had time to see the end. */
  @Override
  public void close() {
    if (isWatched()) {
      Pause.nanos(FAREWELL_NANOS);
    }
    server.close();
  }

  /** What the server serves of all this. */
  private final class Content implements LiveServer.LiveContent {
    @Override
    public Map<String, Object> brief() {
      return brief.get().map(clock.nanos());
    }

    @Override
    public Map<String, Object> facts() {
      return facts.map();
    }

    @Override
    public Map<String, Object> sounds() {
      Map<String, Object> scores = new LinkedHashMap<>();
      for (Sound sound : Sound.values()) {
        scores.put(sound.name(), sound.score());
      }
      return Map.of(
          "volume",
          facts.soundVolume(),
          "octaveShare",
          Synthesis.OCTAVE_SHARE,
          "rampSeconds",
          Synthesis.RAMP_SECONDS,
          "scores",
          scores);
    }

    @Override
    public Map<String, Object> stateSince(long seen) {
      askedNanos = clock.nanos();
      Map<String, Object> state = record.since(seen);
      state.putAll(brief());
      state.put("frame", pictures.frameCount());
      state.put("look", pictures.differenceCount());
      return state;
    }

    @Override
    public byte[] picture(boolean difference) {
      return difference ? pictures.difference() : pictures.now();
    }

    @Override
    public byte[] json(Map<String, Object> value) {
      try {
        return json.writeValueAsBytes(value);
      } catch (JsonProcessingException e) {
        throw new IllegalStateException("a state of the page can't be written", e);
      }
    }
  }
}
