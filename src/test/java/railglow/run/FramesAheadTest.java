package railglow.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import railglow.journal.FrameStoreReader;
import railglow.journal.FrameStoreWriter;
import railglow.journal.SampleType;
import railglow.observed.Frame;
import railglow.thermal.CountSamples;

@Timeout(60)
class FramesAheadTest {
  private static final int COUNT = 50;
  @TempDir Path folder;

  @Test
  void everyFrameComesInItsOrderWithItsPixels() throws Exception {
    try (FrameStoreReader reader = FrameStoreReader.open(stored());
        FramesAhead ahead = new FramesAhead(reader)) {
      for (int i = 0; i < COUNT; i++) {
        Frame frame = ahead.next();
        assertEquals(i, frame.number());
        assertEquals(1000 + i, frame.samples().valueAt(5));
        ahead.giveBack(frame);
      }
      assertNull(ahead.next());
      assertNull(ahead.next(), "and again");
    }
  }

  @Test
  void aFrameThatIsHeldIsNotWrittenOver() throws Exception {
    try (FrameStoreReader reader = FrameStoreReader.open(stored());
        FramesAhead ahead = new FramesAhead(reader)) {
      ArrayDeque<Frame> held = new ArrayDeque<>();
      for (int i = 0; i < FramesAhead.DEPTH; i++) {
        held.add(ahead.next());
      }
      for (int i = 0; i < FramesAhead.DEPTH; i++) {
        assertEquals(1000 + i, held.peek().samples().valueAt(0));
        ahead.giveBack(held.poll());
      }
      assertEquals(FramesAhead.DEPTH, ahead.next().number());
    }
  }

  @Test
  void aFailureOfReadingReachesWhoWaitsForTheFrame() throws Exception {
    FrameStoreReader reader = FrameStoreReader.open(stored());
    reader.close();
    try (FramesAhead ahead = new FramesAhead(reader)) {
      assertThrows(IOException.class, ahead::next);
    }
  }

  @Test
  void itEndsInTheMiddleWhenNobodyWantsTheRest() throws Exception {
    try (FrameStoreReader reader = FrameStoreReader.open(stored())) {
      FramesAhead ahead = new FramesAhead(reader);
      ahead.next();
      ahead.close(); // would not come back
    }
  }

  private Path stored() throws IOException {
    Path file = folder.resolve("frames.bin");
    Files.deleteIfExists(file);
    CountSamples samples = new CountSamples(16, 12);
    Frame frame = new Frame(samples);
    try (FrameStoreWriter writer = FrameStoreWriter.create(file, SampleType.UINT16, 16, 12)) {
      for (int i = 0; i < COUNT; i++) {
        frame.begin(i, i * 40_000_000L);
        java.util.Arrays.fill(samples.counts(), (short) (1000 + i));
        writer.append(frame);
      }
    }
    return file;
  }
}
