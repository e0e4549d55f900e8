package railglow.config;

import java.util.List;
import java.util.stream.Collectors;

/** A user's file that can't be used; carries every problem found in it. */
public final class ConfigException extends Exception {
  private final transient List<ConfigProblem> problems;

  public ConfigException(List<ConfigProblem> problems) {
    super(problems.stream().map(ConfigProblem::toString).collect(Collectors.joining("\n")));
    this.problems = List.copyOf(problems);
  }

  public List<ConfigProblem> problems() {
    return problems;
  }
}
