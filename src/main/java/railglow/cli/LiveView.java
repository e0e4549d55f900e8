package railglow.cli;

import java.io.IOException;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.util.List;
import java.util.function.Consumer;
import picocli.CommandLine.Option;
import railglow.journal.Findings;
import railglow.live.LiveDoor;
import railglow.live.LiveFacts;
import railglow.live.LivePage;
import railglow.live.LiveStage;
import railglow.run.RunEnding;
import railglow.run.RunWatcher;
import railglow.run.RunWatchers;
import railglow.safety.StopCause;
import railglow.safety.StopLatch;
import railglow.time.MonotonicClock;

/** The live page of a run, if it is wanted. */
final class LiveView implements AutoCloseable {
  private static final int HIGHEST_PORT = 65_535;

  /** How the page is asked for. */
  static final class Options {
    @Option(
        names = "--live",
        description =
            "serve a page on this machine that shows the run as it goes, with STOP by click"
                + " and by space bar")
    boolean wanted;

    @Option(
        names = "--live-port",
        paramLabel = "PORT",
        description = "its port, or the next free one (default: 8075); 0 for any")
    int port = LiveDoor.USUAL_PORT;

    @Option(
        names = "--live-address",
        paramLabel = "ADDRESS",
        description =
            "serve it on this address of this machine, for a phone on the bench; everybody on that"
                + " network who has the page's address can watch and stop, and nothing is encrypted"
                + " (default: this machine only)")
    String address;
  }

  private final LivePage page;

  private LiveView(LivePage page) {
    this.page = page;
  }

  /** Starts the page and says where it is, unless it is not wanted. */
  static LiveView start(
      Options options, RunSetup setup, StopLatch latch, MonotonicClock clock, Terminal terminal)
      throws UserMistake {
    return new LiveView(
        options.wanted
            ? serve(
                options,
                facts(setup, 0),
                clock,
                terminal,
                who -> latch.set(StopCause.OPERATOR_REQUEST, clock.nanos(), who))
            : null);
  }

  static LiveFacts facts(RunSetup setup, double soundVolume) {
    return new LiveFacts(
        setup.boardName(),
        setup.railName(),
        setup.sequence().name() + ", " + PlanText.pulses(setup.sequence()),
        setup.sequence().familyWiseError(),
        setup.envelope(),
        setup.camera().profile().celsiusAtZero(),
        setup.camera().profile().kelvinPerCount(),
        soundVolume);
  }

  /**
   * Starts a page and says where it is.
   *
   * @throws UserMistake when it can't be served there
   */
  static LivePage serve(
      Options options,
      LiveFacts facts,
      MonotonicClock clock,
      Terminal terminal,
      Consumer<String> askStop)
      throws UserMistake {
    LiveDoor door = door(options);
    try {
      LivePage page = LivePage.start(facts, door, clock, askStop);
      terminal.say("Live page  " + page.address());
      if (options.port != 0 && page.port() != options.port) {
        terminal.say("           (port " + options.port + " is taken)");
      }
      if (!door.isLoopback()) {
        terminal.say(
            "           others on this network who have that address can watch and stop; not"
                + " encrypted");
      }
      return page;
    } catch (IOException e) {
      throw new UserMistake("the live page can't be served: " + e.getMessage());
    }
  }

  private static LiveDoor door(Options options) throws UserMistake {
    if (options.port < 0 || options.port > HIGHEST_PORT) {
      throw new UserMistake("--live-port is " + options.port + "; 0 to 65535 is possible");
    }
    if (options.address == null) {
      return LiveDoor.ofThisMachine(options.port);
    }
    String asked = "--live-address " + options.address;
    try {
      InetAddress address = InetAddress.getByName(options.address);
      if (address.isAnyLocalAddress()) {
        throw new UserMistake(
            asked + " means every network at once; name one address of this machine");
      }
      if (!(address instanceof Inet4Address four)) {
        throw new UserMistake(asked + " is an IPv6 address; give one like 192.168.1.5");
      }
      if (NetworkInterface.getByInetAddress(four) == null && !four.isLoopbackAddress()) {
        throw new UserMistake(asked + " is no address of this machine; 'ip address' lists them");
      }
      return new LiveDoor(four, options.port);
    } catch (IOException e) {
      throw new UserMistake(asked + " is no address: give it as 192.168.1.5");
    }
  }

  RunWatcher beside(RunWatcher other) {
    if (page == null) {
      return other;
    }
    page.onStage(LiveStage.MEASURING, "", "");
    return new RunWatchers(List.of(page, other));
  }

  /** What was found, unless a limit has ended the run: that stays what is read first. */
  void found(RunEnding ending, Findings findings) {
    if (page != null && ending.stop().cause().kind() != StopCause.Kind.LIMIT) {
      page.onStage(stage(findings.verdict()), "", findings.headline());
    }
  }

  private static LiveStage stage(Findings.Verdict verdict) {
    return switch (verdict) {
      case HEAT_FOUND -> LiveStage.HEAT_FOUND;
      case NOTHING_FOUND -> LiveStage.NO_HEAT;
      default -> LiveStage.UNDECIDED;
    };
  }

  @Override
  public void close() {
    if (page != null) {
      page.close();
    }
  }
}
