package railglow.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import railglow.board.Board;
import railglow.board.DelicateParts;
import railglow.board.Rail;
import railglow.camera.CameraDescriptor;
import railglow.config.Bench;
import railglow.config.BenchFile;
import railglow.config.BoardFile;
import railglow.config.CameraDescriptorFile;
import railglow.config.ConfigException;
import railglow.config.LoadedBoard;
import railglow.config.MeasuredCamera;
import railglow.config.MeasuredCameraFile;
import railglow.config.SequenceFile;
import railglow.config.SupplyDescriptorFile;
import railglow.pulse.PulseSequence;
import railglow.pulse.Timeline;
import railglow.safety.Bound;
import railglow.safety.Envelope;
import railglow.safety.EnvelopeCheck;
import railglow.safety.InjectionLimits;
import railglow.safety.Protection;
import railglow.safety.Refusal;
import railglow.safety.SupplyFacts;
import railglow.supply.LimitContradictions;
import railglow.supply.OutputPlan;
import railglow.supply.SensePoint;
import railglow.supply.SupplyDescriptor;
import railglow.units.Quantity;
import railglow.units.Unit;

/**
 * Everything a run needs, read and checked before anything is opened.
 *
 * @param camera with what was measured of it, if anything, in place of its descriptor's figures
 * @param measured what is kept beside the bench file
 * @param files the board with its files; null when none was given
 * @param rail null when none was given
 * @param envelope the intersection of all limits
 * @param refusals why the sequence may not run; empty when it may
 * @param usedFiles role to file, to be copied into the run folder
 */
record RunSetup(
    Bench bench,
    SupplyDescriptor supply,
    CameraDescriptor camera,
    Optional<MeasuredCamera> measured,
    LoadedBoard files,
    Rail rail,
    PulseSequence sequence,
    Timeline timeline,
    Envelope envelope,
    OutputPlan outputPlan,
    List<Refusal> refusals,
    Map<String, Path> usedFiles) {
  private static final String COMMAND_LINE = "the command line";

  /**
   * @throws UserMistake naming what is missing or contradicts itself
   * @throws ConfigException naming every problem in a file
   */
  static RunSetup of(RunOptions options) throws UserMistake, ConfigException {
    Map<String, Path> used = new LinkedHashMap<>();
    Path benchPath = ShippedFiles.find(benchName(options), "instruments", "bench file");
    used.put("bench", benchPath);
    Bench bench = BenchFile.read(benchPath);
    used.put("supply", bench.supplyDescriptor());
    SupplyDescriptor supply = SupplyDescriptorFile.read(bench.supplyDescriptor());
    used.put("camera", bench.cameraDescriptor());
    CameraDescriptor described = CameraDescriptorFile.read(bench.cameraDescriptor());
    Optional<MeasuredCamera> measured = KeptMeasurements.of(benchPath, described);
    measured.ifPresent(any -> used.put("measured", MeasuredCameraFile.beside(benchPath)));
    CameraDescriptor camera = measured.map(m -> m.applied(described)).orElse(described);
    Path sequencePath = ShippedFiles.find(options.sequence, "sequences", "sequence");
    used.put("sequence", sequencePath);
    PulseSequence sequence = changed(SequenceFile.read(sequencePath), options);
    LoadedBoard files =
        boardName(options) == null
            ? null
            : BoardFile.read(ShippedFiles.find(boardName(options), "examples", "board file"));
    Rail rail = rail(files == null ? null : files.board(), options);
    Timeline timeline = Timeline.of(sequence);
    Envelope envelope = envelope(bench, rail, sequence, options);
    if (files != null) {
      PlaceOption.checkReflector(files.board(), camera.profile());
      envelope = rail == null ? envelope : withParts(envelope, files.board(), rail);
    }
    checkContradictions(bench, supply, camera);
    OutputPlan plan =
        OutputPlan.of(sequence.levelVolts(), sequence.maxAmperes(), supply)
            .sensedAt(bench.sensedAtBoard() ? SensePoint.BOARD : SensePoint.TERMINALS);
    SupplyFacts facts = supply.facts(bench.supplyChannel());
    List<Refusal> refusals =
        new ArrayList<>(
            EnvelopeCheck.refusals(
                timeline,
                envelope,
                bench.companion() ? facts : facts.without(Protection.COMPANION),
                bench.acceptedMissing()));
    refusals.addAll(plan.refusals(supply));
    blindToHeat(camera, envelope).ifPresent(refusals::add);
    return new RunSetup(
        bench,
        supply,
        camera,
        measured,
        files,
        rail,
        sequence,
        timeline,
        envelope,
        plan,
        List.copyOf(refusals),
        used);
  }

  /** A camera whose scale ends below the highest temperature allowed would never see it passed. */
  private static Optional<Refusal> blindToHeat(CameraDescriptor camera, Envelope envelope) {
    Bound allowed = envelope.maxCelsius();
    double end = camera.hottestCelsius();
    return allowed.value() < end || Double.isNaN(end) || Double.isInfinite(allowed.value())
        ? Optional.empty()
        : Optional.of(
            new Refusal(
                "the hottest pixel that " + allowed.origin() + " allows",
                allowed.value(),
                end,
                Unit.CELSIUS,
                "the end of the camera's scale",
                "lower 'hottest-allowed' below it, or use a wider range of the camera"));
  }

  RunSetup withBench(Bench newBench) {
    return new RunSetup(
        newBench,
        supply,
        camera,
        measured,
        files,
        rail,
        sequence,
        timeline,
        envelope,
        outputPlan,
        refusals,
        usedFiles);
  }

  /** Null when none was given. */
  Board board() {
    return files == null ? null : files.board();
  }

  String boardName() {
    return files == null ? "" : files.board().name();
  }

  String railName() {
    return rail == null ? "" : rail.name();
  }

  private static String benchName(RunOptions options) throws UserMistake {
    if (options.bench != null) {
      return options.bench;
    }
    if (options.simulated) {
      return "bench-simulated";
    }
    throw new UserMistake(
        "which bench? Give --bench FILE, or --simulated to try everything without hardware");
  }

  private static String boardName(RunOptions options) {
    if (options.withoutBoard) {
      return null;
    }
    return options.board == null && options.simulated ? "hx12" : options.board;
  }

  private static Rail rail(Board board, RunOptions options) throws UserMistake {
    String name =
        options.rail == null && options.simulated && options.board == null ? "3V3" : options.rail;
    if (name == null) {
      return null;
    }
    if (board == null) {
      return new Rail(name, Double.NaN, Double.NaN, java.util.Optional.empty());
    }
    return board
        .rail(name)
        .orElseThrow(
            () ->
                new UserMistake(
                    "board "
                        + board.name()
                        + " has no rail '"
                        + name
                        + "'; it has "
                        + board.rails().stream().map(Rail::name).toList()));
  }

  private static PulseSequence changed(PulseSequence sequence, RunOptions options)
      throws UserMistake {
    PulseSequence changed = sequence;
    if (options.levelVolts != null) {
      changed = changed.withLevelVolts(positive(options.levelVolts, "--level"));
    }
    if (options.currentLimitAmperes != null) {
      changed = changed.withMaxAmperes(positive(options.currentLimitAmperes, "--current-limit"));
    }
    if (options.cyclesAtMost != null) {
      if (options.cyclesAtMost < changed.minCycles()) {
        throw new UserMistake(
            "--cycles-at-most is "
                + options.cyclesAtMost
                + "; the sequence needs at least "
                + changed.minCycles());
      }
      changed = changed.withMaxCycles(options.cyclesAtMost);
    }
    return changed;
  }

  private static double positive(double value, String option) throws UserMistake {
    if (!(value > 0)) {
      throw new UserMistake(option + " must be above zero");
    }
    return value;
  }

  private static Envelope envelope(
      Bench bench, Rail rail, PulseSequence sequence, RunOptions options) throws UserMistake {
    Envelope envelope = bench.limits();
    try {
      envelope =
          envelope.and(
              rail == null
                  ? InjectionLimits.ofRail("(none named)", Double.NaN, Double.NaN)
                  : InjectionLimits.ofRail(
                      rail.name(), rail.nominalVolts(), rail.highestInjectionVolts()));
    } catch (IllegalArgumentException e) {
      throw new UserMistake(e.getMessage());
    }
    envelope = envelope.and(InjectionLimits.ofSequence(sequence));
    if (options.limitVolts != null) {
      envelope =
          envelope.withMaxVolts(positive(options.limitVolts, "--limit-voltage"), COMMAND_LINE);
    }
    if (options.limitAmperes != null) {
      envelope =
          envelope.withMaxAmperes(positive(options.limitAmperes, "--limit-current"), COMMAND_LINE);
    }
    if (options.limitWatts != null) {
      envelope = envelope.withMaxWatts(positive(options.limitWatts, "--limit-power"), COMMAND_LINE);
    }
    return envelope;
  }

  /** The most delicate parts on the rail rule. */
  private static Envelope withParts(Envelope envelope, Board board, Rail rail) {
    DelicateParts delicate = DelicateParts.on(board, rail);
    Envelope with = envelope;
    if (delicate.highestVolts().isPresent()) {
      with =
          with.withMaxVolts(
              delicate.highestVolts().get().value(), origin(delicate.highestVolts().get()));
    }
    if (delicate.mostAmperes().isPresent()) {
      with =
          with.withMaxAmperes(
              delicate.mostAmperes().get().value(), origin(delicate.mostAmperes().get()));
    }
    return with;
  }

  private static String origin(DelicateParts.Bears bears) {
    return bears.reference() + ", the most delicate part on the rail (" + bears.why() + ")";
  }

  /** Limits that contradict each other, whatever is to be run. */
  static void checkContradictions(Bench bench, SupplyDescriptor supply, CameraDescriptor camera)
      throws UserMistake {
    checkChannel(bench, supply);
    List<String> found =
        new ArrayList<>(LimitContradictions.of(bench.limits(), supply, bench.supplyChannel()));
    double period = 1 / camera.framesPerSecond();
    Bound age = bench.limits().maxFrameAgeSeconds();
    if (age.value() <= period) {
      found.add(
          "a camera frame may be at most "
              + Quantity.format(age.value(), Unit.SECOND)
              + " old ("
              + age.origin()
              + "), but one comes every "
              + Quantity.format(period, Unit.SECOND)
              + " (camera "
              + camera.name()
              + "): raise 'frame-age'");
    }
    if (!found.isEmpty()) {
      throw new UserMistake("limits that contradict each other: " + String.join("; ", found));
    }
  }

  private static void checkChannel(Bench bench, SupplyDescriptor supply) throws UserMistake {
    try {
      supply.channel(bench.supplyChannel());
    } catch (IllegalArgumentException e) {
      throw new UserMistake("bench " + bench.name() + ": " + e.getMessage());
    }
  }
}
