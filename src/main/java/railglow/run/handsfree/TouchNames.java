package railglow.run.handsfree;

import java.util.HashSet;
import java.util.Set;

/**
 * The names of a session's touches: in the order of the labels unless another was chosen for the
 * next one. No two are alike: a label that is used again gets a number. Thread-safe.
 */
public final class TouchNames {
  private final TouchLabels labels;
  private final Set<String> given = new HashSet<>();
  private String chosen = "";

  public TouchNames(TouchLabels labels) {
    this.labels = labels;
  }

  /** The next touch's name. */
  public synchronized String next() {
    String label = chosen.isEmpty() ? firstUnused() : chosen;
    String name = label;
    for (int round = 2; given.contains(name); round++) {
      name = label + "-" + round;
    }
    return name;
  }

  private String firstUnused() {
    int number = 1;
    while (given.contains(labels.of(number))) {
      number++;
    }
    return labels.of(number);
  }

  /** Names the next touch by the number of a label, from 1. */
  public synchronized void choose(int number) {
    chosen = labels.of(number);
  }

  /**
   * Names the next touch by a word.
   *
   * @throws IllegalArgumentException with a sentence when it can't be a label
   */
  public synchronized void choose(String word) {
    chosen = TouchLabels.checked(word.strip());
  }

  /** The next touch begins: its name is given away. */
  public synchronized String take() {
    String name = next();
    given.add(name);
    chosen = "";
    return name;
  }
}
