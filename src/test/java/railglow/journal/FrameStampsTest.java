package railglow.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railglow.observed.Frame;
import railglow.thermal.CountSamples;

class FrameStampsTest {
  private static final int FRAMES = 150;
  @TempDir Path folder;
  private Path file;

  private static int count(int frame, int pixel) {
    return 20_000 + new Random(31L * frame + pixel).nextInt(40);
  }

  @BeforeEach
  void aRecord() throws IOException {
    file = folder.resolve("frames.rgf");
    try (FrameStoreWriter writer = FrameStoreWriter.create(file, SampleType.UINT16, 8, 6)) {
      CountSamples samples = new CountSamples(8, 6);
      Frame frame = new Frame(samples);
      for (int i = 0; i < FRAMES; i++) {
        frame.begin(1000 + i, 40_000_000L * i);
        for (int p = 0; p < 48; p++) {
          samples.counts()[p] = (short) count(i, p);
        }
        writer.append(frame);
      }
    }
  }

  @Test
  void anyFrameIsReadOutOfOrderWithEveryBit() throws IOException {
    try (FrameStoreReader reader = FrameStoreReader.open(file)) {
      List<FrameStoreReader.Stamp> stamps = reader.stamps();
      assertEquals(FRAMES, stamps.size());
      Frame frame = new Frame(reader.newSamples());
      for (int index : new int[] {149, 0, 63, 64, 65, 127, 3}) {
        assertTrue(reader.read(stamps, index, frame));
        assertEquals(1000 + index, frame.number());
        assertEquals(stamps.get(index).arrivalNanos(), frame.arrivalNanos());
        for (int p = 0; p < 48; p++) {
          assertEquals(count(index, p), frame.samples().valueAt(p), "frame " + index);
        }
      }
      assertTrue(reader.next(frame), "and then the next in order");
      assertEquals(1004, frame.number());
    }
  }

  @Test
  void aDamagedFrameAndThoseThatLeanOnItAreRefusedAndTheOthersRead() throws IOException {
    List<FrameStoreReader.Stamp> stamps;
    try (FrameStoreReader reader = FrameStoreReader.open(file)) {
      stamps = reader.stamps();
    }
    byte[] bytes = Files.readAllBytes(file);
    bytes[(int) stamps.get(70).place() + ChunkHeader.BYTES + 3] ^= 1;
    Files.write(file, bytes);
    try (FrameStoreReader reader = FrameStoreReader.open(file)) {
      Frame frame = new Frame(reader.newSamples());
      List<FrameStoreReader.Stamp> left = reader.stamps();
      assertEquals(FRAMES, left.size());
      assertTrue(reader.read(left, 69, frame));
      assertFalse(reader.read(left, 70, frame));
      assertFalse(reader.read(left, 71, frame));
      assertTrue(reader.read(left, 128, frame));
      assertEquals(1128, frame.number());
    }
  }
}
