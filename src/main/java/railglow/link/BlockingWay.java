package railglow.link;

import java.io.IOException;

/** A device whose calls may block for longer than their caller can wait. */
interface BlockingWay {
  void open() throws IOException;

  /** Bytes that can be read at once, 0 if there are none or this can't be known. */
  int available();

  /**
   * @return the number of bytes read, 0 if none came for a while, -1 if the device is gone
   */
  int read(byte[] into) throws IOException;

  /** Whether a short message would be taken without any wait now; false where that is not known. */
  boolean takesAtOnce();

  /** Writes all. */
  void write(byte[] bytes) throws IOException;

  /** Writes all, or as much as is taken at once, without needing any memory. */
  boolean writeWithoutMemory(ReadyMessage message) throws IOException;

  /** May block. */
  void close();
}
