package railglow.supply;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.URISyntaxException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import railglow.safety.StopCause;
import railglow.safety.StopLatch;
import railglow.time.Step;

/**
 * The controller's side of the companion: starts it, beats while the keeper lives, and latches a
 * stop when the companion is lost or has had to act. {@link #step} belongs to one loop of its own;
 * the rest may be called from any thread.
 */
public final class CompanionProcess implements Step, AutoCloseable {
  /** Longest time without a beat before the companion acts. */
  public static final long LIMIT_NANOS = 1_500_000_000L;

  private static final long BEAT_NANOS = LIMIT_NANOS / 6;

  /** Until it is ready the first pulse waits for it. */
  private static final long LISTEN_NANOS = 10_000_000L;

  private static final long ANSWER_NANOS = 4_000_000_000L;
  private static final long START_NANOS = 20_000_000_000L;
  private static final int GOODBYE_SECONDS = 3;
  private final Process process;
  private final OutputStream toCompanion;
  private final InputStream fromCompanion;
  private final LongSupplier keeperLastStepNanos;
  private final StopLatch latch;
  private volatile boolean ready;
  private volatile boolean ownWay;
  private long startedNanos;
  private long nextBeatNanos;
  private boolean begun;
  private long lastAnswerNanos;
  private boolean lost;

  CompanionProcess(Process process, LongSupplier keeperLastStepNanos, StopLatch latch) {
    this.process = process;
    this.toCompanion = process.getOutputStream();
    this.fromCompanion = process.getInputStream();
    this.keeperLastStepNanos = keeperLastStepNanos;
    this.latch = latch;
  }

  /**
   * Starts the process; it waits, and touches nothing, until the first beat.
   *
   * @param mainClass name of the program's main class, which knows the command {@code companion}
   * @param descriptorText the supply's descriptor as read
   * @throws IOException with a sentence when it can't be started
   */
  public static LaunchedCompanion launch(
      String mainClass, SupplyAddress address, int channel, String descriptorText)
      throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-Xmx48m", "-Xss512k", "-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1"));
    command.addAll(sharedClasses());
    command.addAll(List.of("-cp", classPath(), mainClass, "companion"));
    command.add(address.toString());
    command.add(Integer.toString(channel));
    command.add(Long.toString(LIMIT_NANOS / 1_000_000));
    command.add(Long.toString(ProcessHandle.current().pid()));
    try {
      // Where the program complains the companion complains too: it may be the only one left.
      Process process =
          new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
      CompanionTalk.sendText(process.getOutputStream(), descriptorText);
      return new LaunchedCompanion(process);
    } catch (IOException e) {
      throw new IOException("the companion process could not be started: " + e.getMessage(), e);
    }
  }

  /** The archive of loaded classes that the launcher named, so that both processes start fast. */
  private static List<String> sharedClasses() {
    String archive = System.getProperty("railglow.archive", "");
    return archive.isEmpty()
        ? List.of()
        : List.of("-Xshare:auto", "-Xlog:disable", "-XX:SharedArchiveFile=" + archive);
  }

  /** Whether it is up and watching; before that no permit may be posted. */
  public boolean isReady() {
    return ready;
  }

  /** Whether it holds a connection of its own; else it takes the controller's when that is free. */
  public boolean hasOwnWay() {
    return ownWay;
  }

  /** Its process id. */
  public long pid() {
    return process.pid();
  }

  @Override
  public long step(long nowNanos) {
    if (!begun) {
      begun = true;
      startedNanos = nowNanos;
      nextBeatNanos = nowNanos;
      lastAnswerNanos = nowNanos;
    }
    try {
      if (nowNanos >= nextBeatNanos) {
        beat(nowNanos);
        nextBeatNanos = nowNanos + BEAT_NANOS;
      }
      listen(nowNanos);
    } catch (IOException e) {
      lose(nowNanos, "its pipe has closed");
    }
    if (!process.isAlive()) {
      lose(nowNanos, "it has ended with code " + process.exitValue());
    } else if (ready && nowNanos - lastAnswerNanos > ANSWER_NANOS) {
      lose(nowNanos, "it does not answer");
    } else if (!ready && nowNanos - startedNanos > START_NANOS) {
      lose(nowNanos, "it did not start in time");
    }
    if (lost) {
      return FINISHED;
    }
    return ready ? nextBeatNanos : Math.min(nextBeatNanos, nowNanos + LISTEN_NANOS);
  }

  private void beat(long nowNanos) throws IOException {
    if (nowNanos - keeperLastStepNanos.getAsLong() < LIMIT_NANOS) {
      toCompanion.write(CompanionTalk.BEAT);
      toCompanion.flush();
    }
  }

  private void listen(long nowNanos) throws IOException {
    while (fromCompanion.available() > 0) {
      int code = fromCompanion.read();
      lastAnswerNanos = nowNanos;
      if (code == CompanionTalk.OWN_WAY || code == CompanionTalk.WAY_WHEN_FREE) {
        ownWay = code == CompanionTalk.OWN_WAY;
        ready = true;
      } else if (code == CompanionTalk.ACTING) {
        latch.set(
            StopCause.LOOP_STALLED,
            nowNanos,
            "this program stood still for more than "
                + LIMIT_NANOS / 1_000_000
                + " ms, so the companion is driving the output off");
      }
    }
  }

  private void lose(long nowNanos, String why) {
    if (!lost) {
      lost = true;
      ready = false;
      latch.set(StopCause.COMPANION_LOST, nowNanos, "the companion process is lost: " + why);
    }
  }

  /** Lets the companion end without touching the supply; only when the output is proven off. */
  public void goodbye() {
    try {
      toCompanion.write(CompanionTalk.GOODBYE);
      toCompanion.close();
      if (process.waitFor(GOODBYE_SECONDS, TimeUnit.SECONDS)) {
        return;
      }
    } catch (IOException e) {
      // It is gone already, or will be: its pipe is closed.
      process.destroy();
      return;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    process.destroy();
  }

  /** Closes the pipe: a companion that was not told goodbye drives the output off and ends. */
  @Override
  public void close() {
    try {
      toCompanion.close();
    } catch (IOException e) {
      process.destroy();
    }
  }

  /** Also right inside a build tool, whose own class path is not that of this program. */
  static String classPath() throws IOException {
    ClassLoader loader = CompanionProcess.class.getClassLoader();
    if (!(loader instanceof URLClassLoader urls)) {
      return System.getProperty("java.class.path");
    }
    List<String> paths = new ArrayList<>();
    for (URL url : urls.getURLs()) {
      try {
        paths.add(Path.of(url.toURI()).toString());
      } catch (URISyntaxException | IllegalArgumentException e) {
        throw new IOException("the class path holds " + url + ", which is no file", e);
      }
    }
    return String.join(File.pathSeparator, paths);
  }
}
