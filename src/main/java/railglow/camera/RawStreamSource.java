package railglow.camera;

import java.io.IOException;
import java.util.Optional;
import railglow.link.IncomingBytes;
import railglow.observed.Frame;
import railglow.observed.FrameMark;
import railglow.thermal.Samples;
import railglow.time.MonotonicClock;

/**
 * Cuts a stream of raw frames at the layout's size, stamps each when its last byte is there, and
 * decodes it. Finds its place again by the layout's marker, if it has one. Not thread-safe.
 */
public final class RawStreamSource implements FrameSource {
  private static final int MAX_JUMPS = 3;
  private static final int MAX_FRAMES_WITHOUT_MARKER = 4;
  private static final int MAX_TORN = 4;

  /** A counter of so many bytes is not met in a picture by chance. */
  private static final int TELLING_BYTES = 4;

  private final IncomingBytes stream;
  private final CameraDescriptor camera;
  private final FrameDecoder decoder;
  private final FrameNumbering numbering;
  private final MonotonicClock clock;
  private final byte[] bytes;
  private int filled;
  private boolean afterGap;
  private boolean hasWholeFrame;
  private long bytesSkipped;
  private long skippedInSuccession;
  private long framesTorn;
  private int tornInSuccession;
  private long skippedBeforeFrame;
  private int apartInSuccession;

  public RawStreamSource(IncomingBytes stream, CameraDescriptor camera, MonotonicClock clock) {
    this.stream = stream;
    this.camera = camera;
    this.decoder = new FrameDecoder(camera.layout(), camera.scale());
    this.numbering = new FrameNumbering(camera.layout().telemetry(), 1 / camera.framesPerSecond());
    this.clock = clock;
    this.bytes = new byte[camera.layout().frameBytes()];
  }

  @Override
  public String description() {
    return camera.name() + " at " + stream.description();
  }

  @Override
  public Samples newSamples() {
    return decoder.newSamples();
  }

  /** Bytes thrown away while looking for the place of a frame. */
  public long bytesSkipped() {
    return bytesSkipped;
  }

  /** Frames that broke off with the next one in their place; none of them was given. */
  public long framesTorn() {
    return framesTorn;
  }

  /**
   * What the newest {@link #read} that gave a frame was decoded from: a copy of all its bytes.
   * Empty before the first frame and once the next one has begun to arrive.
   */
  public Optional<byte[]> newestFrameBytes() {
    return hasWholeFrame && filled == 0 ? Optional.of(bytes.clone()) : Optional.empty();
  }

  @Override
  public Outcome read(Frame frame, long timeoutNanos) throws IOException {
    long deadline = clock.nanos() + timeoutNanos;
    long left = timeoutNanos;
    while (left > 0) {
      int count = stream.read(bytes, filled, bytes.length - filled, left);
      if (count == IncomingBytes.ENDED) {
        return ended();
      }
      filled += count;
      long now = clock.nanos();
      if (filled == bytes.length && isInPlace() && take(frame, now)) {
        return Outcome.FRAME;
      }
      left = deadline - now;
    }
    return Outcome.NOTHING_YET;
  }

  @Override
  public void close() {
    stream.close();
  }

  private Outcome ended() throws IOException {
    if (filled > 0 && filled < bytes.length) {
      int left = filled;
      filled = 0;
      throw new IOException(
          "the stream of "
              + description()
              + " ended in the middle of a frame, "
              + left
              + " of "
              + bytes.length
              + " bytes in; check the frame size in the camera's descriptor");
    }
    return Outcome.ENDED;
  }

  /**
   * Whether the full buffer is a frame to give. One whose counter jumped is not, until the next one
   * goes on from it: it may be no frame at all.
   */
  private boolean take(Frame frame, long arrivalNanos) throws IOException {
    filled = 0;
    tornInSuccession = 0;
    checkApart();
    hasWholeFrame = true;
    FrameNumbering.Verdict verdict = numbering.next(bytes, 0, arrivalNanos);
    if (numbering.jumpsInSuccession() >= MAX_JUMPS) {
      throw outOfStep("its frame counter jumps about");
    }
    if (verdict == FrameNumbering.Verdict.JUMPED) {
      afterGap = true;
      return false;
    }
    frame.begin(numbering.number(), arrivalNanos);
    decoder.decode(bytes, 0, frame.samples());
    if (verdict == FrameNumbering.Verdict.REPEATED) {
      frame.marks().add(FrameMark.FROZEN);
    }
    if (afterGap) {
      frame.marks().add(FrameMark.AFTER_GAP);
    }
    afterGap = false;
    return true;
  }

  /** Frames with bytes between them, one after the other, are larger ones than described. */
  private void checkApart() throws IOException {
    long apart = skippedBeforeFrame;
    skippedBeforeFrame = 0;
    apartInSuccession = apart > 0 ? apartInSuccession + 1 : 0;
    if (apartInSuccession > MAX_TORN) {
      throw outOfStep("frames begin every " + (bytes.length + apart) + " bytes in it");
    }
  }

  /** Whether the full buffer is one frame; if not, throws away what stands before the next one. */
  private boolean isInPlace() throws IOException {
    FrameMarker marker = camera.layout().telemetry().marker().orElse(null);
    if (marker == null || marker.matches(bytes, 0)) {
      skippedInSuccession = 0;
      int torn = nextFrameInside(marker);
      if (torn < bytes.length) {
        framesTorn++;
        tornInSuccession++;
        dropFirst(torn);
        if (tornInSuccession > MAX_TORN) {
          throw outOfStep("frames begin every " + torn + " bytes in it");
        }
      }
      return filled == bytes.length;
    }
    int start = 1;
    while (start + marker.endBytes() <= bytes.length && !marker.matches(bytes, start)) {
      start++;
    }
    dropFirst(start);
    skippedInSuccession += start;
    skippedBeforeFrame += start;
    if (skippedInSuccession > (long) MAX_FRAMES_WITHOUT_MARKER * bytes.length) {
      throw outOfStep("the marker " + marker + " is nowhere in it");
    }
    return false;
  }

  /**
   * Where another frame begins within the full buffer: its marker, if there is one, with a counter
   * that goes on from the first one's, and its time, if there is one, likewise; no picture shows
   * that by chance. The buffer's length when there is none, or no counter of enough bytes to tell
   * it by.
   */
  private int nextFrameInside(FrameMarker marker) {
    Telemetry telemetry = camera.layout().telemetry();
    TelemetryField counter = telemetry.counter().orElse(null);
    if (counter == null || marker == null && counter.sizeBytes() < TELLING_BYTES) {
      return bytes.length;
    }
    long first = counter.read(bytes, 0);
    long most = MAX_TORN * (long) telemetry.counterStep();
    int needed =
        Math.max(
            Math.max(marker == null ? 0 : marker.endBytes(), counter.endBytes()),
            telemetry.time().map(TelemetryField::endBytes).orElse(0));
    int lowest = counter.lowestByte();
    for (int start = needed; start + needed <= bytes.length; start++) {
      // of all places few pass the first look, at one byte
      int low = bytes[start + lowest] - bytes[lowest] & 0xFF;
      if ((low <= most || most > 0xFF) && (marker == null || marker.matches(bytes, start))) {
        long step = counter.step(first, counter.read(bytes, start));
        if (step > 0 && step <= most && timeGoesOn(telemetry, start)) {
          return start;
        }
      }
    }
    return bytes.length;
  }

  private boolean timeGoesOn(Telemetry telemetry, int start) {
    if (telemetry.time().isEmpty()) {
      return true;
    }
    TelemetryField time = telemetry.time().get();
    double passed = time.step(time.read(bytes, 0), time.read(bytes, start));
    double seconds = passed * telemetry.timeTickSeconds();
    return seconds >= 0 && seconds < 2 * MAX_TORN / camera.framesPerSecond();
  }

  private void dropFirst(int count) {
    System.arraycopy(bytes, count, bytes, 0, bytes.length - count);
    filled -= count;
    bytesSkipped += count;
    afterGap = true;
  }

  private IOException outOfStep(String evidence) {
    return new IOException(
        "the stream of "
            + description()
            + " is not made of frames of "
            + bytes.length
            + " bytes ("
            + evidence
            + "); compare size, header and sample type in the descriptor with what the camera"
            + " sends");
  }
}
