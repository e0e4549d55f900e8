package railglow.supply;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import railglow.process.ChildJava;

/**
 * {@link StopLatencySupply} in a process of its own, as a study talks to it by lines. Closing ends
 * the process. Not thread-safe.
 */
final class OtherProcessSupply implements AutoCloseable {
  private final Process process;
  private final BufferedReader from;
  private final Writer to;
  private final int[] ports;

  /**
   * Returns when its ports are open.
   *
   * @param arguments of {@link StopLatencySupply#main}
   */
  OtherProcessSupply(String... arguments) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(ChildJava.PROGRAM);
    command.addAll(List.of("-cp", CompanionProcess.classPath(), StopLatencySupply.class.getName()));
    command.addAll(List.of(arguments));
    process = new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
    from =
        new BufferedReader(
            new InputStreamReader(process.getInputStream(), StandardCharsets.US_ASCII));
    to = process.outputWriter(StandardCharsets.US_ASCII);
    String[] words = hear().split(" ");
    ports = new int[] {Integer.parseInt(words[1]), Integer.parseInt(words[2])};
  }

  String address() {
    return "tcp://127.0.0.1:" + ports[0];
  }

  /** Where bytes come back as they are. */
  int echoPort() {
    return ports[1];
  }

  /** Its next line. */
  String hear() throws IOException {
    return from.readLine();
  }

  void tell(String line) throws IOException {
    to.write(line + "\n");
    to.flush();
  }

  @Override
  public void close() throws IOException {
    to.close();
    try {
      process.waitFor(5, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    process.destroyForcibly();
  }
}
