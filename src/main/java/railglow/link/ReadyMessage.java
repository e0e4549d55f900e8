package railglow.link;

import java.nio.ByteBuffer;

/**
 * A message made long before it is needed, for a program that has no memory left when it needs it.
 * Owned by the thread that owns the link.
 */
public final class ReadyMessage {
  private final byte[] bytes;
  private final ByteBuffer buffer;

  ReadyMessage(byte[] bytes) {
    this.bytes = bytes;
    this.buffer = ByteBuffer.allocateDirect(bytes.length).put(bytes);
  }

  /** Not to be changed. */
  byte[] bytes() {
    return bytes;
  }

  /** The same, from its first byte, outside the heap. */
  ByteBuffer fromTheStart() {
    buffer.clear();
    return buffer;
  }
}
