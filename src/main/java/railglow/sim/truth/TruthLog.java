package railglow.sim.truth;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Keeps what truly happened, in memory and, if wanted, as lines of JSON. Thread-safe. */
public final class TruthLog implements AutoCloseable {
  private static final int KEPT_FRAMES = 20_000;
  private final ObjectMapper json = new ObjectMapper();
  private final List<TruthEvent> events = new ArrayList<>();
  private int frames;
  private BufferedWriter file;

  /** Writes everything, from the first entry on, to this file too. */
  public synchronized void writeTo(Path path) throws IOException {
    file = Files.newBufferedWriter(path);
    for (TruthEvent event : events) {
      file.write(line(event));
    }
    file.flush();
  }

  /** Notes one event; facts are pairs of name and value. */
  public synchronized void note(long nanos, TruthEvent.Kind kind, Object... facts) {
    Map<String, Object> map = new LinkedHashMap<>();
    for (int i = 0; i < facts.length; i += 2) {
      map.put((String) facts[i], facts[i + 1]);
    }
    TruthEvent event = new TruthEvent(nanos, kind, map);
    if (kind != TruthEvent.Kind.FRAME || frames++ < KEPT_FRAMES) {
      events.add(event);
    }
    if (file != null) {
      try {
        file.write(line(event));
        if (kind != TruthEvent.Kind.FRAME) {
          file.flush();
        }
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }

  private String line(TruthEvent event) throws IOException {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put("kind", event.kind().name().toLowerCase(Locale.ROOT).replace('_', '-'));
    map.put("nanos", event.nanos());
    map.putAll(event.facts());
    return json.writeValueAsString(map) + "\n";
  }

  public synchronized List<TruthEvent> events() {
    return List.copyOf(events);
  }

  public List<TruthEvent> events(TruthEvent.Kind kind) {
    return events().stream().filter(event -> event.kind() == kind).toList();
  }

  /** The last event of a kind. */
  public Optional<TruthEvent> last(TruthEvent.Kind kind) {
    List<TruthEvent> all = events(kind);
    return all.isEmpty() ? Optional.empty() : Optional.of(all.get(all.size() - 1));
  }

  /** Whether current can flow, by the last switch that truly happened. */
  public boolean outputIsOn() {
    return last(TruthEvent.Kind.OUTPUT)
        .map(e -> Boolean.TRUE.equals(e.facts().get("on")))
        .orElse(false);
  }

  @Override
  public synchronized void close() throws IOException {
    if (file != null) {
      file.close();
      file = null;
    }
  }
}
