package railglow.camera;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import railglow.thermal.CountSamples;

class RawFileSourceTest extends FrameSourceContract {
  @Override
  FrameSource thatGives(List<CountSamples> images) throws IOException {
    Path file = folder.resolve("frames.raw");
    Files.write(file, stream(images));
    return RecordedSource.atOnce(
        FrameSources.openFile(file.toString(), cameraWithCounter()), index -> index);
  }

  @Test
  void aFileThatDoesNotHoldWholeFramesIsRefusedWithBothSizes() throws IOException {
    Path file = folder.resolve("frames.raw");
    Files.write(file, new byte[47]);
    IOException e =
        assertThrows(
            IOException.class, () -> FrameSources.openFile(file.toString(), cameraWithCounter()));
    assertTrue(e.getMessage().contains("has 47 bytes"), e.getMessage());
    assertTrue(e.getMessage().contains("frames of 46"), e.getMessage());
  }

  @Test
  void anAbsentFileIsNamed() {
    IOException e =
        assertThrows(
            IOException.class,
            () -> FrameSources.open("file:no/such.raw", cameraWithCounter(), () -> 0));
    assertEquals("no/such.raw does not exist", e.getMessage());
  }
}
