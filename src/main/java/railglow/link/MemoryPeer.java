package railglow.link;

/** The other end of a {@link MemoryPort}. */
@FunctionalInterface
public interface MemoryPeer {
  /**
   * Bytes arrived. Replies are given by {@link MemoryPort#deliver}.
   *
   * @param text one character for each byte, as it was written: maybe part of a message
   */
  void receive(String text, MemoryPort port);
}
