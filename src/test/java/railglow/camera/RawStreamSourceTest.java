package railglow.camera;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import railglow.link.IncomingBytes;
import railglow.observed.Frame;
import railglow.observed.FrameMark;

class RawStreamSourceTest {
  private static final int PIXELS = 6;
  private static final byte[] MARKER = {(byte) 0xA5, 0x5A, 0x11};
  private long now;

  @Property(tries = 100, seed = "41")
  void framesDoNotDependOnHowTheStreamIsCut(
      @ForAll long seed, @ForAll @IntRange(min = 1, max = 40) int largest) throws IOException {
    byte[] sent = frames(0, 1, 2, 5, 6);
    RawStreamSource source =
        new RawStreamSource(new Chunks(sent, seed, largest), camera(), this::tick);
    List<Long> numbers = new ArrayList<>();
    Frame frame = new Frame(source.newSamples());
    FrameSource.Outcome outcome = source.read(frame, 1000);
    while (outcome != FrameSource.Outcome.ENDED) {
      if (outcome == FrameSource.Outcome.FRAME) {
        numbers.add(frame.number());
        assertEquals(100 * (frame.number() % 50) + 3, frame.samples().valueAt(3));
      }
      outcome = source.read(frame, 1000);
    }
    assertEquals(List.of(0L, 1L, 2L, 5L, 6L), numbers);
  }

  @Test
  void aLostPlaceIsFoundAgainByTheMarkerAndSaid() throws IOException {
    ByteArrayOutputStream sent = new ByteArrayOutputStream();
    sent.write(frames(0, 1));
    sent.write(Arrays.copyOf(frames(2), 5));
    sent.write(frames(3, 4));
    RawStreamSource source = source(sent.toByteArray());
    assertEquals(Set.of(), next(source, 0));
    assertEquals(Set.of(), next(source, 1));
    assertEquals(Set.of(FrameMark.AFTER_GAP), next(source, 3));
    assertEquals(Set.of(), next(source, 4));
    assertEquals(5, source.bytesSkipped());
  }

  /** The torn frame itself has its marker; the next one's marker and counter inside it tell. */
  @Test
  void aTornFrameIsNeverGivenAndTheNextOneIsMarked() throws IOException {
    ByteArrayOutputStream sent = new ByteArrayOutputStream();
    sent.write(Arrays.copyOf(frames(0), 12));
    sent.write(frames(1, 2, 3));
    RawStreamSource source = source(sent.toByteArray());
    assertEquals(Set.of(FrameMark.AFTER_GAP), next(source, 0));
    assertEquals(Set.of(), next(source, 1));
    assertEquals(Set.of(), next(source, 2));
    assertEquals(1, source.framesTorn());
    assertEquals(12, source.bytesSkipped());
  }

  @Test
  void aStreamWhoseFramesBecomeSmallerIsNamedWithTheirNewSize() throws IOException {
    ByteArrayOutputStream sent = new ByteArrayOutputStream();
    sent.write(frames(0, 1));
    for (int counter = 2; counter < 12; counter++) {
      sent.write(Arrays.copyOf(frames(counter), 11));
    }
    RawStreamSource source = source(sent.toByteArray());
    next(source, 0);
    next(source, 1);
    IOException e = assertThrows(IOException.class, () -> next(source, 2));
    assertTrue(e.getMessage().contains("frames begin every 11 bytes in it"), e.getMessage());
  }

  @Test
  void aStreamWhoseFramesBecomeLargerIsNamedWithTheirNewSize() throws IOException {
    ByteArrayOutputStream sent = new ByteArrayOutputStream();
    sent.write(frames(0, 1));
    int length = frames(0).length;
    for (int counter = 2; counter < 20; counter++) {
      sent.write(Arrays.copyOf(frames(counter), length + 5));
    }
    RawStreamSource source = source(sent.toByteArray());
    Frame frame = new Frame(source.newSamples());
    IOException e =
        assertThrows(
            IOException.class,
            () -> {
              while (source.read(frame, 1_000_000) != FrameSource.Outcome.ENDED) {
                assertTrue(frame.number() < 10, "frames of another size go on being given");
              }
            });
    String size = "frames begin every " + (length + 5) + " bytes in it";
    assertTrue(e.getMessage().contains(size), e.getMessage());
  }

  @Test
  void aCounterOfFourBytesTellsATornFrameWithoutAnyMarker() throws IOException {
    ByteArrayOutputStream sent = new ByteArrayOutputStream();
    int frameBytes = 7 + 2 * PIXELS;
    sent.write(Arrays.copyOf(frames(90_000), 12));
    sent.write(frames(90_001, 90_002));
    for (int counter = 90_003; counter < 90_012; counter++) {
      sent.write(Arrays.copyOf(frames(counter), frameBytes - 7));
    }
    Telemetry counterOnly =
        new Telemetry(
            camera().layout().telemetry().counter(),
            1,
            Optional.empty(),
            Double.NaN,
            Optional.empty());
    CameraDescriptor camera =
        FrameSourceContract.camera(
            RawLayout.packed(3, 2, SampleType.U16, Endian.LITTLE).withHeader(7, counterOnly));
    RawStreamSource source =
        new RawStreamSource(new Chunks(sent.toByteArray(), 1, 7), camera, this::tick);
    assertEquals(Set.of(FrameMark.AFTER_GAP), next(source, 0));
    assertEquals(Set.of(), next(source, 1));
    assertEquals(1, source.framesTorn());
    IOException e = assertThrows(IOException.class, () -> next(source, 2));
    assertTrue(e.getMessage().contains("frames begin every 12 bytes in it"), e.getMessage());
  }

  @Test
  void aStreamWithoutTheMarkerIsRefusedWithTheFrameSize() {
    byte[] junk = new byte[4000];
    new Random(1).nextBytes(junk);
    for (int i = 0; i < junk.length; i++) {
      junk[i] = junk[i] == MARKER[0] ? 0 : junk[i];
    }
    RawStreamSource source = source(junk);
    IOException e =
        assertThrows(IOException.class, () -> source.read(new Frame(source.newSamples()), 1 << 20));
    assertTrue(e.getMessage().contains("not made of frames of 19 bytes"), e.getMessage());
    assertTrue(e.getMessage().contains("a55a11 at byte 4"), e.getMessage());
  }

  @Test
  void aCounterThatJumpsAboutMeansTheSizeIsWrong() throws IOException {
    RawStreamSource source = source(frames(0, 90_000, 5, 70_000, 3));
    Frame frame = new Frame(source.newSamples());
    source.read(frame, 1000);
    IOException e =
        assertThrows(
            IOException.class,
            () -> {
              for (int i = 0; i < 4; i++) {
                source.read(frame, 1000);
              }
            });
    assertTrue(e.getMessage().contains("its frame counter jumps about"), e.getMessage());
  }

  @Test
  void theBytesOfTheNewestFrameCanBeLookedAt() throws IOException {
    RawStreamSource source = source(frames(4, 5));
    assertEquals(Optional.empty(), source.newestFrameBytes());
    next(source, 0);
    assertArrayEquals(frames(4), source.newestFrameBytes().orElseThrow());
  }

  @Test
  void anImageSentTwiceIsFrozen() throws IOException {
    RawStreamSource source = source(frames(7, 7, 8));
    assertEquals(Set.of(), next(source, 0));
    assertEquals(Set.of(FrameMark.FROZEN), next(source, 0));
    assertEquals(Set.of(), next(source, 1));
  }

  @Test
  void aCameraThatStartsItsCounterAnewGoesOn() throws IOException {
    RawStreamSource source = source(frames(500, 501, 0, 1, 2));
    next(source, 0);
    next(source, 1);
    Frame frame = new Frame(source.newSamples());
    source.read(frame, 1000);
    assertEquals(101, frame.samples().valueAt(1), "the one that jumped is not given");
    assertEquals(Set.of(FrameMark.AFTER_GAP), frame.marks());
    long number = frame.number();
    assertTrue(number >= 2, "number " + number);
    assertEquals(Set.of(), next(source, number + 1));
  }

  private Set<FrameMark> next(RawStreamSource source, long number) throws IOException {
    Frame frame = new Frame(source.newSamples());
    assertEquals(FrameSource.Outcome.FRAME, source.read(frame, 1000));
    assertEquals(number, frame.number());
    return Set.copyOf(frame.marks());
  }

  private RawStreamSource source(byte[] sent) {
    return new RawStreamSource(new Chunks(sent, 1, 7), camera(), this::tick);
  }

  private long tick() {
    return now++;
  }

  private static CameraDescriptor camera() {
    Telemetry telemetry =
        new Telemetry(
            Optional.of(new TelemetryField(0, 4, Endian.LITTLE)),
            1,
            Optional.empty(),
            Double.NaN,
            Optional.of(new FrameMarker(4, MARKER)));
    return FrameSourceContract.camera(
        RawLayout.packed(3, 2, SampleType.U16, Endian.LITTLE).withHeader(7, telemetry));
  }

  /** Counter, marker, six pixels each. */
  private static byte[] frames(int... counters) {
    ByteBuffer bytes =
        ByteBuffer.allocate(counters.length * (7 + 2 * PIXELS)).order(ByteOrder.LITTLE_ENDIAN);
    for (int counter : counters) {
      bytes.putInt(counter).put(MARKER);
      for (int i = 0; i < PIXELS; i++) {
        bytes.putShort((short) (100 * (counter % 50) + i));
      }
    }
    return bytes.array();
  }

  /** Gives bytes in pieces of random size, now and then none. */
  private static final class Chunks implements IncomingBytes {
    private final byte[] bytes;
    private final Random random;
    private final int largest;
    private int at;

    Chunks(byte[] bytes, long seed, int largest) {
      this.bytes = bytes;
      this.random = new Random(seed);
      this.largest = largest;
    }

    @Override
    public String description() {
      return "a test";
    }

    @Override
    public int read(byte[] into, int offset, int length, long timeoutNanos) {
      if (at == bytes.length) {
        return ENDED;
      }
      int count = Math.min(Math.min(length, bytes.length - at), random.nextInt(largest + 1));
      System.arraycopy(bytes, at, into, offset, count);
      at += count;
      return count;
    }

    @Override
    public void close() {
      at = bytes.length;
    }
  }
}
