package railglow.live;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import railglow.run.RunProgress;
import railglow.thermal.HeatSource;
import railglow.thermal.Look;

/**
 * What the page is told: how things stand, and every sample and message kept so far, from which
 * each viewer takes what it has not seen yet. Thread-safe; nobody waits for a viewer.
 */
final class LiveRecord {
  private static final int KEPT_SAMPLES = 1200;
  private static final int KEPT_MESSAGES = 20;

  /** Seconds since the page's start, volts, amperes, watts, kelvin; null where unknown. */
  private final ArrayDeque<List<Object>> samples = new ArrayDeque<>();

  private final ArrayDeque<String> messages = new ArrayDeque<>();
  private final long startNanos;
  private long sampleCount;
  private Map<String, Object> numbers = new LinkedHashMap<>();
  private List<Object> sources = List.of();
  private boolean past;
  private LiveTouches touches = LiveTouches.NONE;

  LiveRecord(long startNanos) {
    this.startNanos = startNanos;
  }

  /** A new run: what was certain of the last one is not of this one. */
  synchronized void begin() {
    numbers = new LinkedHashMap<>();
    sources = List.of();
    past = false;
  }

  synchronized void onProgress(RunProgress progress) {
    Map<String, Object> now = new LinkedHashMap<>();
    now.put("seconds", progress.elapsedSeconds());
    now.put("longest", progress.longestSeconds());
    now.put("celsius", finite(progress.hottestCelsius()));
    now.put("cycles", progress.cyclesDone());
    now.put("planned", progress.cyclesPlanned());
    now.put("unit", progress.unit());
    now.put("best", progress.strongest() == null ? null : source(progress.strongest()));
    numbers = now;
    sample(progress.nanos(), progress.volts(), progress.amperes(), progress.hottestRiseKelvin());
  }

  /** Between runs; what was found in the last one stays. */
  synchronized void onReading(LiveReading reading) {
    past = true;
    sample(reading.nanos(), reading.volts(), reading.amperes(), Double.NaN);
  }

  private void sample(long nanos, double volts, double amperes, double riseKelvin) {
    double watts = volts * amperes;
    numbers.put("volts", finite(volts));
    numbers.put("amperes", finite(amperes));
    numbers.put("watts", finite(watts));
    numbers.put("rise", finite(riseKelvin));
    List<Object> sample = new ArrayList<>();
    sample.add(Math.round((nanos - startNanos) * 1e-6) * 1e-3);
    sample.add(finite(volts));
    sample.add(finite(amperes));
    sample.add(finite(watts));
    sample.add(finite(riseKelvin));
    samples.add(sample);
    sampleCount++;
    if (samples.size() > KEPT_SAMPLES) {
      samples.remove();
    }
  }

  synchronized void onLook(Look look) {
    List<Object> found = new ArrayList<>();
    look.sources().forEach(one -> found.add(source(one)));
    sources = found;
  }

  synchronized void onMessage(String sentence) {
    messages.add(sentence);
    if (messages.size() > KEPT_MESSAGES) {
      messages.remove();
    }
  }

  synchronized void onTouches(LiveTouches newTouches) {
    touches = newTouches;
  }

  /**
   * How things stand, with the samples that a viewer has not seen.
   *
   * @param seen how many samples it has been told of; 0 for a new viewer
   */
  synchronized Map<String, Object> since(long seen) {
    Map<String, Object> state = new LinkedHashMap<>(numbers);
    state.put("sources", sources);
    state.put("past", past);
    state.put("messages", List.copyOf(messages));
    state.put("touches", touches);
    state.put("sampleCount", sampleCount);
    long first = sampleCount - samples.size();
    // A viewer from before a restart may claim more than there is: it gets everything.
    long skip = seen > sampleCount ? 0 : Math.max(0, seen - first);
    state.put("samples", samples.stream().skip(skip).toList());
    return state;
  }

  private static Map<String, Object> source(HeatSource source) {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put("column", source.column());
    map.put("row", source.row());
    map.put("swing", finite(source.swingKelvin()));
    map.put("p", source.familyWiseP());
    return map;
  }

  private static Double finite(double value) {
    return Double.isFinite(value) ? value : null;
  }
}
