package railglow.live;

import com.sun.net.httpserver.HttpExchange;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;

/**
 * Those who watch the page: each has a connection that stays open and gets server-sent events. A
 * viewer that reads too slowly misses states; nobody waits for it. Thread-safe.
 */
final class LiveViewers {
  private static final int QUEUED = 20;
  private static final long BEAT_SECONDS = 1;
  private static final String END = "";
  private final Set<BlockingQueue<String>> queues = ConcurrentHashMap.newKeySet();

  boolean any() {
    return !queues.isEmpty();
  }

  int count() {
    return queues.size();
  }

  /** Sends an event to everybody, at once and without waiting. */
  void send(String event, String data) {
    String text = event(event, data);
    for (BlockingQueue<String> queue : queues) {
      while (!queue.offer(text)) {
        queue.poll();
      }
    }
  }

  private static String event(String name, String data) {
    return "event: " + name + "\ndata: " + data + "\n\n";
  }

  /** Serves one viewer on the calling thread until it leaves or everything ends. */
  void serve(HttpExchange exchange, String hello) throws IOException {
    BlockingQueue<String> queue = new ArrayBlockingQueue<>(QUEUED);
    queue.add(event("hello", hello));
    queues.add(queue);
    try (OutputStream out = exchange.getResponseBody()) {
      while (true) {
        String text = queue.poll(BEAT_SECONDS, TimeUnit.SECONDS);
        if (END.equals(text)) {
          return;
        }
        out.write((text == null ? ":\n\n" : text).getBytes(StandardCharsets.UTF_8));
        out.flush();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      queues.remove(queue);
    }
  }

  void end() {
    for (BlockingQueue<String> queue : queues) {
      while (!queue.offer(END)) {
        queue.poll();
      }
    }
  }
}
