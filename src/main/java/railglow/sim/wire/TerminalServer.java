package railglow.sim.wire;

import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import railglow.sim.fault.FaultSwitches;
import railglow.time.MonotonicClock;

/**
 * Serves the supply's lines on a (pseudo-)terminal: an existing device is opened; for a path that
 * does not exist yet, socat is started to make a pseudo-terminal with that name.
 */
public final class TerminalServer implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(TerminalServer.class);
  private static final int TRIES = 500;
  private final InputStream in;
  private final OutputStream out;
  private final Process socat;
  private volatile boolean closed;

  private TerminalServer(InputStream in, OutputStream out, Process socat) {
    this.in = in;
    this.out = out;
    this.socat = socat;
  }

  /**
   * @throws IOException with a sentence for the operator when there is no such terminal
   */
  public static TerminalServer start(
      Path path, LineService service, FaultSwitches faults, WireHabits habits, MonotonicClock clock)
      throws IOException {
    TerminalServer server = Files.exists(path) ? open(path) : make(path);
    LineService guarded = (line, now) -> server.closed ? null : service.receive(line, now);
    LineConversation conversation =
        new LineConversation(server.in, server.out, guarded, faults, habits, clock);
    SupplyServer.daemon(() -> server.converse(conversation), "sim-supply-terminal");
    return server;
  }

  private static TerminalServer open(Path path) throws IOException {
    return new TerminalServer(
        new FileInputStream(path.toFile()), new FileOutputStream(path.toFile()), null);
  }

  private static TerminalServer make(Path path) throws IOException {
    Process process;
    try {
      process =
          new ProcessBuilder(List.of("socat", "-", "pty,rawer,link=" + path.toAbsolutePath()))
              .redirectError(ProcessBuilder.Redirect.DISCARD)
              .start();
    } catch (IOException e) {
      throw new IOException(
          "there is no terminal "
              + path
              + ", and socat, which could make one, does not start: "
              + "install socat or give the path of an existing terminal",
          e);
    }
    for (int i = 0; i < TRIES && !Files.exists(path) && process.isAlive(); i++) {
      try {
        if (process.waitFor(10, TimeUnit.MILLISECONDS)) {
          break;
        }
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        break;
      }
    }
    if (!Files.exists(path)) {
      process.destroy();
      throw new IOException("socat could not make the terminal " + path);
    }
    return new TerminalServer(process.getInputStream(), process.getOutputStream(), process);
  }

  private void converse(LineConversation conversation) {
    try {
      conversation.serve();
    } catch (IOException e) {
      LOG.debug("the terminal ended: {}", e.toString());
    }
  }

  @Override
  public void close() {
    closed = true;
    if (socat != null) {
      socat.destroy();
    }
    SupplyServer.closeQuietly(out);
  }
}
