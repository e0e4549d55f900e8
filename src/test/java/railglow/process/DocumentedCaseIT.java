package railglow.process;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The page that works a case, from readings to the report for the owner: every command of it that
 * needs no hardware, in its order, by the packaged program.
 */
class DocumentedCaseIT {
  private static final Pattern COMMAND = Pattern.compile("(?m)^(?:\\$ )?railglow (.*)$");
  private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");
  @TempDir Path folder;

  private List<List<String>> commands() throws Exception {
    List<List<String>> all = new ArrayList<>();
    Matcher command = COMMAND.matcher(Files.readString(Path.of("docs/working-a-case.md")));
    while (command.find()) {
      List<String> words = new ArrayList<>();
      Matcher word = WORD.matcher(command.group(1));
      while (word.find()) {
        String text = word.group(1) != null ? word.group(1) : word.group(2);
        words.add(text.replace("cases/17", folder.resolve("case").toString()));
      }
      boolean atABench = words.contains("--bench") && needsItsBench(words);
      if (!atABench) {
        all.add(words);
      }
    }
    return all;
  }

  /** What opens the bench it names; the page has the same for the simulated one. */
  private static boolean needsItsBench(List<String> words) {
    return words.contains("--measure") || words.get(0).equals("ladder");
  }

  private String run(List<String> words) throws Exception {
    List<String> typed = new ArrayList<>();
    for (String word : words) {
      typed.add(word.equals("RUN") ? huntFolder() : word);
    }
    if (words.contains("--simulated")) {
      typed.addAll(List.of("--runs", folder.resolve("runs").toString()));
    }
    RailglowProcess process = RailglowProcess.start(typed.toArray(String[]::new));
    assertEquals(0, process.awaitExit(240), words + ":\n" + process.output());
    return process.output().replaceAll("\\s+", " ");
  }

  @Test
  void theCaseIsWorkedFromReadingsToTheOwnersReport() throws Exception {
    StringBuilder all = new StringBuilder();
    for (List<String> words : commands()) {
      all.append(run(words)).append('\n');
    }
    String said = all.toString();
    Matcher measured = Pattern.compile("Measured 3V3 reads (\\S+) ohm").matcher(said);
    assertTrue(measured.find(), said);
    assertEquals(6.8, Double.parseDouble(measured.group(1)), 0.05, "ohm, measured in a session");
    int at = 0;
    for (String step :
        List.of(
            "Hunt first 3V3",
            "Measured 3V3",
            "Path ohmic",
            "Worst case",
            "Heat at C37",
            "Lift C37; 3V3 should then read 45 ohm or more",
            "Read 1V8 and 1V1_CORE too: their converters are fed from 3V3",
            "Heat at C37",
            "Heat along ",
            "inject at another point of 3V3, beyond an end of it, and compare",
            "Heat at C37",
            "mirrors 21 degC +- 2 K, entered",
            "3V3 52.2 ohm normal",
            "C37 is the fault and is to be replaced")) {
      int next = said.indexOf(step, at);
      assertTrue(next >= 0, step + " does not come in its turn in:\n" + said);
      at = next;
    }
    run(List.of("export", huntFolder(), "--case", folder.resolve("case").toString()));
    try (Stream<Path> files = Files.list(Path.of(huntFolder()))) {
      assertTrue(
          files.anyMatch(file -> file.getFileName().toString().endsWith(".pdf")),
          "the report for the owner");
    }
    String report = Files.readString(Path.of(huntFolder()).resolve("report.html"));
    assertTrue(report.contains("Lift C37; 3V3 should then read 45 ohm or more."), report);
    assertTrue(report.contains("Read 1V8 and 1V1_CORE too: their converters are fed"), report);
  }

  private String huntFolder() throws Exception {
    try (Stream<Path> runs = Files.list(folder.resolve("runs"))) {
      return runs.filter(run -> Files.exists(run.resolve("findings.json")))
          .sorted()
          .findFirst()
          .orElseThrow()
          .toString();
    }
  }
}
