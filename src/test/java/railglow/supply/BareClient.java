package railglow.supply;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.locks.LockSupport;

/**
 * What the machine itself costs, measured beside the stops: a plain thread that sleeps by a timer
 * and then makes a round trip on a plain socket.
 */
final class BareClient implements Runnable {
  private static final byte[] QUESTION =
      "*ESE?\n".getBytes(java.nio.charset.StandardCharsets.US_ASCII);
  private final int port;
  private final List<Double> lateMillis = new ArrayList<>();
  private final List<Double> roundTripMillis = new ArrayList<>();
  private volatile boolean ended;

  BareClient(int port) {
    this.port = port;
  }

  @Override
  public void run() {
    SplittableRandom random = new SplittableRandom(1);
    byte[] buffer = new byte[64];
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
      socket.setTcpNoDelay(true);
      while (!ended) {
        long due = System.nanoTime() + 1_000_000 + random.nextLong(9_000_000);
        for (long left = due - System.nanoTime(); left > 0; left = due - System.nanoTime()) {
          LockSupport.parkNanos(left);
        }
        long woke = System.nanoTime();
        socket.getOutputStream().write(QUESTION);
        int got = 0;
        while (got < QUESTION.length) {
          got += socket.getInputStream().read(buffer);
        }
        long end = System.nanoTime();
        synchronized (this) {
          lateMillis.add((woke - due) / 1e6);
          roundTripMillis.add((end - woke) / 1e6);
        }
      }
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  void end() {
    ended = true;
  }

  synchronized List<Double> lateMillis() {
    return List.copyOf(lateMillis);
  }

  synchronized List<Double> roundTripMillis() {
    return List.copyOf(roundTripMillis);
  }
}
