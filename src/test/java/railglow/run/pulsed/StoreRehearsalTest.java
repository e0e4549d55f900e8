package railglow.run.pulsed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railglow.journal.RunFolder;
import railglow.observed.Frame;
import railglow.thermal.CountSamples;

class StoreRehearsalTest {
  private static final long MILLI = 1_000_000;
  private final Frame frame = new Frame(new CountSamples(4, 3));
  private long nowNanos;
  private long eachTakesNanos;
  @TempDir Path folder;

  private StoreRehearsal begun() throws IOException {
    return StoreRehearsal.begin(
        new RunFolder(folder), frame.samples(), 25, () -> nowNanos += eachTakesNanos);
  }

  @Test
  void aRunMayBeginOnceEightFramesInARowAreStoredWellWithinTheirTime() throws IOException {
    try (StoreRehearsal rehearsal = begun()) {
      eachTakesNanos = 20 * MILLI;
      for (int i = 0; i < 7; i++) {
        rehearsal.take(frame);
      }
      assertFalse(rehearsal.keepsPace(), "seven are not enough");
      rehearsal.take(frame);
      assertTrue(rehearsal.keepsPace());
      eachTakesNanos = 500 * MILLI;
      rehearsal.take(frame);
      assertTrue(rehearsal.keepsPace(), "once shown it is over");
    }
  }

  @Test
  void fourFramesSufficeWhereThereIsTimeToStoreThemWithTheOnesBefore() throws IOException {
    try (StoreRehearsal rehearsal = begun()) {
      eachTakesNanos = 10 * MILLI;
      for (int i = 0; i < 3; i++) {
        rehearsal.take(frame);
      }
      assertFalse(rehearsal.keepsPace(), "three frames, stored seven times");
      rehearsal.take(frame);
      assertTrue(rehearsal.keepsPace());
    }
  }

  @Test
  void threeFramesSufficeWhereStoringIsQuick() throws IOException {
    try (StoreRehearsal rehearsal = begun()) {
      eachTakesNanos = 3 * MILLI;
      rehearsal.take(frame);
      rehearsal.take(frame);
      assertFalse(rehearsal.keepsPace(), "two frames, stored six times");
      rehearsal.take(frame);
      assertTrue(rehearsal.keepsPace());
    }
  }

  @Test
  void oneThatTookTooLongBeginsTheCountAnewAndIsNamed() throws IOException {
    try (StoreRehearsal rehearsal = begun()) {
      for (int i = 0; i < 40; i++) {
        eachTakesNanos = (i % 8 == 7 ? 33 : 11) * MILLI;
        rehearsal.take(frame);
        assertFalse(rehearsal.keepsPace());
      }
      String said = rehearsal.complaint();
      assertTrue(said.contains("took 33.0 ms") && said.contains("every 40.0 ms"), said);
    }
  }

  @Test
  void nothingOfItStaysInTheFolder() throws IOException {
    try (StoreRehearsal rehearsal = begun()) {
      rehearsal.take(frame);
    }
    try (Stream<Path> left = Files.list(folder)) {
      assertEquals(0, left.count());
    }
  }
}
