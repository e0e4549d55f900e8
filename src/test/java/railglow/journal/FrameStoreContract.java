package railglow.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railglow.observed.Frame;
import railglow.observed.FrameMark;
import railglow.thermal.CountSamples;
import railglow.thermal.FloatSamples;
import railglow.thermal.Samples;

/** What every codec of the frame store must do; run once for each. */
abstract class FrameStoreContract {
  static final int WIDTH = 7;
  static final int HEIGHT = 3;

  @TempDir Path temporary;

  abstract String codec();

  abstract SampleType type();

  /** A frame with pixels that change a little, some a lot, and every special value. */
  private Frame frame(int index) {
    Samples samples = type().newSamples(WIDTH, HEIGHT);
    Random random = new Random(index / 3);
    for (int i = 0; i < WIDTH * HEIGHT; i++) {
      if (samples instanceof CountSamples counts) {
        counts.counts()[i] =
            (short) (i == 2 ? random.nextInt() : 29_800 + 10 * i + random.nextInt(9) - 4);
      } else {
        ((FloatSamples) samples).values()[i] =
            i == 2
                ? Float.intBitsToFloat(random.nextInt())
                : (float) (25 + 0.1 * i + 0.05 * random.nextGaussian());
      }
    }
    Frame frame = new Frame(samples);
    frame.begin(index + (index > 4 ? 3 : 0), 1_000_000_007L * index);
    if (index == 5) {
      frame.marks().addAll(Set.of(FrameMark.AFTER_GAP, FrameMark.OUTSIDE));
    }
    return frame;
  }

  private byte[] written(int frames) throws IOException {
    Path file = temporary.resolve("frames-" + frames + ".rgf");
    Files.deleteIfExists(file);
    try (FrameStoreWriter writer = FrameStoreWriter.create(file, type(), WIDTH, HEIGHT, codec())) {
      for (int i = 0; i < frames; i++) {
        writer.append(frame(i));
      }
      assertEquals(frames, writer.frames());
    }
    assertTrue(
        Files.size(file) <= FrameStoreWriter.plannedBytes(type(), WIDTH, HEIGHT, frames),
        "a file never exceeds its plan");
    return Files.readAllBytes(file);
  }

  private record Read(List<Frame> frames, boolean finished, List<Damage> damages, long rest) {}

  private Read read(byte[] bytes) throws IOException {
    Path file = temporary.resolve("copy.rgf");
    Files.write(file, bytes);
    try (FrameStoreReader reader = FrameStoreReader.open(file)) {
      List<Frame> frames = new ArrayList<>();
      Frame frame = new Frame(reader.newSamples());
      while (reader.next(frame)) {
        frames.add(frame);
        frame = new Frame(reader.newSamples());
      }
      return new Read(frames, reader.finished(), reader.damages(), reader.unfinishedBytes());
    }
  }

  private static String text(Frame frame) {
    String pixels =
        frame.samples() instanceof CountSamples counts
            ? Arrays.toString(counts.counts())
            : bits(((FloatSamples) frame.samples()).values());
    return frame.number() + " " + frame.arrivalNanos() + " " + frame.marks() + " " + pixels;
  }

  private static String bits(float[] values) {
    int[] bits = new int[values.length];
    for (int i = 0; i < bits.length; i++) {
      bits[i] = Float.floatToRawIntBits(values[i]);
    }
    return Arrays.toString(bits);
  }

  private List<String> expected(int frames) {
    List<String> texts = new ArrayList<>();
    for (int i = 0; i < frames; i++) {
      texts.add(text(frame(i)));
    }
    return texts;
  }

  private static List<String> texts(Read read) {
    return read.frames.stream().map(FrameStoreContract::text).toList();
  }

  @Test
  void everyFrameComesBackWithEveryBit() throws IOException {
    Read read = read(written(200));
    assertEquals(expected(200), texts(read));
    assertTrue(read.finished);
    assertEquals(List.of(), read.damages);
    assertEquals(0, read.rest);
  }

  @Test
  void aFileOfNoFramesIsFinished() throws IOException {
    Read read = read(written(0));
    assertEquals(List.of(), read.frames);
    assertTrue(read.finished);
  }

  @Test
  void cutAtAnyByteEveryWholeFrameIsRead() throws IOException {
    byte[] whole = written(8);
    int[] ends = frameEnds(whole);
    List<String> expected = expected(8);
    int headerEnd = ends[0];
    for (int cut = 0; cut < whole.length; cut++) {
      byte[] part = Arrays.copyOf(whole, cut);
      if (cut < headerEnd) {
        assertThrows(JournalException.class, () -> read(part));
        continue;
      }
      int frames = 0;
      while (frames + 1 < ends.length && ends[frames + 1] <= cut) {
        frames++;
      }
      Read read = read(part);
      assertEquals(expected.subList(0, frames), texts(read), "cut at " + cut);
      assertFalse(read.finished, "cut at " + cut);
      assertEquals(cut - ends[frames], read.rest, "cut at " + cut);
      assertEquals(List.of(), read.damages);
    }
  }

  /** Where the header line ends, then where each frame ends. */
  private static int[] frameEnds(byte[] whole) {
    int[] ends = new int[9];
    while (whole[ends[0]++] != '\n') {}
    var buffer = java.nio.ByteBuffer.wrap(whole).order(java.nio.ByteOrder.LITTLE_ENDIAN);
    for (int i = 1; i < ends.length; i++) {
      ends[i] =
          ends[i - 1] + ChunkHeader.BYTES + ChunkHeader.at(buffer, ends[i - 1]).payloadBytes();
    }
    return ends;
  }

  @Test
  void anyChangedByteIsReportedAndNoFrameIsWrong() throws IOException {
    byte[] whole = written(8);
    Set<String> expected = Set.copyOf(expected(8));
    for (int at = frameEnds(whole)[0]; at < whole.length; at++) {
      byte[] changed = whole.clone();
      changed[at] ^= 0x04;
      Read read = read(changed);
      assertTrue(
          !read.damages.isEmpty() || !read.finished, "byte " + at + " was changed unnoticed");
      assertTrue(expected.containsAll(texts(read)), "byte " + at + " gave a wrong frame");
    }
  }

  @Test
  void damageEndsAtTheNextIndependentFrame() throws IOException {
    byte[] changed = written(200);
    int[] ends = frameEnds(changed);
    changed[ends[2] + ChunkHeader.BYTES] ^= 1;
    Read read = read(changed);
    List<String> expected = expected(200);
    List<String> got = texts(read);
    assertEquals(expected.subList(0, 2), got.subList(0, 2));
    assertEquals(expected.subList(64, 200), got.subList(got.size() - 136, got.size()));
    assertFalse(read.damages.isEmpty());
    assertTrue(read.damages.get(0).what().contains("was changed"), read.damages.toString());
  }

  @Test
  void aFrameTakenOutIsMissed() throws IOException {
    byte[] whole = written(8);
    int[] ends = frameEnds(whole);
    byte[] without = new byte[whole.length - (ends[3] - ends[2])];
    System.arraycopy(whole, 0, without, 0, ends[2]);
    System.arraycopy(whole, ends[3], without, ends[2], whole.length - ends[3]);
    Read read = read(without);
    assertTrue(
        read.damages.get(0).what().contains("1 frames before here are not there"),
        read.damages.toString());
  }

  @Test
  void aFrameOfAnotherSizeIsRefused() throws IOException {
    try (FrameStoreWriter writer =
        FrameStoreWriter.create(temporary.resolve("f"), type(), WIDTH, HEIGHT, codec())) {
      Frame other = new Frame(type().newSamples(WIDTH + 1, HEIGHT));
      assertThrows(IllegalArgumentException.class, () -> writer.append(other));
    }
  }
}
