package railglow.cli;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import railglow.sim.BenchPorts;
import railglow.sim.BenchScenario;
import railglow.sim.BenchScenarios;
import railglow.sim.BenchSpeed;
import railglow.sim.SimulatedBench;
import railglow.sim.fault.FaultSpec;
import railglow.sim.hand.HandMove;
import railglow.sim.hand.HandScript;
import railglow.time.SystemClock;

/** Serves the simulated bench until it is stopped. */
@Command(
    name = "simulate",
    mixinStandardHelpOptions = true,
    description = {
      "Serves the simulated bench: the supply as SCPI on a socket (and a pseudo-terminal), the camera"
          + " as raw frames on a socket. Ends with Ctrl-C.",
      "Only this machine can reach it."
    })
final class SimulateCommand implements Callable<Integer> {
  private static final double SPEED_SECONDS = 20;
  private final Terminal terminal;

  @Option(
      names = "--scenario",
      paramLabel = "NAME",
      description = "which board (default: hx12); an unknown name lists them")
  private String scenario = "hx12";

  @Option(
      names = "--supply-port",
      paramLabel = "PORT",
      description = "TCP port of the supply, 0 for any that is free (default: 5025)")
  private int supplyPort = 5025;

  @Option(
      names = "--camera-port",
      paramLabel = "PORT",
      description = "TCP port of the camera, 0 for any that is free (default: 5600)")
  private int cameraPort = 5600;

  @Option(
      names = "--terminal",
      paramLabel = "PATH",
      description = "serve the supply on this terminal device too, or make a pseudo-terminal there")
  private Path device;

  @Option(
      names = "--fault",
      paramLabel = "FAULT",
      description = "a fault and when it comes, e.g. runaway@12s; may be given several times")
  private List<String> faults = new ArrayList<>();

  @Option(
      names = "--hand",
      paramLabel = "MOVE",
      description =
          "a hand holds the probe instead of clips, e.g. touch:C9@3s..9s, bounce:C9@9s..9.3s"
              + " or slip:C9=20mohm@2s..3s, from when the output is first on; may be given several"
              + " times")
  private List<String> moves = new ArrayList<>();

  @Option(names = "--seed", paramLabel = "N", description = "seed of all noise (default: 1)")
  private long seed = 1;

  @Option(
      names = "--truth",
      paramLabel = "FILE",
      description = "write what truly happened, one JSON object a line")
  private Path truth;

  @Option(
      names = "--frames-to-stdout",
      description =
          "write the camera's frames to the standard output too, and all words to the error"
              + " output: the bench as a child process of the program that reads it")
  private boolean framesToStdout;

  @Option(
      names = "--measure-speed",
      description = "say how much faster than real time the bench is in memory, and end")
  private boolean measureSpeed;

  @Mixin private SimulatedWire supplyWire = new SimulatedWire();

  SimulateCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws Exception {
    BenchScenario chosen = scenario(scenario, faults).withSeed(seed);
    chosen = chosen.withSupply(supplyWire.applied(chosen.supply()));
    if (!moves.isEmpty()) {
      chosen = chosen.withHand(hand(moves));
    }
    if (measureSpeed) {
      return sayItsSpeed(chosen);
    }
    BenchPorts ports = new BenchPorts(supplyPort, cameraPort, Optional.ofNullable(device));
    try (SimulatedBench bench = start(chosen, ports)) {
      if (truth != null) {
        bench.writeTruth(truth);
      }
      CountDownLatch ended = new CountDownLatch(1);
      Runtime.getRuntime().addShutdownHook(new Thread(() -> end(bench, ended), "stop-signal"));
      say("Simulated bench '" + chosen.name() + "': " + chosen.description());
      say("Supply     " + SimulatedBenches.supplyAddress(bench));
      if (device != null) {
        say("Supply     serial:" + device);
      }
      say("Camera     " + SimulatedBenches.cameraAddress(bench));
      if (framesToStdout) {
        bench.sendFramesTo(System.out);
      }
      say("Ready. Ctrl-C ends it.");
      ended.await();
    }
    return ExitCode.DONE;
  }

  private void say(String line) {
    if (framesToStdout) {
      terminal.complain(line);
    } else {
      terminal.say(line);
    }
  }

  private int sayItsSpeed(BenchScenario chosen) {
    double ratio =
        BenchSpeed.timesRealTime(
            chosen, SPEED_SECONDS, ManagementFactory.getThreadMXBean()::getCurrentThreadCpuTime);
    terminal.say(
        String.format(
            Locale.ROOT,
            "%d x %d at %.0f Hz: %.1f times real time on one core, in memory",
            chosen.camera().width(),
            chosen.camera().height(),
            chosen.camera().framesPerSecond(),
            ratio));
    return ExitCode.DONE;
  }

  /**
   * A scenario by name with faults.
   *
   * @throws UserMistake naming what there is
   */
  static BenchScenario scenario(String name, List<String> faults) throws UserMistake {
    BenchScenario chosen =
        BenchScenarios.named(name)
            .orElseThrow(
                () ->
                    new UserMistake(
                        "there is no scenario '"
                            + name
                            + "'; there are "
                            + BenchScenarios.names()));
    List<FaultSpec> parsed = new ArrayList<>();
    for (String fault : faults) {
      try {
        parsed.add(FaultSpec.parse(fault));
      } catch (IllegalArgumentException e) {
        throw new UserMistake("--fault " + fault + ": " + e.getMessage());
      }
    }
    return parsed.isEmpty() ? chosen : chosen.withFaults(parsed);
  }

  /**
   * A hand's moves.
   *
   * @throws UserMistake naming the move that can't be read
   */
  static HandScript hand(List<String> moves) throws UserMistake {
    List<HandMove> parsed = new ArrayList<>();
    for (String move : moves) {
      try {
        parsed.add(HandMove.parse(move));
      } catch (IllegalArgumentException e) {
        throw new UserMistake("--hand " + move + ": " + e.getMessage());
      }
    }
    return new HandScript(parsed);
  }

  private static SimulatedBench start(BenchScenario scenario, BenchPorts ports) throws UserMistake {
    try {
      return SimulatedBench.start(scenario, ports, SystemClock.INSTANCE);
    } catch (IOException e) {
      throw new UserMistake(e.getMessage());
    }
  }

  private static void end(SimulatedBench bench, CountDownLatch ended) {
    bench.close();
    ended.countDown();
  }
}
