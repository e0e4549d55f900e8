package railglow.cli;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import picocli.AutoComplete;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;

/**
 * The commands by name. Making one reads its class by reflection, and making all is a good part of
 * the start; so a command that is named first is made alone, and for the list of all each is but a
 * name and a description.
 */
final class Commands {
  private static final Set<String> ONLY_LISTING = Set.of("-h", "--help", "-V", "--version");
  private static final Map<String, Class<?>> BY_NAME = new LinkedHashMap<>();

  static {
    BY_NAME.put("hunt", HuntCommand.class);
    BY_NAME.put("touch", TouchCommand.class);
    BY_NAME.put("plan", PlanCommand.class);
    BY_NAME.put("bench", BenchCommand.class);
    BY_NAME.put("rails", RailsCommand.class);
    BY_NAME.put("ladder", LadderCommand.class);
    BY_NAME.put("log", LogCommand.class);
    BY_NAME.put("compare", CompareCommand.class);
    BY_NAME.put("replay", ReplayCommand.class);
    BY_NAME.put("import", ImportCommand.class);
    BY_NAME.put("report", ReportCommand.class);
    BY_NAME.put("export", ExportCommand.class);
    BY_NAME.put("runs", RunsCommand.class);
    BY_NAME.put("keep", KeepCommand.class);
    BY_NAME.put("simulate", SimulateCommand.class);
    BY_NAME.put("off", OffCommand.class);
    BY_NAME.put("generate-completion", AutoComplete.GenerateCompletion.class);
  }

  private Commands() {}

  /** Adds the command that the first word names; all of them when it names none. */
  static void add(CommandLine railglow, String[] words) {
    String first = words.length == 0 ? "" : words[0];
    Class<?> named = BY_NAME.get(first);
    if (words.length == 0 || words.length == 1 && ONLY_LISTING.contains(first)) {
      BY_NAME.forEach((name, type) -> railglow.addSubcommand(name, listed(name, type)));
    } else if (named == null || named == AutoComplete.GenerateCompletion.class) {
      BY_NAME.forEach((name, type) -> railglow.addSubcommand(name, made(railglow, type)));
    } else {
      railglow.addSubcommand(first, made(railglow, named));
    }
  }

  private static CommandSpec listed(String name, Class<?> type) {
    CommandSpec spec = CommandSpec.create().name(name);
    spec.usageMessage().description(type.getAnnotation(Command.class).description());
    return spec;
  }

  private static CommandLine made(CommandLine railglow, Class<?> type) {
    return new CommandLine(type, railglow.getFactory());
  }
}
