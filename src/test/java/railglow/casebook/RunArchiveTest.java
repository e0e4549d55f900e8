package railglow.casebook;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railglow.journal.NpyFile;
import railglow.journal.RunFolder;
import railglow.thermal.Plane;

class RunArchiveTest {
  @TempDir Path temporary;

  private RunFolder run() throws IOException {
    GeneratedRuns.write(temporary, 1);
    RunFolder folder = new RunFolder(temporary.resolve("run-00000"));
    NpyFile.write(folder.plane("in-phase"), new Plane(2, 2, new float[] {1, 2, 3, Float.NaN}));
    Files.write(folder.frames(), new byte[1000]);
    return folder;
  }

  private String command(Path directory, String... words) throws Exception {
    try {
      Process process =
          new ProcessBuilder(words).directory(directory.toFile()).redirectErrorStream(true).start();
      String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      assertEquals(0, process.waitFor(), text);
      return text;
    } catch (IOException e) {
      assumeTrue(false, words[0] + " is not here");
      return "";
    }
  }

  @Test
  void othersUnpackItAndFindEverySumRight() throws Exception {
    RunFolder folder = run();
    Path zip = temporary.resolve("out").resolve("run.zip");
    assertEquals(5, RunArchive.write(folder, zip, true));
    Path there = Files.createDirectories(temporary.resolve("there"));
    command(there, "python3", "-m", "zipfile", "-e", zip.toString(), ".");
    Path unpacked = there.resolve("run-00000");
    command(unpacked, "sha256sum", "--check", "--strict", "SHA256SUMS");
    assertArrayEquals(
        Files.readAllBytes(folder.journal()),
        Files.readAllBytes(unpacked.resolve("journal.jsonl")));
  }

  @Test
  void theSameRunGivesTheSameBytes() throws Exception {
    RunFolder folder = run();
    RunArchive.write(folder, temporary.resolve("a.zip"), true);
    RunArchive.write(folder, temporary.resolve("b.zip"), true);
    assertArrayEquals(
        Files.readAllBytes(temporary.resolve("a.zip")),
        Files.readAllBytes(temporary.resolve("b.zip")));
  }

  @Test
  void framesAreLeftOutOnlyWhenAsked() throws Exception {
    RunFolder folder = run();
    assertEquals(4, RunArchive.write(folder, temporary.resolve("a.zip"), false));
    try (var zip = new java.util.zip.ZipFile(temporary.resolve("a.zip").toFile())) {
      assertTrue(zip.stream().noneMatch(entry -> entry.getName().endsWith("frames.rgf")));
      String sums =
          new String(
              zip.getInputStream(zip.getEntry("run-00000/SHA256SUMS")).readAllBytes(),
              StandardCharsets.UTF_8);
      assertEquals(List.of(), sums.lines().filter(line -> line.contains("frames")).toList());
    }
  }
}
