package railglow.journal;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FrameStoreHeaderTest {
  @TempDir Path temporary;

  private void refusedWith(String from, String to, String word) throws IOException {
    Path file = temporary.resolve("frames.rgf");
    try (FrameStoreWriter writer = FrameStoreWriter.create(file, SampleType.UINT16, 4, 4)) {
      assertTrue(writer.bytes() > 0);
    }
    String text = Files.readString(file, java.nio.charset.StandardCharsets.ISO_8859_1);
    assertTrue(text.contains(from));
    Files.writeString(file, text.replace(from, to), java.nio.charset.StandardCharsets.ISO_8859_1);
    JournalException e = assertThrows(JournalException.class, () -> FrameStoreReader.open(file));
    assertTrue(e.getMessage().contains(word), e.getMessage());
    Files.delete(file);
  }

  @Test
  void headersThatCanNotBeTrustedAreRefusedWithAReason() throws IOException {
    refusedWith("\"formatVersion\":1", "\"formatVersion\":3", "format 3");
    refusedWith("\"width\":4", "\"width\":5", "check sum");
    refusedWith("\"kind\":\"frames\"", "\"kind\":\"frame", "not JSON");
  }

  @Test
  void framesAreNeverWrittenOver() throws IOException {
    Path file = temporary.resolve("frames.rgf");
    FrameStoreWriter.create(file, SampleType.UINT16, 4, 4).close();
    assertThrows(
        JournalException.class, () -> FrameStoreWriter.create(file, SampleType.UINT16, 4, 4));
  }

  @Test
  void aMissingFileIsNamed() {
    JournalException e =
        assertThrows(
            JournalException.class, () -> FrameStoreReader.open(temporary.resolve("none.rgf")));
    assertTrue(e.getMessage().contains("none.rgf"), e.getMessage());
  }
}
