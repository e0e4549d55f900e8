package railglow.casebook;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import railglow.board.Suspect;
import railglow.journal.Entry;
import railglow.journal.Findings;
import railglow.journal.FindingsFile;
import railglow.journal.JournalText;
import railglow.journal.RunFolder;
import railglow.journal.RunHeader;
import railglow.journal.SampleRun;
import railglow.observed.OutputState;
import railglow.safety.StopCause;

/** Any number of invented runs, the same for the same number; kept as folders. */
final class GeneratedRuns {
  private static final String[] RAILS = {"24V_IN", "12V", "5V0", "3V3", "1V8", "1V1_CORE"};
  private static final Instant FIRST = Instant.parse("2024-01-01T08:00:00Z");

  private GeneratedRuns() {}

  static void write(Path root, int count) throws IOException {
    Random random = new Random(3);
    for (int i = 0; i < count; i++) {
      write(root, i, random);
    }
  }

  private static void write(Path root, int i, Random random) throws IOException {
    String rail = RAILS[random.nextInt(RAILS.length)];
    boolean found = random.nextInt(3) > 0;
    String part = "C" + (30 + random.nextInt(12));
    RunFolder folder = new RunFolder(root.resolve(String.format("run-%05d", i)));
    RunHeader s = SampleRun.header(folder.name(), List.of());
    RunHeader header =
        new RunHeader(
            s.formatVersion(),
            s.programVersion(),
            FIRST.plusSeconds(3600L * i),
            s.startNanos(),
            folder.name(),
            i % 10 == 0 ? "KX-4 pump relay" : s.board(),
            rail,
            s.sequence(),
            s.envelope(),
            s.camera(),
            s.supplyIdentity(),
            s.leadOhms(),
            s.protections(),
            s.detection(),
            s.cycles(),
            s.usedFiles(),
            s.commandLine());
    // what JournalWriter would write, without forcing each run of thousands onto the disk
    Files.createDirectories(folder.root());
    JournalText.write(
        folder.journal(),
        header,
        i % 50 == 7
            ? List.of()
            : List.of(
                new Entry.Closed(1, StopCause.SURE_ENOUGH, OutputState.PROVEN_OFF, 0, 500, 0, 0)));
    Findings f = SampleRun.findings();
    List<Suspect> suspects = new ArrayList<>();
    if (found) {
      suspects.add(new Suspect(0, part, 1, 0, 0, true, "The heat lies on " + part + "."));
      suspects.add(new Suspect(0, "R7", 2, 1, 3, true, "R7 is near."));
    }
    FindingsFile.write(
        folder.findings(),
        new Findings(
            found ? Findings.Verdict.HEAT_FOUND : Findings.Verdict.NOTHING_FOUND,
            found ? "Heat at " + part + "." : "Nothing found.",
            "",
            List.of(),
            suspects,
            List.of(),
            f.cyclesUsed(),
            f.cyclesRejected(),
            f.framesByMark(),
            f.unit(),
            f.upperLimit(),
            f.upperLimitMilliwatts(),
            f.onVolts(),
            f.onAmperes(),
            f.onWatts(),
            f.railOhms(),
            f.power(),
            f.trueRises()));
  }
}
