package railglow.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page that works a case prints what the commands print. */
class DocumentedCaseTest {
  private static final Path PAGE = Path.of("docs/working-a-case.md");
  private static final String CASE = "cases/17";
  private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");

  @TempDir Path folder;

  private record Shown(String command, String output) {}

  private static List<Shown> shown() throws Exception {
    List<Shown> all = new ArrayList<>();
    Matcher block =
        Pattern.compile("```\n\\$ (railglow [^\n]*)\n(.*?)```", Pattern.DOTALL)
            .matcher(Files.readString(PAGE));
    while (block.find()) {
      all.add(new Shown(block.group(1), block.group(2)));
    }
    return all;
  }

  private String run(String command, int exitCode) {
    List<String> words = new ArrayList<>();
    Matcher word = WORD.matcher(command.substring("railglow ".length()));
    while (word.find()) {
      words.add((word.group(1) != null ? word.group(1) : word.group(2)).replace(CASE, kept()));
    }
    Typed typed = Typed.apart();
    int exit = typed.run(words.toArray(String[]::new));
    assertEquals(exitCode, exit, command + ": " + typed.complaints());
    return typed.answers().replace(kept(), CASE);
  }

  private String kept() {
    return folder.resolve("17").toString();
  }

  @Test
  void everyCommandPrintsWhatThePageShows() throws Exception {
    List<Shown> shown = shown();
    assertEquals(4, shown.size());
    for (Shown each : shown) {
      assertEquals(each.output(), run(each.command(), 0), each.command());
    }
  }

  @Test
  void thePlanOfThePageIsNotRefused() throws Exception {
    String plan =
        Files.readString(PAGE)
            .lines()
            .filter(line -> line.startsWith("railglow plan"))
            .findFirst()
            .orElseThrow();
    assertTrue(run(plan, 0).contains("3V3"));
  }
}
