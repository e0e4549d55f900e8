package railglow.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import railglow.observed.Frame;
import railglow.observed.FrameMark;
import railglow.safety.StopCause;
import railglow.thermal.CountSamples;
import railglow.thermal.FloatSamples;

/**
 * A run folder of format 1, written once and never again: every later program must read it as it
 * is. When the format changes, add a golden run of the new one beside it.
 */
class GoldenRunTest {
  private static RunFolder golden() throws URISyntaxException {
    return new RunFolder(
        Path.of(GoldenRunTest.class.getResource("/golden/format-1/journal.jsonl").toURI())
            .getParent());
  }

  @Test
  void theJournalIsReadWhole() throws Exception {
    Journal journal = JournalReader.read(golden());
    assertTrue(journal.finished());
    assertEquals(List.of(), journal.damages());
    assertEquals(10, journal.entries().size());
    assertEquals("2026-03-01-hx12-3V3-01", journal.header().runId());
    assertEquals("2026-03-01T09:30:00.123456789Z", journal.header().started().toString());
    assertEquals(2.64, journal.header().envelope().maxVolts().value());
    assertEquals(
        "80 % of the rail's nominal 3.3 V", journal.header().envelope().maxVolts().origin());
    assertEquals(0.02, journal.header().leadOhms());
    Entry.Reading reading = journal.of(Entry.Reading.class).findFirst().orElseThrow();
    assertEquals(1.1999999999999997, reading.reading().volts());
    assertEquals(0.17647058823529413, reading.reading().amperes());
    assertEquals(StopCause.SURE_ENOUGH, journal.closed().orElseThrow().cause());
    assertEquals(400, journal.closed().orElseThrow().framesArrived());
  }

  @Test
  void theFindingsAndThePlaneAreReadBitForBit() throws Exception {
    Findings findings = FindingsFile.read(golden().findings());
    assertEquals("Heat found at C37 on 3V3.", findings.headline());
    assertEquals(14.25, findings.sources().get(0).column());
    assertEquals(3e-12, findings.sources().get(0).familyWiseP());
    // written before swings were kept: the size of both channels, the interval in proportion
    double swing = Math.hypot(0.32, 0.11);
    assertEquals(swing, findings.sources().get(0).swingKelvin());
    assertEquals(swing * 0.47 / 0.41, findings.sources().get(0).swingInterval95().high(), 1e-12);
    assertEquals(List.of(), findings.sources().get(0).models());
    assertTrue(Double.isNaN(findings.upperLimitMilliwatts()));
    assertEquals("C37", findings.suspects().get(0).part());
    float[] values = NpyFile.read(golden().plane("in-phase")).values();
    for (int i = 0; i < values.length; i++) {
      assertEquals(i * 0.001f - 0.3f, values[i]);
    }
  }

  /** The pixels follow the rule by which the files were made: a small integer generator. */
  @ParameterizedTest
  @CsvSource({"frames.rgf, rice", "frames-raw.rgf, raw", "frames-float.rgf, xor-deflate"})
  void theFramesAreReadBitForBit(String name, String codec) throws Exception {
    Path file = golden().root().resolve(name);
    String start =
        new String(
            java.nio.file.Files.readAllBytes(file), java.nio.charset.StandardCharsets.ISO_8859_1);
    assertTrue(start.substring(0, 200).contains("\"codec\":\"" + codec + "\""));
    try (FrameStoreReader reader = FrameStoreReader.open(file)) {
      Frame frame = new Frame(reader.newSamples());
      int count = 0;
      while (reader.next(frame)) {
        assertEquals(count < 5 ? count : count + 2, frame.number());
        assertEquals(5_000_000_000L + 40_000_000L * count, frame.arrivalNanos());
        assertEquals(
            count == 5 ? Set.of(FrameMark.AFTER_GAP) : Set.of(), Set.copyOf(frame.marks()));
        checkPixels(frame, count);
        count++;
      }
      assertEquals(70, count);
      assertTrue(reader.finished());
      assertEquals(List.of(), reader.damages());
    }
  }

  static int count(int frame, int pixel) {
    long mixed =
        (frame * 1_000_003L + pixel) * 6_364_136_223_846_793_005L + 1_442_695_040_888_963_407L;
    return 29_800 + pixel % 32 + (int) (mixed >>> 60);
  }

  private static void checkPixels(Frame frame, int index) {
    for (int i = 0; i < 32 * 24; i++) {
      if (frame.samples() instanceof CountSamples counts) {
        assertEquals(count(index, i), counts.counts()[i] & 0xFFFF);
      } else {
        assertEquals(
            Float.floatToRawIntBits(count(index, i) * 0.01f - 273.15f),
            Float.floatToRawIntBits(((FloatSamples) frame.samples()).values()[i]));
      }
    }
  }
}
