package railglow.config;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.error.MarkedYAMLException;
import org.yaml.snakeyaml.error.YAMLException;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;

/**
 * A user's YAML file on the way to a value type. It gathers every problem with its line, so that
 * the user can mend them all at once. Not thread-safe.
 */
public final class ConfigFile {
  private static final long MAX_BYTES = 4L << 20;
  private final Path path;
  private final List<ConfigProblem> problems = new ArrayList<>();
  private ConfigSection root;
  private MappingNode top;

  private ConfigFile(Path path) {
    this.path = path;
  }

  /**
   * Reads a file whose top level is a mapping.
   *
   * @throws ConfigException when it can't be read or is not such YAML
   */
  public static ConfigFile read(Path path) throws ConfigException {
    try {
      if (Files.isDirectory(path)) {
        throw problem(path, 0, "is a folder; a YAML file is wanted");
      }
      if (Files.size(path) > MAX_BYTES) {
        throw problem(path, 0, "is larger than 4 MiB; that can't be a settings file");
      }
      return parse(path, Files.readString(path, StandardCharsets.UTF_8));
    } catch (NoSuchFileException e) {
      throw problem(path, 0, "does not exist");
    } catch (CharacterCodingException e) {
      throw problem(path, 0, "is not UTF-8 text");
    } catch (IOException e) {
      throw problem(path, 0, "can't be read: " + e.getMessage());
    }
  }

  /** As {@link #read}, from text; the path only names it in messages. */
  public static ConfigFile parse(Path path, String text) throws ConfigException {
    LoaderOptions options = new LoaderOptions();
    options.setAllowDuplicateKeys(false);
    options.setMaxAliasesForCollections(0);
    options.setNestingDepthLimit(20);
    ConfigFile file = new ConfigFile(path);
    Node node = null;
    try {
      int documents = 0;
      for (Node each : new Yaml(options).composeAll(new java.io.StringReader(text))) {
        if (documents++ > 0) {
          throw problem(path, line(each), "holds a second document; one is wanted");
        }
        node = each;
      }
    } catch (MarkedYAMLException e) {
      int line = e.getProblemMark() == null ? 0 : e.getProblemMark().getLine() + 1;
      String context = e.getContext() == null ? "" : e.getContext() + ": ";
      throw problem(path, line, "is not YAML here: " + context + e.getProblem());
    } catch (YAMLException e) {
      throw problem(path, 0, "is not YAML: " + firstLine(e.getMessage()));
    }
    if (!(node instanceof MappingNode mapping)) {
      throw problem(path, node == null ? 0 : line(node), "has no 'key: value' lines");
    }
    file.top = mapping;
    file.root = new ConfigSection(file, "", mapping);
    return file;
  }

  /**
   * Refuses a file that is told to be of another kind, before its keys are taken for mistakes.
   *
   * @return this
   * @throws ConfigException with the first line that tells, and this problem alone
   */
  ConfigFile as(FileKind wanted) throws ConfigException {
    Map<String, Integer> lines = new LinkedHashMap<>();
    for (NodeTuple tuple : top.getValue()) {
      if (tuple.getKeyNode() instanceof ScalarNode key) {
        lines.putIfAbsent(key.getValue(), line(key));
      }
    }
    FileKind told = FileKind.told(lines.keySet(), wanted);
    if (told == wanted) {
      return this;
    }
    String telling = lines.keySet().stream().filter(told::owns).findFirst().orElseThrow();
    throw problem(path, lines.get(telling), told.insteadOf(wanted));
  }

  public Path path() {
    return path;
  }

  public ConfigSection root() {
    return root;
  }

  /** Remembers a problem the caller found itself. */
  public void report(int line, String message) {
    problems.add(new ConfigProblem(path, line, message));
  }

  /**
   * Ends the reading: keys nobody asked for are problems too.
   *
   * @throws ConfigException with every problem, in the order of their lines
   */
  public void finish() throws ConfigException {
    root.reportUnknownKeys();
    if (!problems.isEmpty()) {
      List<ConfigProblem> sorted = new ArrayList<>(problems);
      sorted.sort(Comparator.comparingInt(ConfigProblem::line));
      throw new ConfigException(sorted.stream().distinct().toList());
    }
  }

  static int line(Node node) {
    return node.getStartMark() == null ? 0 : node.getStartMark().getLine() + 1;
  }

  private static String firstLine(String message) {
    return message == null ? "no reason given" : message.lines().findFirst().orElse("");
  }

  private static ConfigException problem(Path path, int line, String message) {
    return new ConfigException(List.of(new ConfigProblem(path, line, message)));
  }
}
