package railglow.config;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeSet;
import org.yaml.snakeyaml.DumperOptions;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;
import org.yaml.snakeyaml.nodes.Tag;
import railglow.units.Quantity;
import railglow.units.QuantityException;
import railglow.units.Unit;

/**
 * One mapping of a user's file. Every getter remembers a problem instead of throwing and then gives
 * a harmless stand-in (NaN, 0, empty, the low end); {@link ConfigFile#finish} refuses the file, so
 * a stand-in never reaches anyone. Not thread-safe.
 */
public final class ConfigSection {
  private final ConfigFile file;
  private final String place;
  private final int line;
  private final boolean standIn;
  private final Map<String, Node> values = new LinkedHashMap<>();
  private final Map<String, Integer> keyLines = new LinkedHashMap<>();
  private final TreeSet<String> asked = new TreeSet<>();
  private final List<ConfigSection> children = new ArrayList<>();

  ConfigSection(ConfigFile file, String place, MappingNode node) {
    this(file, place, node, false);
  }

  private ConfigSection(ConfigFile file, String place, MappingNode node, boolean standIn) {
    this.standIn = standIn;
    this.file = file;
    this.place = place;
    this.line = ConfigFile.line(node);
    for (NodeTuple tuple : node.getValue()) {
      String key = tuple.getKeyNode() instanceof ScalarNode scalar ? scalar.getValue() : "?";
      if (values.put(key, tuple.getValueNode()) != null) {
        file.report(ConfigFile.line(tuple.getKeyNode()), "'" + key + "' is given twice");
      }
      keyLines.put(key, ConfigFile.line(tuple.getKeyNode()));
    }
  }

  /** The line a key stands on, or the section's own first line when it is absent. */
  public int line(String key) {
    return keyLines.getOrDefault(key, line);
  }

  public boolean has(String key) {
    asked.add(key);
    return values.containsKey(key);
  }

  /** Every key of the section, in the file's order; they all count as asked for. */
  public List<String> keys() {
    asked.addAll(values.keySet());
    return List.copyOf(values.keySet());
  }

  /** Remembers a problem with the value of a key. */
  public void report(String key, String message) {
    file.report(line(key), "'" + place + key + "' " + message);
  }

  /** A required number with its unit within a closed range, both in the unprefixed unit. */
  public double quantity(String key, Unit unit, double low, double high) {
    OptionalDouble value = optionalQuantity(key, unit, low, high);
    if (value.isEmpty() && !values.containsKey(key)) {
      missing(key, "a number in " + unit.symbol() + " " + Allowed.range(low, high, unit));
    }
    return value.orElse(Double.NaN);
  }

  /** As {@link #quantity}, empty when the key is absent. */
  public OptionalDouble optionalQuantity(String key, Unit unit, double low, double high) {
    Optional<String> text = scalar(key);
    return text.isEmpty() ? OptionalDouble.empty() : parsed(key, text.get(), unit, low, high);
  }

  /** A list of numbers with their units, each within the range. */
  public List<Double> quantities(String key, Unit unit, double low, double high) {
    List<Double> result = new ArrayList<>();
    for (String text : texts(key)) {
      parsed(key, text, unit, low, high).ifPresent(result::add);
    }
    return result;
  }

  /** A required number without unit (a ratio, a scale in the descriptor's own words). */
  public double number(String key, double low, double high) {
    OptionalDouble value = optionalNumber(key, low, high);
    if (value.isEmpty() && !values.containsKey(key)) {
      missing(key, "a number from " + low + " to " + high);
    }
    return value.orElse(Double.NaN);
  }

  public OptionalDouble optionalNumber(String key, double low, double high) {
    Optional<String> text = scalar(key);
    if (text.isEmpty()) {
      return OptionalDouble.empty();
    }
    OptionalDouble value = PlainNumber.real(text.get());
    if (value.isEmpty()) {
      report(key, "is '" + text.get() + "', not a number");
    } else if (!(value.getAsDouble() >= low && value.getAsDouble() <= high)) {
      report(key, "is " + text.get() + "; allowed is " + low + " to " + high);
      return OptionalDouble.empty();
    }
    return value;
  }

  public int integer(String key, int low, int high) {
    OptionalInt value = optionalInteger(key, low, high);
    if (value.isEmpty() && !values.containsKey(key)) {
      missing(key, "a whole number from " + low + " to " + high);
    }
    return value.orElse(low);
  }

  public OptionalInt optionalInteger(String key, int low, int high) {
    Optional<String> text = scalar(key);
    if (text.isEmpty()) {
      return OptionalInt.empty();
    }
    OptionalInt value = PlainNumber.whole(text.get());
    if (value.isEmpty()) {
      report(key, "is '" + text.get() + "', not a whole number");
    } else if (value.getAsInt() < low || value.getAsInt() > high) {
      report(key, "is " + text.get() + "; allowed is " + low + " to " + high);
      return OptionalInt.empty();
    }
    return value;
  }

  public String text(String key) {
    Optional<String> value = optionalText(key);
    if (value.isEmpty() && !values.containsKey(key)) {
      missing(key, "a text");
    }
    return value.orElse("");
  }

  public Optional<String> optionalText(String key) {
    Optional<String> value = scalar(key);
    if (value.isPresent() && value.get().isBlank()) {
      report(key, "is empty; leave the line out or give a text");
      return Optional.empty();
    }
    return value;
  }

  /** A yes or no; absent means the given default. */
  public boolean flag(String key, boolean whenAbsent) {
    Optional<String> text = scalar(key);
    if (text.isEmpty()) {
      return whenAbsent;
    }
    Optional<Boolean> value = Allowed.yesOrNo(text.get());
    if (value.isEmpty()) {
      report(key, "is '" + text.get() + "'; write yes or no");
    }
    return value.orElse(whenAbsent);
  }

  /** One of an enum's names, written in lower case with dashes. */
  public <E extends Enum<E>> E choice(String key, Class<E> type) {
    Optional<E> value = optionalChoice(key, type);
    if (value.isEmpty() && !values.containsKey(key)) {
      missing(key, "one of " + Allowed.names(type));
    }
    return value.orElse(type.getEnumConstants()[0]);
  }

  public <E extends Enum<E>> Optional<E> optionalChoice(String key, Class<E> type) {
    Optional<String> text = scalar(key);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    for (E constant : type.getEnumConstants()) {
      if (Allowed.dashed(constant).equals(text.get().strip())) {
        return Optional.of(constant);
      }
    }
    report(key, "is '" + text.get() + "'; allowed is one of " + Allowed.names(type));
    return Optional.empty();
  }

  /** A required section of its own; an empty one stands in when absent. */
  public ConfigSection section(String key) {
    Optional<ConfigSection> section = optionalSection(key);
    if (section.isEmpty() && !values.containsKey(key)) {
      missing(key, "a section");
    }
    return section.orElseGet(() -> empty(key));
  }

  public Optional<ConfigSection> optionalSection(String key) {
    asked.add(key);
    Node node = values.get(key);
    if (node == null) {
      return Optional.empty();
    }
    if (node instanceof MappingNode mapping) {
      return Optional.of(child(place + key + ".", mapping));
    }
    report(key, "must hold indented 'key: value' lines");
    return Optional.empty();
  }

  /** A list of sections; empty when absent. */
  public List<ConfigSection> sections(String key) {
    List<ConfigSection> result = new ArrayList<>();
    int index = 0;
    for (Node node : items(key)) {
      index++;
      if (node instanceof MappingNode mapping) {
        result.add(child(place + key + "[" + index + "].", mapping));
      } else {
        report(key, "must be a list of 'key: value' groups; entry " + index + " is not");
      }
    }
    return result;
  }

  /** A list of texts; empty when absent. */
  public List<String> texts(String key) {
    List<String> result = new ArrayList<>();
    for (Node node : items(key)) {
      if (node instanceof ScalarNode scalar) {
        result.add(scalar.getValue());
      } else {
        report(key, "must be a list of plain values");
      }
    }
    return result;
  }

  private OptionalDouble parsed(String key, String text, Unit unit, double low, double high) {
    try {
      double value = Quantity.parse(text, unit);
      if (value >= low && value <= high) {
        return OptionalDouble.of(value);
      }
      report(key, "is " + text.strip() + "; allowed is " + Allowed.range(low, high, unit));
    } catch (QuantityException e) {
      report(key, "can't be used: " + e.getMessage());
    }
    return OptionalDouble.empty();
  }

  void reportUnknownKeys() {
    for (String key : values.keySet()) {
      if (!asked.contains(key)) {
        report(key, "is not a key known here" + KnownKeys.hint(key, asked));
      }
    }
    children.forEach(ConfigSection::reportUnknownKeys);
  }

  private List<Node> items(String key) {
    asked.add(key);
    Node node = values.get(key);
    if (node == null) {
      return List.of();
    }
    if (node instanceof SequenceNode sequence) {
      return sequence.getValue();
    }
    report(key, "must be a list");
    return List.of();
  }

  private Optional<String> scalar(String key) {
    asked.add(key);
    Node node = values.get(key);
    if (node == null) {
      return Optional.empty();
    }
    if (node instanceof ScalarNode scalar && !node.getTag().equals(Tag.NULL)) {
      if (scalar.getValue().indexOf('\0') < 0) {
        return Optional.of(scalar.getValue());
      }
      report(key, "holds a NUL character");
      return Optional.empty();
    }
    report(key, node instanceof ScalarNode ? "has no value" : "must be one plain value");
    return Optional.empty();
  }

  private ConfigSection child(String childPlace, MappingNode node) {
    ConfigSection section = new ConfigSection(file, childPlace, node);
    children.add(section);
    return section;
  }

  private ConfigSection empty(String key) {
    MappingNode node = new MappingNode(Tag.MAP, List.of(), DumperOptions.FlowStyle.BLOCK);
    return new ConfigSection(file, place + key + ".", node, true);
  }

  private void missing(String key, String wanted) {
    if (!standIn) {
      file.report(line, "'" + place + key + "' is missing; give " + wanted);
    }
  }
}
