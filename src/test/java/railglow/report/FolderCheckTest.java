package railglow.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railglow.journal.Checksums;
import railglow.journal.FrameStoreWriter;
import railglow.journal.JournalReader;
import railglow.journal.RunFolder;
import railglow.journal.SampleType;
import railglow.observed.Frame;

/** Folders that were edited by hand, or merged from two runs. */
class FolderCheckTest {
  @TempDir Path temporary;
  private Scene scene;

  @BeforeEach
  void aRun() throws IOException {
    scene = new Scene(temporary.resolve("run"), 64, 48).source(30, 20, 1.6, 0.42).parts();
    scene.write(true);
  }

  private List<String> problems() throws IOException {
    return RunReport.write(scene.folder(), scene.placement());
  }

  private void frames(int width, int height, double secondsAfterStart) throws IOException {
    long start = JournalReader.read(scene.folder()).header().startNanos();
    Files.deleteIfExists(scene.folder().frames());
    try (FrameStoreWriter writer =
        FrameStoreWriter.create(scene.folder().frames(), SampleType.UINT16, width, height)) {
      Frame frame = new Frame(SampleType.UINT16.newSamples(width, height));
      frame.begin(0, start + Math.round(secondsAfterStart * 1e9));
      writer.append(frame);
    }
  }

  @Test
  void aSoundFolderHasNoProblem() throws IOException {
    frames(64, 48, 0.5);
    Checksums.write(scene.folder());
    assertEquals(List.of(), problems());
  }

  @Test
  void aFileEditedByHandIsNamedAndTheRestIsShown() throws IOException {
    Checksums.write(scene.folder());
    RunFolder folder = scene.folder();
    Files.writeString(folder.findings(), Files.readString(folder.findings()).replace("C37", "C38"));
    assertEquals(
        List.of("findings.json was changed after the run; what it says may be wrong."), problems());
    assertTrue(Files.readString(folder.report()).contains("findings.json was changed"));
    assertTrue(Files.exists(folder.picture("difference")));
  }

  @Test
  void framesOfAnotherCameraAreNotOfThisRun() throws IOException {
    frames(60, 40, 0.5);
    assertEquals(
        List.of("The frames are 60 x 40, the run's camera gave 64 x 48: they are of another run."),
        problems());
  }

  @Test
  void framesOfAnotherTimeAreNotOfThisRun() throws IOException {
    frames(64, 48, 5000);
    List<String> problems = problems();
    assertEquals(1, problems.size(), problems.toString());
    assertTrue(problems.get(0).startsWith("The first frame arrived 5000 s after"), problems.get(0));
  }

  @Test
  void framesThatAreNoFramesAreSaidAndTheRestIsShown() throws IOException {
    Files.writeString(scene.folder().frames(), "not frames");
    List<String> problems = problems();
    assertEquals(1, problems.size(), problems.toString());
    assertTrue(problems.get(0).startsWith("Frames.rgf: no whole header"), problems.get(0));
    assertTrue(Files.exists(scene.folder().picture("difference")));
  }
}
