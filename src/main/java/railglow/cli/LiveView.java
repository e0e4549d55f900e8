package railglow.cli;

import java.io.IOException;
import java.util.List;
import picocli.CommandLine.Option;
import railglow.live.LiveFacts;
import railglow.live.LivePage;
import railglow.run.RunWatcher;
import railglow.run.RunWatchers;
import railglow.safety.StopCause;
import railglow.safety.StopLatch;
import railglow.time.MonotonicClock;

/** The live page of a run, if it is wanted. */
final class LiveView implements AutoCloseable {
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
    int port = LivePage.USUAL_PORT;
  }

  private final LivePage page;

  private LiveView(LivePage page) {
    this.page = page;
  }

  /** Starts the page and says where it is, unless it is not wanted. */
  static LiveView start(
      Options options, RunSetup setup, StopLatch latch, MonotonicClock clock, Terminal terminal)
      throws UserMistake {
    if (!options.wanted) {
      return new LiveView(null);
    }
    LiveFacts facts =
        new LiveFacts(
            setup.boardName(),
            setup.railName(),
            setup.sequence().name() + ", " + PlanText.pulses(setup.sequence()),
            setup.sequence().familyWiseError(),
            setup.envelope(),
            setup.camera().profile().celsiusAtZero(),
            setup.camera().profile().kelvinPerCount());
    try {
      LivePage page =
          LivePage.start(
              facts,
              options.port,
              who -> latch.set(StopCause.OPERATOR_REQUEST, clock.nanos(), who));
      terminal.say("Live page  " + page.address());
      if (options.port != 0 && page.port() != options.port) {
        terminal.say("           (port " + options.port + " is taken)");
      }
      return new LiveView(page);
    } catch (IOException e) {
      throw new UserMistake("the live page can't be served: " + e.getMessage());
    }
  }

  RunWatcher beside(RunWatcher other) {
    return page == null ? other : new RunWatchers(List.of(page, other));
  }

  @Override
  public void close() {
    if (page != null) {
      page.close();
    }
  }
}
