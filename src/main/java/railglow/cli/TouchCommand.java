package railglow.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import railglow.config.ConfigException;
import railglow.config.SequenceFile;
import railglow.run.handsfree.SensingLevel;
import railglow.run.handsfree.TouchLabels;
import railglow.safety.Refusal;
import railglow.sim.BenchPorts;
import railglow.sim.SimulatedBench;
import railglow.sim.hand.HandScript;
import railglow.time.Pause;
import railglow.time.SystemClock;

/** Hands-free: one touch of a probe after another. */
@Command(
    name = "touch",
    mixinStandardHelpOptions = true,
    description = {
      "Hands-free hunting with a probe: holds a harmless sensing level until the probe makes a steady"
          + " contact, runs, tells by sound and in words what was found, and waits for the next"
          + " point; compares the points at the end.",
      "The output is proven off between touches. A lost contact ends the touch at once. Ctrl-C stops"
          + " in order."
    })
final class TouchCommand implements Callable<Integer> {
  private static final List<String> DEMO =
      List.of(
          "touch:C9@4s..14s",
          "slip:C9=300mohm@14s..15.6s",
          "touch:C9@15.6s..42s",
          "bounce:C41@46s..52s",
          "touch:C41=1.5ohm@52s..88s",
          "touch:C37@92s..104s");
  private static final int DEMO_TOUCHES = 3;
  private static final double AFTER_THE_HAND_SECONDS = 6;
  private static final double LOUDEST_PERCENT = 100;
  private final Terminal terminal;
  @Spec private CommandSpec spec;
  @Mixin private RunOptions options = new RunOptions();
  @Mixin private EnteredOptions entered = new EnteredOptions();
  @Mixin private LiveView.Options live = new LiveView.Options();

  @Option(
      names = "--sensing-level",
      paramLabel = "VOLTS",
      converter = Quantities.Volts.class,
      description =
          "level while the probe is in the air, at most 100 mV (default: the sequence's, or 50 mV or"
              + " a tenth of the voltage limit)")
  private Double sensingVolts;

  @Option(
      names = "--sensing-current",
      paramLabel = "AMPERES",
      converter = Quantities.Amperes.class,
      description =
          "current limit with it, at most 100 mA (default: the sequence's, or 20 mA or a tenth of the"
              + " current limit)")
  private Double sensingAmperes;

  @Option(
      names = "--labels",
      paramLabel = "WORDS",
      description =
          "names of the points in order, e.g. input,bulk,far-end, or 'numbers' (default: prepared"
              + " words); a digit typed while listening chooses the next one by its number")
  private String labels;

  @Option(
      names = "--touches",
      paramLabel = "N",
      description = "end after so many touches (default: no end; 3 with --simulated)")
  private Integer touches;

  @Option(
      names = "--volume",
      paramLabel = "PERCENT",
      description = "of the sounds, 0 to 100 (default: 50)")
  private double volumePercent = 50;

  @Option(names = "--silent", description = "no sounds and no bell")
  private boolean silent;

  @Option(names = "--hear", description = "play and print every sound, and end")
  private boolean hear;

  @Option(names = "--no-keys", description = "don't listen to the standard input")
  private boolean noKeys;

  @Option(
      names = "--hand",
      paramLabel = "MOVE",
      description = "with --simulated: what the simulated hand does, as in 'simulate --hand'")
  private List<String> moves = new ArrayList<>();

  @Mixin private SimulatedBoardOptions simulatedBoard = new SimulatedBoardOptions();

  TouchCommand(Terminal terminal) {
    this.terminal = terminal;
    options.sequence = "touch";
  }

  @Override
  public Integer call() throws Exception {
    if (!(volumePercent >= 0 && volumePercent <= LOUDEST_PERCENT)) {
      throw new UserMistake("--volume is " + volumePercent + "; 0 to 100 is possible");
    }
    double volume = silent ? 0 : volumePercent / LOUDEST_PERCENT;
    if (hear) {
      try (TouchVoice voice = new TouchVoice(terminal, volume, TouchScreen.NONE)) {
        voice.all();
      }
      return ExitCode.DONE;
    }
    TouchLabels names = names();
    AsLastTime.complete(options, terminal);
    RunSetup setup = entered.on(RunSetup.of(options));
    SensingLevel level = level(setup);
    List<Refusal> refusals = new ArrayList<>(setup.refusals());
    refusals.addAll(
        level.refusals(
            setup.envelope(),
            setup.supply().channel(setup.bench().supplyChannel()),
            "supply " + setup.supply().name()));
    if (!refusals.isEmpty()) {
      PlanText.refusals(refusals).forEach(terminal::complain);
      return ExitCode.REFUSED;
    }
    AsLastTime.remember(options);
    if (!options.simulated) {
      return run(setup, level, names, volume, new TouchStops(SystemClock.INSTANCE));
    }
    HandScript hand = SimulateCommand.hand(moves.isEmpty() ? DEMO : moves);
    TouchStops stops = new TouchStops(SystemClock.INSTANCE);
    try (SimulatedBench bench =
        SimulatedBench.start(
            simulatedBoard.scenario().withHand(hand), BenchPorts.ANY, SystemClock.INSTANCE)) {
      endWith(hand, stops);
      return run(SimulatedBenches.joined(setup, bench), level, names, volume, stops);
    }
  }

  /** Nobody waits for a simulated hand that has nothing more to do. */
  private static void endWith(HandScript hand, TouchStops stops) {
    long nanos = Math.round((hand.endSeconds() + AFTER_THE_HAND_SECONDS) * 1e9);
    Thread waiting =
        new Thread(
            () -> {
              Pause.nanos(nanos);
              stops.end("the simulated hand has done all it was told");
            },
            "simulated-hand");
    waiting.setDaemon(true);
    waiting.start();
  }

  private int run(
      RunSetup setup, SensingLevel level, TouchLabels names, double volume, TouchStops stops)
      throws Exception {
    int most = touches != null ? touches : options.simulated ? DEMO_TOUCHES : Integer.MAX_VALUE;
    try (TouchScreen screen = screen(setup, volume, stops);
        TouchVoice voice = new TouchVoice(terminal, volume, screen)) {
      return new Touch(
              terminal,
              voice,
              screen,
              stops,
              setup,
              level,
              new Touch.TouchSettings(
                  options.runs, HuntCommand.commandLine(spec), names, most, !noKeys))
          .run();
    }
  }

  private TouchScreen screen(RunSetup setup, double volume, TouchStops stops) throws UserMistake {
    if (!live.wanted) {
      return TouchScreen.NONE;
    }
    return new TouchScreen(
        Optional.of(
            LiveView.serve(
                live,
                LiveView.facts(setup, volume),
                SystemClock.INSTANCE,
                terminal,
                stops::request)));
  }

  private TouchLabels names() throws UserMistake {
    if (touches != null && touches < 1) {
      throw new UserMistake("--touches is " + touches + "; at least 1 is wanted");
    }
    try {
      return labels == null ? TouchLabels.USUAL : TouchLabels.parse(labels);
    } catch (IllegalArgumentException e) {
      throw new UserMistake("--labels: " + e.getMessage());
    }
  }

  private SensingLevel level(RunSetup setup) throws ConfigException {
    Optional<SensingLevel> given = SequenceFile.sensing(setup.usedFiles().get("sequence"));
    SensingLevel usual = given.orElseGet(() -> SensingLevel.within(setup.envelope()));
    return new SensingLevel(
        sensingVolts == null ? usual.volts() : sensingVolts,
        sensingAmperes == null ? usual.amperes() : sensingAmperes);
  }
}
