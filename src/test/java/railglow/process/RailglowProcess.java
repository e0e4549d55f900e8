package railglow.process;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** The packaged jar running as a process of its own, its output read line by line. */
final class RailglowProcess implements AutoCloseable {
  private static final Path JAR = Path.of("target", "railglow.jar").toAbsolutePath();
  private final Process process;
  private final List<String> lines = new ArrayList<>();
  private final Thread reader;

  private RailglowProcess(Process process) {
    this.process = process;
    this.reader = new Thread(this::read, "process-output");
    reader.setDaemon(true);
    reader.start();
  }

  static RailglowProcess start(String... arguments) throws IOException {
    return new RailglowProcess(
        new ProcessBuilder(command(arguments)).redirectErrorStream(true).start());
  }

  private static List<String> command(String... arguments) {
    List<String> command = new ArrayList<>();
    command.add(ChildJava.PROGRAM);
    command.addAll(List.of("-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-jar", JAR.toString()));
    command.addAll(Arrays.asList(arguments));
    return command;
  }

  /**
   * On a pseudo-terminal of its own. The terminal's settings before and after are left in the files
   * {@code before} and {@code after}, the program's process number in {@code pid}; its exit code is
   * said last.
   */
  static RailglowProcess startOnTerminal(Path folder, String... arguments) throws IOException {
    String line =
        command(arguments).stream().map(word -> "'" + word + "'").collect(Collectors.joining(" "));
    Path script =
        Files.writeString(
            folder.resolve("on-terminal.sh"),
            """
            trap : INT
            cd '%s'
            stty -g > before
            sh -c 'echo $$ > pid; exec "$@"' sh %s
            echo "exit code $?"
            sleep 1
            stty -g > after
            """
                .formatted(folder, line));
    return new RailglowProcess(
        new ProcessBuilder("script", "-q", "-e", "-c", "sh " + script, "/dev/null")
            .redirectErrorStream(true)
            .start());
  }

  /** Types these keys. */
  void type(String keys) throws IOException {
    process.getOutputStream().write(keys.getBytes(StandardCharsets.UTF_8));
    process.getOutputStream().flush();
  }

  /** Waits until a line matches. */
  Matcher awaitLine(String regex, long seconds) throws InterruptedException {
    Pattern pattern = Pattern.compile(regex);
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(seconds);
    int seen = 0;
    synchronized (lines) {
      while (true) {
        for (; seen < lines.size(); seen++) {
          Matcher matcher = pattern.matcher(lines.get(seen));
          if (matcher.find()) {
            return matcher;
          }
        }
        long left = deadline - System.nanoTime();
        if (left <= 0) {
          throw new AssertionError("no line matched '" + regex + "' in:\n" + output());
        }
        lines.wait(Math.max(1, left / 1_000_000));
      }
    }
  }

  int awaitExit(long seconds) throws InterruptedException {
    if (!process.waitFor(seconds, TimeUnit.SECONDS)) {
      throw new AssertionError("still running after " + seconds + " s:\n" + output());
    }
    reader.join(2000);
    return process.exitValue();
  }

  String output() {
    synchronized (lines) {
      return String.join("\n", lines);
    }
  }

  /** Closes its standard input. */
  void endInput() throws IOException {
    process.getOutputStream().close();
  }

  long pid() {
    return process.pid();
  }

  /** As {@code kill -9}. */
  void kill() {
    process.destroyForcibly();
  }

  /** As Ctrl-C. */
  void interrupt() throws IOException {
    new ProcessBuilder("kill", "-INT", Long.toString(process.pid())).start();
  }

  @Override
  public void close() {
    process.destroy();
    try {
      if (!process.waitFor(5, TimeUnit.SECONDS)) {
        process.destroyForcibly();
      }
    } catch (InterruptedException e) {
      process.destroyForcibly();
      Thread.currentThread().interrupt();
    }
  }

  private void read() {
    try (BufferedReader in =
        new BufferedReader(
            new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
      for (String line = in.readLine(); line != null; line = in.readLine()) {
        synchronized (lines) {
          lines.add(line);
          lines.notifyAll();
        }
      }
    } catch (IOException e) {
      synchronized (lines) {
        lines.add("(output ended: " + e.getMessage() + ")");
        lines.notifyAll();
      }
    }
  }
}
