package railglow.link;

import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import org.junit.jupiter.api.Assumptions;
import railglow.time.MonotonicClock;
import railglow.time.SystemClock;

/** A pseudo-terminal made by socat; the instrument speaks on socat's standard streams. */
final class PtyWire implements TestWire {
  private final Process socat;
  private final OutputStream out;
  private final BytePort port;
  private final Path device;

  PtyWire(ScriptedInstrument instrument, Path folder, Function<String, BytePort> opener)
      throws Exception {
    Assumptions.assumeTrue(present(), "socat is not installed: no pseudo-terminal to test with");
    device = folder.resolve("tty");
    socat =
        new ProcessBuilder("socat", "pty,rawer,link=" + device, "stdio")
            .redirectError(new File("/dev/null"))
            .start();
    out = socat.getOutputStream();
    for (int i = 0; i < 500 && !Files.exists(device); i++) {
      socat.waitFor(10, TimeUnit.MILLISECONDS);
    }
    Assumptions.assumeTrue(Files.exists(device), "socat made no pseudo-terminal here");
    StreamWire.serve(instrument, socat.getInputStream(), out);
    port = opener.apply(device.toString());
  }

  private static boolean present() {
    for (String folder : System.getenv().getOrDefault("PATH", "").split(File.pathSeparator)) {
      if (Files.isExecutable(Path.of(folder, "socat"))) {
        return true;
      }
    }
    return false;
  }

  /** Stops or continues the process that carries the bytes. */
  void signal(String name) throws Exception {
    new ProcessBuilder("kill", "-" + name, Long.toString(socat.pid())).start().waitFor();
  }

  Path device() {
    return device;
  }

  @Override
  public BytePort port() {
    return port;
  }

  @Override
  public MonotonicClock clock() {
    return SystemClock.INSTANCE;
  }

  @Override
  public void sendUnasked(String text) throws IOException {
    out.write(text.getBytes(StandardCharsets.ISO_8859_1));
    out.flush();
  }

  @Override
  public void cut() throws InterruptedException {
    socat.destroyForcibly().waitFor();
  }

  @Override
  public void close() throws Exception {
    port.close();
    cut();
  }
}
