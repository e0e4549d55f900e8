package railglow.thermal;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;

/** The last few of things that take long to make and never change. Thread-safe. */
final class Remembered<K, V> {
  private final Map<K, V> made;
  private final Function<K, V> maker;

  /**
   * @param most how many are kept
   * @param maker must give equal things for equal keys
   */
  Remembered(int most, Function<K, V> maker) {
    this.maker = maker;
    made =
        Collections.synchronizedMap(
            new LinkedHashMap<>() {
              @Override
              protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
                return size() > most;
              }
            });
  }

  V of(K key) {
    return made.computeIfAbsent(key, maker);
  }
}
