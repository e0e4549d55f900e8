package railglow.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;

class CommandMakingTest {
  @Test
  void aCommandThatIsNamedFirstIsMadeAlone() {
    assertEquals(Set.of("hunt"), commands("hunt", "--simulated").keySet());
  }

  @Test
  void withoutAKnownFirstWordAllAreThere() {
    assertTrue(commands("--help").keySet().containsAll(Set.of("hunt", "off", "simulate")));
    assertTrue(commands("hnut").size() > 10, "so that a slip of the fingers can be put right");
  }

  @Test
  void theListOfCommandsReadsAsIfEachHadBeenMade() {
    CommandLine made = new CommandLine(new Railglow(), new CommandFactory(Terminal.ofProcess()));
    Commands.add(made, new String[] {"--help", "twice", "--help"});
    CommandLine listed = new CommandLine(new Railglow(), new CommandFactory(Terminal.ofProcess()));
    Commands.add(listed, new String[] {"--help"});
    assertTrue(made.getSubcommands().get("hunt").getCommandSpec().options().size() > 1);
    assertEquals(made.getUsageMessage(), listed.getUsageMessage());
  }

  @Test
  void everyCommandGoesByTheNameItGivesItself() {
    commands("none", "of", "them")
        .forEach((name, command) -> assertEquals(name, command.getCommandSpec().name(), name));
  }

  private static Map<String, CommandLine> commands(String... words) {
    CommandLine railglow =
        new CommandLine(new Railglow(), new CommandFactory(Terminal.ofProcess()));
    Commands.add(railglow, words);
    return railglow.getSubcommands();
  }
}
