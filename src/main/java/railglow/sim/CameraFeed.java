package railglow.sim;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.function.Consumer;
import railglow.sim.fault.FaultKind;
import railglow.sim.picture.FrameFate;
import railglow.time.Step;

/**
 * Takes each frame when it is due and gives it away as a packet: 16 bytes of header (u32 frame
 * counter, u32 zero, u64 camera time in microseconds) and the counts as u16, all little-endian.
 */
final class CameraFeed implements Step {
  static final int HEADER_BYTES = 16;

  /** Frames later than this are lost, as in a camera whose buffer is full. */
  private static final long BACKLOG_NANOS = 500_000_000;

  private static final int FLOOD = 8;
  private final BenchWorld world;
  private final Consumer<byte[]> receiver;
  private final Runnable beat;
  private final int width;
  private final int height;
  private final short[] counts;
  private short[] lastSent;
  private long extraFrames;

  /**
   * @param beat called once for each frame interval
   */
  CameraFeed(BenchWorld world, Consumer<byte[]> receiver, Runnable beat) {
    this.world = world;
    this.receiver = receiver;
    this.beat = beat;
    width = world.scenario().camera().width();
    height = world.scenario().camera().height();
    counts = new short[width * height];
  }

  /** When the next frame is on the wire. */
  long dueNanos() {
    long number = world.nextFrame();
    FrameFate fate = world.camera().fate(number);
    return world.exposureNanos(number) + Math.round(world.camera().latencySeconds(fate) * 1e9);
  }

  @Override
  public long step(long nowNanos) {
    long due = dueNanos();
    if (nowNanos < due) {
      return due;
    }
    FrameFate fate = world.camera().fate(world.nextFrame());
    long number = world.takeFrame(nowNanos, counts);
    beat.run();
    if (nowNanos - due < BACKLOG_NANOS) {
      send(number, fate, nowNanos);
    }
    return dueNanos();
  }

  private void send(long number, FrameFate fate, long nowNanos) {
    boolean lost = fate == FrameFate.DROPPED || fate == FrameFate.SHUTTERED;
    if (lost || world.faults().isActive(FaultKind.CAMERA_STOPS, nowNanos)) {
      return;
    }
    boolean frozen =
        fate == FrameFate.REPEATED || world.faults().isActive(FaultKind.FROZEN_FRAMES, nowNanos);
    if (!frozen || lastSent == null) {
      lastSent = counts.clone();
    }
    long micros = Math.round(world.camera().exposureSeconds(number) * 1e6);
    receiver.accept(packet(number + extraFrames, micros));
    if (world.faults().isActive(FaultKind.CAMERA_FLOODS, nowNanos)) {
      for (int i = 1; i < FLOOD; i++) {
        receiver.accept(packet(number + ++extraFrames, micros));
      }
    }
  }

  private byte[] packet(long counter, long micros) {
    ByteBuffer buffer =
        ByteBuffer.allocate(HEADER_BYTES + 2 * lastSent.length).order(ByteOrder.LITTLE_ENDIAN);
    buffer.putInt((int) counter).putInt(0).putLong(micros);
    buffer.asShortBuffer().put(lastSent);
    return buffer.array();
  }
}
