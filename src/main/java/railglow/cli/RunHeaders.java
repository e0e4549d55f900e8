package railglow.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import railglow.camera.CameraProfile;
import railglow.camera.FrameSource;
import railglow.journal.CameraFacts;
import railglow.journal.RunFolder;
import railglow.journal.RunHeader;
import railglow.journal.SampleType;
import railglow.pulse.CycleWindow;
import railglow.pulse.PulseSequence;
import railglow.run.ladder.LadderPlan;
import railglow.safety.Envelope;
import railglow.time.WallStamp;

/**
 * The headers of records made at a bench.
 *
 * @param copies role to the path inside the run folder
 */
record RunHeaders(
    RunSetup setup,
    RunFolder folder,
    OpenedSupply supply,
    Map<String, String> copies,
    List<String> commandLine) {

  /** Of a pulsed run. */
  RunHeader pulsed(WallStamp now, long startNanos, FrameSource source) {
    List<CycleWindow> cycles = new ArrayList<>();
    for (CycleWindow cycle : setup.timeline().cycles()) {
      cycles.add(cycle.shifted(startNanos));
    }
    return header(
        now, startNanos, setup.sequence(), SampleType.of(source.newSamples()).word(), cycles);
  }

  /** Of a ladder: no cycles, and the time each level is held in the place of a period. */
  RunHeader ladder(WallStamp now, long startNanos, LadderPlan plan) {
    PulseSequence like = setup.sequence();
    int levels = plan.levelsVolts().size();
    PulseSequence ladder =
        new PulseSequence(
            "ladder",
            levels + " levels, no pulses; the period is how long each is held.",
            plan.highestVolts(),
            setup.outputPlan().limitAmperes(),
            plan.dwellSeconds(),
            levels,
            levels,
            false,
            0,
            0,
            like.familyWiseError(),
            like.maxCelsius(),
            like.maxRiseKelvin());
    SampleType type = setup.camera().isFloat() ? SampleType.FLOAT32 : SampleType.UINT16;
    return header(now, startNanos, ladder, type.word(), List.of());
  }

  /** Of a log: no cycles; the supply may be one that is only read, or there may be none. */
  RunHeader log(WallStamp now, long startNanos, LogSetup log) {
    SampleType type = setup.camera().isFloat() ? SampleType.FLOAT32 : SampleType.UINT16;
    return header(
        RunHeader.LOG_FORMAT,
        log.envelope(),
        log.plan().injects() ? supply.protections() : List.of(),
        now,
        startNanos,
        log.steady(),
        type.word(),
        List.of());
  }

  private RunHeader header(
      WallStamp now,
      long startNanos,
      PulseSequence sequence,
      String samples,
      List<CycleWindow> cycles) {
    return header(
        RunHeader.CURRENT_FORMAT,
        setup.envelope(),
        supply.protections(),
        now,
        startNanos,
        sequence,
        samples,
        cycles);
  }

  private RunHeader header(
      int format,
      Envelope envelope,
      List<String> protections,
      WallStamp now,
      long startNanos,
      PulseSequence sequence,
      String samples,
      List<CycleWindow> cycles) {
    CameraProfile camera = setup.camera().profile();
    return new RunHeader(
        format,
        VersionProvider.version(),
        now.at(startNanos),
        startNanos,
        folder.name(),
        setup.boardName(),
        setup.railName(),
        sequence,
        envelope,
        new CameraFacts(
            camera.name(),
            camera.width(),
            camera.height(),
            samples,
            camera.framesPerSecond(),
            camera.kelvinPerCount(),
            camera.celsiusAtZero(),
            camera.noiseKelvin(),
            camera.latencySeconds(),
            camera.timeConstantSeconds(),
            setup.camera().numbersAreCounted(),
            false,
            setup.camera().shutterSettlingSeconds(),
            setup.camera().saturationValue()),
        supply == null ? "" : supply.identity(),
        setup.bench().sensedAtBoard() ? 0 : setup.bench().leadOhms(),
        protections,
        Detection.settings(sequence, camera),
        cycles,
        new LinkedHashMap<>(copies),
        commandLine);
  }
}
