package railglow.link;

import java.io.IOException;
import java.io.InputStream;
import java.net.ConnectException;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.net.UnknownHostException;

/** A camera's stream from a TCP server. Not thread-safe. */
public final class IncomingBytesFromTcp implements IncomingBytes {
  private static final int RECEIVE_BUFFER_BYTES = 4 << 20;
  private static final long NANOS_PER_MILLI = 1_000_000;
  private final String description;
  private final Socket socket;
  private final InputStream input;

  private IncomingBytesFromTcp(String description, Socket socket) throws IOException {
    this.description = description;
    this.socket = socket;
    this.input = socket.getInputStream();
  }

  /**
   * Connects.
   *
   * @throws IOException with one sentence that says what to do
   */
  public static IncomingBytesFromTcp connect(String host, int port, int timeoutMillis)
      throws IOException {
    String where = host + ":" + port;
    Socket socket = new Socket();
    try {
      // Large enough that a pause of ours doesn't stop the camera; must be set before connecting.
      socket.setReceiveBufferSize(RECEIVE_BUFFER_BYTES);
      socket.connect(new InetSocketAddress(host, port), timeoutMillis);
      return new IncomingBytesFromTcp(where, socket);
    } catch (IOException e) {
      socket.close();
      throw new IOException(sentence(where, timeoutMillis, e), e);
    }
  }

  @Override
  public String description() {
    return description;
  }

  @Override
  public int read(byte[] into, int offset, int length, long timeoutNanos) throws IOException {
    socket.setSoTimeout((int) Math.max(1, timeoutNanos / NANOS_PER_MILLI));
    try {
      return input.read(into, offset, length);
    } catch (SocketTimeoutException e) {
      return 0;
    } catch (IOException e) {
      throw new IOException(
          "the stream from "
              + description
              + " broke ("
              + e.getMessage()
              + "); check the camera's"
              + " cable and program",
          e);
    }
  }

  @Override
  public void close() {
    try {
      socket.close();
    } catch (IOException e) {
      // The socket is gone either way and no byte of it is wanted any more.
      return;
    }
  }

  private static String sentence(String where, int timeoutMillis, IOException e) {
    if (e instanceof UnknownHostException || e instanceof java.net.UnknownServiceException) {
      return "no host of that name for the stream at " + where + "; check the address";
    }
    if (e instanceof SocketTimeoutException) {
      return "no answer from "
          + where
          + " within "
          + timeoutMillis
          + " ms; check address and cable";
    }
    if (e instanceof ConnectException) {
      return "nothing serves a stream at " + where + " (" + e.getMessage() + "); start it first";
    }
    return "can't open the stream at " + where + " (" + e.getMessage() + ")";
  }
}
