package railglow.live;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import railglow.report.draw.ColourMap;
import railglow.run.RunEnding;
import railglow.run.RunProgress;
import railglow.safety.Bound;
import railglow.thermal.HeatSource;
import railglow.thermal.Look;

/**
 * What the page is told, as text: the facts with what went before for a new viewer, and each new
 * state. Thread-safe.
 */
final class LiveRecord {
  private static final int KEPT_STATES = 1200;
  private static final int KEPT_MESSAGES = 20;
  private static final int COLOURS = 255;
  private final ObjectMapper json = new ObjectMapper();
  private final LiveFacts facts;
  private final ArrayDeque<List<Object>> history = new ArrayDeque<>();
  private final ArrayDeque<String> messages = new ArrayDeque<>();
  private Map<String, Object> state = new LinkedHashMap<>();
  private List<Object> sources = List.of();
  private Map<String, Object> ended;
  private int lookCycles;

  LiveRecord(LiveFacts facts) {
    this.facts = facts;
  }

  /** For a viewer that has just come or come back. */
  synchronized String hello() {
    Map<String, Object> hello = new LinkedHashMap<>();
    hello.put("board", facts.board());
    hello.put("rail", facts.rail());
    hello.put("sequence", facts.sequence());
    hello.put("familyWiseError", facts.familyWiseError());
    hello.put("pictureUnit", facts.pictureUnit());
    hello.put("limits", limits());
    hello.put("history", new ArrayList<>(history));
    hello.put("messages", new ArrayList<>(messages));
    hello.put("temperatureColours", colours(ColourMap.TEMPERATURE));
    hello.put("differenceColours", colours(ColourMap.DIFFERENCE));
    hello.put("state", state);
    return text(hello);
  }

  private List<Object> limits() {
    List<Object> limits = new ArrayList<>();
    limit(limits, "voltage", "volts", "V", facts.limits().maxVolts());
    limit(limits, "current", "amperes", "A", facts.limits().maxAmperes());
    limit(limits, "power", "watts", "W", facts.limits().maxWatts());
    limit(limits, "hottest", "celsius", "\u00b0C", facts.limits().maxCelsius());
    limit(limits, "rise", "rise", "K", facts.limits().maxRiseKelvin());
    return limits;
  }

  private static void limit(
      List<Object> limits, String name, String field, String unit, Bound bound) {
    if (bound.isSet()) {
      limits.add(
          Map.of(
              "name",
              name,
              "field",
              field,
              "unit",
              unit,
              "limit",
              bound.value(),
              "origin",
              bound.origin()));
    }
  }

  private static List<Integer> colours(ColourMap map) {
    List<Integer> colours = new ArrayList<>();
    for (int i = 0; i < COLOURS; i++) {
      colours.add(map.rgb(i / (COLOURS - 1.0)));
    }
    colours.add(map.rgb(Double.NaN));
    return colours;
  }

  /** The new state as text. */
  synchronized String onProgress(RunProgress progress, long frame) {
    Map<String, Object> now = new LinkedHashMap<>();
    double watts = progress.volts() * progress.amperes();
    now.put("seconds", progress.elapsedSeconds());
    now.put("longest", progress.longestSeconds());
    now.put("output", progress.output().name());
    now.put("volts", finite(progress.volts()));
    now.put("amperes", finite(progress.amperes()));
    now.put("watts", finite(watts));
    now.put("celsius", finite(progress.hottestCelsius()));
    now.put("rise", finite(progress.hottestRiseKelvin()));
    now.put("cycles", progress.cyclesDone());
    now.put("planned", progress.cyclesPlanned());
    now.put("unit", progress.unit());
    now.put("best", progress.strongest() == null ? null : source(progress.strongest()));
    now.put("frame", frame);
    state = now;
    List<Object> sample = new ArrayList<>();
    sample.add(progress.elapsedSeconds());
    sample.add(finite(progress.volts()));
    sample.add(finite(progress.amperes()));
    sample.add(finite(watts));
    sample.add(finite(progress.hottestRiseKelvin()));
    history.add(sample);
    if (history.size() > KEPT_STATES) {
      history.remove();
    }
    return stateText();
  }

  synchronized String onLook(Look look) {
    lookCycles = look.cycles();
    List<Object> found = new ArrayList<>();
    look.sources().forEach(one -> found.add(source(one)));
    sources = found;
    return stateText();
  }

  synchronized String onEnded(RunEnding ending) {
    ended = new LinkedHashMap<>();
    ended.put("cause", ending.stop().cause().name());
    ended.put("evidence", ending.stop().evidence());
    ended.put("proven", ending.provenOff());
    ended.put("doubt", ending.doubt());
    state.put("output", ending.output().name());
    return stateText();
  }

  synchronized String onMessage(String sentence) {
    messages.add(sentence);
    if (messages.size() > KEPT_MESSAGES) {
      messages.remove();
    }
    return text(Map.of("message", sentence));
  }

  private String stateText() {
    state.put("look", lookCycles);
    state.put("sources", sources);
    state.put("ended", ended);
    return text(state);
  }

  private static Map<String, Object> source(HeatSource source) {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put("column", source.column());
    map.put("row", source.row());
    map.put("rise", finite(source.riseKelvin()));
    map.put("p", source.familyWiseP());
    return map;
  }

  private static Double finite(double value) {
    return Double.isFinite(value) ? value : null;
  }

  private String text(Object value) {
    try {
      return json.writeValueAsString(value);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a state of the page can't be written", e);
    }
  }
}
