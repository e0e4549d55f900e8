package railglow.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railglow.thermal.Plane;

class ChecksumsTest {
  @TempDir Path temporary;
  private RunFolder folder;

  @BeforeEach
  void aRun() throws IOException {
    folder = new RunFolder(temporary.resolve("run"));
    Files.createDirectories(folder.used().resolve("board"));
    Files.writeString(folder.journal(), "journal");
    Files.writeString(folder.used().resolve("board").resolve("board.yaml"), "board");
    NpyFile.write(folder.plane("in-phase"), new Plane(2, 2));
    Files.writeString(folder.report(), "made from the rest");
    Checksums.write(folder);
  }

  @Test
  void aSoundFolderHasNoDamage() throws IOException {
    assertEquals(List.of(), Checksums.check(folder));
    Files.writeString(folder.report(), "made anew");
    assertEquals(List.of(), Checksums.check(folder), "what can be made again may change");
  }

  @Test
  void oneFlippedBitInAnyFileIsFoundAndTheFileNamed() throws IOException {
    for (String name : List.of("journal.jsonl", "used/board/board.yaml", "planes/in-phase.npy")) {
      Path file = folder.root().resolve(name);
      byte[] bytes = Files.readAllBytes(file);
      bytes[bytes.length / 2] ^= 1;
      Files.write(file, bytes);
      List<Damage> damages = Checksums.check(folder);
      assertEquals(1, damages.size());
      assertEquals(name, damages.get(0).file());
      bytes[bytes.length / 2] ^= 1;
      Files.write(file, bytes);
    }
  }

  @Test
  void writingTheSumsAnewNeverMakesAChangedRecordLookSound() throws IOException {
    Files.writeString(folder.journal(), "journaL");
    NpyFile.write(folder.plane("in-phase"), new Plane(3, 2));
    Checksums.write(folder);
    List<Damage> damages = Checksums.check(folder);
    assertEquals(1, damages.size(), damages.toString());
    assertEquals("journal.jsonl", damages.get(0).file());
  }

  @Test
  void aFileThatIsGoneIsNamed() throws IOException {
    Files.delete(folder.plane("in-phase"));
    assertEquals("is not there", Checksums.check(folder).get(0).what());
  }

  @Test
  void aFolderWithoutSumsSaysSo() throws IOException {
    Files.delete(folder.root().resolve("checksums.sha256"));
    JournalException e = assertThrows(JournalException.class, () -> Checksums.check(folder));
    assertTrue(e.getMessage().contains("no stored sums"), e.getMessage());
  }

  @Test
  void aDamagedListIsNamedItself() throws IOException {
    Files.writeString(folder.root().resolve("checksums.sha256"), "zz  journal.jsonl\n");
    assertEquals("checksums.sha256", Checksums.check(folder).get(0).file());
  }

  /** FIPS 180-4, example of one block: "abc". */
  @Test
  void theSumIsSha256() throws IOException {
    Files.writeString(folder.journal(), "abc");
    assertEquals(
        "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
        Checksums.of(folder, Checksums.Scope.MEASURED).get("journal.jsonl"));
  }

  @Test
  void sha256sumAgrees() throws Exception {
    Process process;
    try {
      process =
          new ProcessBuilder("sha256sum", "--check", "--strict", "checksums.sha256")
              .directory(folder.root().toFile())
              .redirectErrorStream(true)
              .start();
    } catch (IOException e) {
      assumeTrue(false, "sha256sum is not here");
      return;
    }
    String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(0, process.waitFor(), text);
  }
}
