package railglow.journal;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Objects;
import java.util.TreeSet;

/** Findings as a JSON file; every bit of every number returns. Stateless and thread-safe. */
public final class FindingsFile {
  private static final int MAX_DIFFERENCES = 20;

  private FindingsFile() {}

  /** Writes the file, replacing an older one whole. */
  public static void write(Path file, Findings findings) throws IOException {
    ObjectNode object =
        JournalJson.MAPPER
            .createObjectNode()
            .put("kind", "findings")
            .put("formatVersion", RunHeader.CURRENT_FORMAT);
    object.setAll((ObjectNode) JournalJson.MAPPER.valueToTree(findings));
    WholeFile.write(
        file, JournalJson.MAPPER.writerWithDefaultPrettyPrinter().writeValueAsBytes(object));
  }

  /**
   * Reads the file.
   *
   * @throws JournalException when there is none, or it can't be read, or its format is newer
   */
  public static Findings read(Path file) throws IOException {
    try {
      ObjectNode object = JournalLine.json(Files.readAllBytes(file));
      JournalReader.refuseNewer(object);
      if (!object.path("kind").asText().equals("findings")) {
        throw new JournalException("this JSON file does not hold findings");
      }
      object.remove(List.of("kind", "formatVersion"));
      if (!object.has("power")) {
        // written before there was a map of power
        object.set("power", JournalJson.MAPPER.valueToTree(HeatPower.NONE));
      }
      if (!object.has("paths")) {
        // likewise for heat of the current's way
        object.putArray("paths");
      }
      if (!object.has("trueRises")) {
        // likewise for the rises behind the surfaces
        object.putArray("trueRises");
      }
      object.path("sources").forEach(FindingsFile::addSwing);
      return JournalJson.MAPPER.treeToValue(object, Findings.class);
    } catch (NoSuchFileException e) {
      throw new JournalException("there are no findings at " + file, e);
    } catch (JsonProcessingException e) {
      throw new JournalException(file + ": " + JournalLine.firstLine(e.getMessage()), e);
    } catch (JournalException e) {
      throw new JournalException(file + ": " + e.getMessage(), e);
    }
  }

  /**
   * Files written before swings were kept hold both channels, of which a swing is the size; its
   * interval was narrower than that of the settled rise in the same proportion.
   */
  private static void addSwing(JsonNode source) {
    if (!source.has("swingKelvin") && source instanceof ObjectNode object) {
      double swing =
          Math.hypot(
              source.path("inPhaseKelvin").asDouble(), source.path("quadratureKelvin").asDouble());
      double scale = swing / source.path("riseKelvin").asDouble();
      JsonNode rise = source.path("riseInterval95");
      object.put("swingKelvin", swing);
      object
          .putObject("swingInterval95")
          .put("low", Math.min(swing, scale * rise.path("low").asDouble()))
          .put("high", Math.max(swing, scale * rise.path("high").asDouble()));
      object.putArray("models");
    }
  }

  /**
   * What is not the same in two findings, bit for bit.
   *
   * @return the first differences, one sentence each; empty when there is none
   */
  public static List<String> difference(Findings first, Findings second) {
    List<String> differences = new ArrayList<>();
    compare(
        "",
        JournalJson.MAPPER.valueToTree(first),
        JournalJson.MAPPER.valueToTree(second),
        differences);
    return differences;
  }

  private static void compare(String where, JsonNode a, JsonNode b, List<String> into) {
    if (into.size() >= MAX_DIFFERENCES) {
      return;
    }
    if (a.isObject() && b.isObject()) {
      TreeSet<String> names = new TreeSet<>();
      for (JsonNode node : List.of(a, b)) {
        for (Iterator<String> i = node.fieldNames(); i.hasNext(); ) {
          names.add(i.next());
        }
      }
      for (String name : names) {
        compare(where.isEmpty() ? name : where + "." + name, a.path(name), b.path(name), into);
      }
    } else if (a.isArray() && b.isArray()) {
      for (int i = 0; i < Math.max(a.size(), b.size()); i++) {
        compare(where + "[" + i + "]", a.path(i), b.path(i), into);
      }
    } else if (!Objects.equals(a, b)) {
      into.add(where + " is " + shown(a) + " in the first and " + shown(b) + " in the second");
    }
  }

  private static String shown(JsonNode node) {
    return node.isMissingNode() ? "not there" : node.toString();
  }
}
