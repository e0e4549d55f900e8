package railglow.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import railglow.board.places.Place;
import railglow.board.places.PlacePixels;
import railglow.camera.CameraProfile;
import railglow.config.ConfigException;
import railglow.journal.FrameStoreWriter;
import railglow.journal.SampleType;
import railglow.pulse.PulseSequence;
import railglow.pulse.Timeline;
import railglow.run.logging.Condition;
import railglow.run.logging.LogPlan;
import railglow.safety.Envelope;
import railglow.safety.EnvelopeCheck;
import railglow.safety.Protection;
import railglow.safety.Refusal;
import railglow.safety.SupplyFacts;

/**
 * Everything a log needs, read and checked before anything is opened.
 *
 * @param run bench, board and limits as for any run
 * @param steady what is held, as a sequence without cycles
 * @param envelope of the injection; without one only how old frames may be
 * @param refusals why the injection may not be; empty when it may, or there is none
 */
record LogSetup(
    RunSetup run, LogPlan plan, PulseSequence steady, Envelope envelope, List<Refusal> refusals) {
  private static final double LONGEST_INJECTION_SECONDS = 600;
  private static final double REST_SECONDS = 0.5;

  /** Room that the disk must have at least for a log that ends only when stopped. */
  private static final double LEAST_ROOM_SECONDS = 600;

  private static final double MOST_BEFORE_SECONDS = 30;

  static LogSetup of(LogOptions options, Terminal terminal) throws UserMistake, ConfigException {
    check(options);
    RunOptions usual = options.forSetup();
    AsLastTime.complete(usual, terminal);
    RunSetup run = RunSetup.of(usual);
    List<PlacePixels> places = places(options, run);
    boolean injects = options.levelVolts != null;
    double longest = seconds(options.durationSeconds, injects);
    LogPlan plan =
        new LogPlan(
            injects ? options.levelVolts : Double.NaN,
            options.leadInSeconds,
            longest,
            seconds(options.waitSeconds, injects),
            options.beforeSeconds,
            condition("--start-on", options.startOn, List.of()),
            condition("--stop-on", options.stopOn, names(places)),
            conditions(options.markOn, names(places)),
            places);
    PulseSequence steady = steady(run.sequence(), plan, injects);
    Envelope limits = run.envelope();
    Envelope ages =
        Envelope.OPEN
            .withMaxFrameAgeSeconds(
                limits.maxFrameAgeSeconds().value(), limits.maxFrameAgeSeconds().origin())
            .withMaxReadingAgeSeconds(
                limits.maxReadingAgeSeconds().value(), limits.maxReadingAgeSeconds().origin());
    return new LogSetup(
        run,
        plan,
        steady,
        injects ? limits : ages,
        injects ? refusals(run, steady, plan) : List.of());
  }

  LogSetup withRun(RunSetup newRun) {
    return new LogSetup(newRun, plan, steady, envelope, refusals);
  }

  /** The most that the log can write; of one that ends only when stopped, for ten minutes. */
  long plannedBytes() {
    double kept = plan.startOn().isPresent() ? plan.beforeSeconds() : plan.leadInSeconds();
    double seconds =
        Double.isInfinite(plan.longestSeconds())
            ? LEAST_ROOM_SECONDS
            : kept + plan.longestSeconds() + REST_SECONDS;
    return bytes(seconds);
  }

  long bytesPerMinute() {
    return bytes(60);
  }

  private long bytes(double seconds) {
    CameraProfile camera = run.camera().profile();
    return FrameStoreWriter.plannedBytes(
        run.camera().isFloat() ? SampleType.FLOAT32 : SampleType.UINT16,
        camera.width(),
        camera.height(),
        Math.round(seconds * camera.framesPerSecond()));
  }

  private static double seconds(Double given, boolean injects) {
    return given != null ? given : injects ? LONGEST_INJECTION_SECONDS : Double.POSITIVE_INFINITY;
  }

  private static void check(LogOptions options) throws UserMistake {
    if (options.levelVolts != null && options.watchSupply) {
      throw new UserMistake(
          "--level and --watch-supply exclude each other: who drives the supply?");
    }
    if ((options.levelVolts == null) != (options.currentLimitAmperes == null)) {
      throw new UserMistake("a steady injection needs both --level and --current-limit");
    }
    inRange("--duration", options.durationSeconds, 1, 100 * 3600.0);
    inRange("--lead-in", options.leadInSeconds, 0.5, 600);
    inRange("--wait", options.waitSeconds, 1, 100 * 3600.0);
    inRange("--before", options.beforeSeconds, 0.2, MOST_BEFORE_SECONDS);
    if (options.startOn == null && options.waitSeconds != null) {
      throw new UserMistake("--wait is for --start-on, which is not given");
    }
  }

  private static void inRange(String option, Double seconds, double low, double high)
      throws UserMistake {
    if (seconds != null && !(seconds >= low && seconds <= high)) {
      throw new UserMistake(
          String.format(
              java.util.Locale.ROOT,
              "%s is %s s; allowed is %s s to %s s",
              option,
              plain(seconds),
              plain(low),
              plain(high)));
    }
  }

  private static String plain(double value) {
    return new java.math.BigDecimal(Double.toString(value)).stripTrailingZeros().toPlainString();
  }

  private static List<PlacePixels> places(LogOptions options, RunSetup run) throws UserMistake {
    List<Place> all = new ArrayList<>();
    if (run.files() != null) {
      all.addAll(run.files().places());
    }
    all.addAll(PlaceOption.parse(options.places, run.board()));
    return PlaceOption.pixels(
        all, run.board(), run.camera().profile().width(), run.camera().profile().height());
  }

  private static List<String> names(List<PlacePixels> places) {
    return places.stream().map(PlacePixels::name).toList();
  }

  private static Optional<Condition> condition(String option, String text, List<String> places)
      throws UserMistake {
    if (text == null) {
      return Optional.empty();
    }
    try {
      return Optional.of(Condition.parse(text, places));
    } catch (IllegalArgumentException e) {
      throw new UserMistake(option + ": " + e.getMessage());
    }
  }

  private static List<Condition> conditions(List<String> texts, List<String> places)
      throws UserMistake {
    List<Condition> all = new ArrayList<>();
    for (String text : texts) {
      all.add(condition("--mark-on", text, places).orElseThrow());
    }
    return all;
  }

  private static PulseSequence steady(PulseSequence usual, LogPlan plan, boolean injects) {
    return new PulseSequence(
        injects ? "steady" : "none",
        injects ? "one level held steadily" : "nothing is injected",
        injects ? plan.levelVolts() : 0,
        injects ? usual.maxAmperes() : 0,
        1,
        0,
        0,
        false,
        plan.leadInSeconds(),
        REST_SECONDS,
        usual.familyWiseError(),
        usual.maxCelsius(),
        usual.maxRiseKelvin());
  }

  private static List<Refusal> refusals(RunSetup run, PulseSequence steady, LogPlan plan) {
    SupplyFacts facts = run.supply().facts(run.bench().supplyChannel());
    double onSeconds = plan.mostSeconds() - plan.leadInSeconds();
    List<Refusal> refusals =
        new ArrayList<>(
            EnvelopeCheck.refusals(
                Timeline.steady(steady, onSeconds),
                run.envelope(),
                run.bench().companion() ? facts : facts.without(Protection.COMPANION),
                run.bench().acceptedMissing()));
    refusals.addAll(run.outputPlan().refusals(run.supply()));
    return refusals;
  }
}
