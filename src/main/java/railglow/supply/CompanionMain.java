package railglow.supply;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.function.Consumer;
import railglow.link.Link;
import railglow.link.LinkException;
import railglow.link.PortLink;
import railglow.link.Transcript;
import railglow.time.MonotonicClock;
import railglow.time.StepRunner;

/**
 * The companion process: it holds its own way to the supply and drives the output off when the
 * controller dies or stops beating. It does nothing to the supply before that, and does not even
 * connect before the first beat: some supplies take one connection, and that is the controller's.
 */
public final class CompanionMain {
  /** The controller said goodbye; nothing was touched. */
  public static final int LEFT_ALONE = 0;

  /** Driven off, proven. */
  public static final int DROVE_OFF = 4;

  /** Driven off, not proven. */
  public static final int NOT_PROVEN = 5;

  private static final long PATIENCE_NANOS = 60_000_000_000L;
  private static final long OPEN_NANOS = 2_000_000_000L;
  private static final long LONGEST_NANOS = Long.MAX_VALUE / 4;

  /** Makes a descriptor of its text. */
  public interface DescriptorReader {
    /**
     * @throws IOException when the text is no descriptor
     */
    SupplyDescriptor read(String text) throws IOException;
  }

  private CompanionMain() {}

  /**
   * Runs until the controller says goodbye, or until the output is off after its death. Signals
   * that reach the whole process group, such as Ctrl-C, do not end it before that.
   *
   * @param args the supply's address, its channel, the limit in milliseconds, the controller's
   *     process id
   * @param in from the controller
   * @param out to the controller
   * @param operator takes what is to be said to the operator when the controller can't
   * @return the exit code
   */
  public static int run(
      String[] args,
      InputStream in,
      OutputStream out,
      Consumer<String> operator,
      DescriptorReader descriptors,
      MonotonicClock clock)
      throws IOException {
    if (args.length != 4) {
      throw new IllegalArgumentException(
          "the companion is started by the program itself: ADDRESS CHANNEL MILLISECONDS PROCESS");
    }
    SupplyAddress address = SupplyAddress.parse(args[0]);
    int channel = Integer.parseInt(args[1]);
    long limitNanos = Long.parseLong(args[2]) * 1_000_000;
    long controller = Long.parseLong(args[3]);
    SupplyDescriptor descriptor = descriptors.read(CompanionTalk.readText(in));
    Link link =
        new PortLink(
            address.port(descriptor.line().orElse(LineManners.USUAL), clock),
            descriptor.wire().link(),
            clock,
            Transcript.NONE);
    int first = in.read();
    if (first != CompanionTalk.BEAT) {
      return LEFT_ALONE; // the controller never came to the point where the output may go on
    }
    try (Supply supply = ScpiSupply.unopened(link, descriptor, channel)) {
      CompanionAnswers answers = new CompanionAnswers(out);
      CompanionWatch watch =
          new CompanionWatch(
              supply, limitNanos, PATIENCE_NANOS, clock, answers, () -> end(controller), operator);
      StepRunner runner = StepRunner.lasting("companion-watch", watch, clock, (name, e) -> {});
      Thread untilDone = new Thread(() -> runner.awaitEnd(PATIENCE_NANOS * 2), "companion-signal");
      Runtime.getRuntime().addShutdownHook(untilDone);
      boolean ownWay = hasOwnWay(address, link);
      answers.accept(ownWay ? CompanionTalk.OWN_WAY : CompanionTalk.WAY_WHEN_FREE);
      Thread reader = new Thread(() -> listen(in, watch), "companion-pipe");
      reader.setDaemon(true);
      runner.start();
      reader.start();
      runner.awaitEnd(LONGEST_NANOS);
      return switch (watch.ending()) {
        case GOODBYE -> LEFT_ALONE;
        case PROVEN_OFF -> DROVE_OFF;
        case NOT_PROVEN, NOT_YET -> NOT_PROVEN;
      };
    }
  }

  private static void listen(InputStream in, CompanionWatch watch) {
    int code;
    do {
      try {
        code = in.read();
      } catch (IOException e) {
        code = -1;
      }
      watch.heard(code);
    } while (code >= 0 && code != CompanionTalk.GOODBYE);
  }

  /** Only a connection of its own can be held beside the controller's; a device can't. */
  private static boolean hasOwnWay(SupplyAddress address, Link link) {
    if (!address.isConnection()) {
      return false;
    }
    try {
      link.resynchronise(OPEN_NANOS);
      return true;
    } catch (LinkException e) {
      return false;
    }
  }

  private static void end(long process) {
    ProcessHandle.of(process).ifPresent(ProcessHandle::destroyForcibly);
  }
}
