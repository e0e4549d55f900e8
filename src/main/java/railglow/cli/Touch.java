package railglow.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import railglow.board.Suspect;
import railglow.casebook.RunFolders;
import railglow.journal.Findings;
import railglow.journal.RunFolder;
import railglow.run.RunEnding;
import railglow.run.RunWatchers;
import railglow.run.handsfree.ContactBounds;
import railglow.run.handsfree.ContactShare;
import railglow.run.handsfree.ContactSwing;
import railglow.run.handsfree.ContactWatch;
import railglow.run.handsfree.Sensing;
import railglow.run.handsfree.SensingLevel;
import railglow.run.handsfree.TouchComparison;
import railglow.run.handsfree.TouchLabels;
import railglow.run.handsfree.TouchNames;
import railglow.run.handsfree.TouchResult;
import railglow.safety.StopCause;
import railglow.safety.StopLatch;
import railglow.thermal.HeatSource;
import railglow.time.MonotonicClock;
import railglow.time.SystemClock;
import railglow.time.WallStamp;
import railglow.units.Quantity;
import railglow.units.Unit;

/** A hands-free session: senses, runs, tells, senses again. Used once. */
final class Touch {
  private final Terminal terminal;
  private final TouchVoice voice;
  private final TouchScreen screen;
  private final RunSetup setup;
  private final SensingLevel level;
  private final TouchSettings settings;
  private final ContactBounds bounds;
  private final MonotonicClock clock = SystemClock.INSTANCE;
  private final TouchStops stops;
  private final List<TouchResult> results = new ArrayList<>();
  private final List<RunFolder> touchedRuns = new ArrayList<>();
  private final TouchNames names;
  private boolean rawKeys;
  private Path session;
  private TouchSensing sensing;
  private RunEnding lastEnding;

  /**
   * How the session goes.
   *
   * @param runs where run folders are made
   * @param most touches after which it ends
   * @param keys whether the standard input is listened to
   */
  record TouchSettings(
      Path runs, List<String> commandLine, TouchLabels labels, int most, boolean keys) {}

  Touch(
      Terminal terminal,
      TouchVoice voice,
      TouchScreen screen,
      TouchStops stops,
      RunSetup setup,
      SensingLevel level,
      TouchSettings settings) {
    this.terminal = terminal;
    this.voice = voice;
    this.screen = screen;
    this.stops = stops;
    this.setup = setup;
    this.level = level;
    this.settings = settings;
    this.names = new TouchNames(settings.labels());
    this.bounds = TouchSensing.bounds(setup, setup.bench().sensedAtBoard());
  }

  int run() throws Exception {
    StopSignals signals = new StopSignals(stops.signal(), clock).install();
    try (RawKeys keys = settings.keys() ? RawKeys.open() : null) {
      if (settings.keys()) {
        rawKeys = keys.isRaw();
        Keys.listen(terminal.typed(), rawKeys, new TouchKeys(terminal, screen, stops, names));
      }
      begin();
      int exitCode = ExitCode.DONE;
      boolean goOn = true;
      while (goOn && results.size() < settings.most()) {
        Optional<ContactShare> felt = await();
        exitCode = felt.isPresent() ? touched(felt.get()) : notTouched(lastEnding);
        goOn = felt.isPresent() && exitCode == ExitCode.DONE;
      }
      compare();
      screen.ended(lastEnding, exitCode == ExitCode.DONE);
      return exitCode;
    } finally {
      signals.runEnded();
    }
  }

  private void begin() throws IOException {
    session =
        new RunFolders(settings.runs())
            .create(
                LocalDate.ofInstant(WallStamp.now(clock).instant(), ZoneId.systemDefault()),
                setup.boardName(),
                setup.railName() + " touches")
            .root();
    terminal.say(PlanText.cautions());
    terminal.say(PlanText.board(setup));
    terminal.say(
        "Sequence   " + setup.sequence().name() + ", " + PlanText.pulses(setup.sequence()));
    terminal.say(
        String.format(
            Locale.ROOT,
            "Sensing    %s, at most %s; a contact is felt up to %s",
            Quantity.format(level.volts(), Unit.VOLT),
            Quantity.format(level.amperes(), Unit.AMPERE),
            Quantity.format(TouchSensing.waitingBounds(setup).reachOhms(level.volts()), Unit.OHM)));
    terminal.say("           " + whatIsTold());
    if (settings.keys()) {
      terminal.say(
          rawKeys
              ? "Keys       any key starts a run or ends a touch; 1 to 9 names the next point by its"
                  + " label; q ends"
              : "Keys       Enter starts a run or ends a touch; a number or a word and Enter names"
                  + " the next point; q and Enter ends");
    }
    terminal.say("Session    " + session);
    sensing = new TouchSensing(setup, level, stops, clock, session, voice, screen, this::warn);
  }

  private String whatIsTold() {
    if (TouchSensing.tellsContact(setup)) {
      return "rail and contact are told apart: sensed at the terminals, then at the board";
    }
    return setup.bench().sensedAtBoard()
        ? "resistances are of the rail alone: sensed at the board"
        : "resistances are of rail and contact together: not sensed at the board";
  }

  /** Waits for a touch that may be measured; empty when the session ends instead. */
  private Optional<ContactShare> await() throws UserMistake {
    boolean armed = results.isEmpty();
    while (true) {
      // from now on a key is one of this wait
      StopLatch latch = stops.next(true);
      terminal.say("");
      terminal.say("Waiting    for touch " + (results.size() + 1) + ", " + label());
      if (armed) {
        screen.listening(results.size() + 1, label());
      } else {
        screen.next(results.size() + 1, label());
      }
      Sensing.Outcome felt = sensing.await(armed, latch);
      lastEnding = felt.ending();
      if (!felt.isTouched()) {
        return Optional.empty();
      }
      ContactShare share = sensing.apart(felt.contact(), rail -> lastEnding = rail.ending());
      if (share != null) {
        return Optional.of(share);
      }
      if (!sensing.hasGone()) {
        return Optional.empty();
      }
      armed = true;
    }
  }

  private void warn(String sentence) {
    terminal.complain(sentence);
    screen.onMessage(sentence);
  }

  private String label() {
    return names.next();
  }

  private int touched(ContactShare felt) throws Exception {
    String label = names.take();
    int number = results.size() + 1;
    voice.keepStill(label, number, felt.text());
    StopLatch latch = stops.next(false);
    ContactWatch watch = new ContactWatch(bounds, latch);
    screen.begun();
    Hunt hunt =
        new Hunt(
            terminal,
            settings.runs(),
            settings.commandLine(),
            new LiveView.Options(),
            latch,
            Optional.of(
                new TouchedPoint(
                    label,
                    new RunWatchers(
                        List.of(watch, screen, new CyclesTold(terminal, screen, latch))),
                    new ContactSwing(bounds))));
    hunt.runToTheEnd(setup);
    Optional<Findings> findings = hunt.findings();
    results.add(result(number, label, hunt, watch, felt));
    touchedRuns.add(hunt.folder());
    TouchComparison comparison = new TouchComparison(results, setup.bench().sensedAtBoard());
    screen.touches(comparison);
    RunEnding ending = hunt.ending();
    lastEnding = ending;
    if (!ending.provenOff() || ending.stop().cause().kind() == StopCause.Kind.LIMIT) {
      voice.stopped(ending.stop().cause(), ending.stop().evidence());
      return ending.exitCode();
    }
    voice.ended(
        findings.map(Findings::verdict).orElse(Findings.Verdict.NOT_ENOUGH_DATA),
        watch.contactLost(),
        watch.contactUnsteady()
            ? ending.stop().evidence()
            : comparison.found(results.get(results.size() - 1)));
    return stops.signal().isSet() ? ExitCode.STOPPED_BY_OPERATOR : ExitCode.DONE;
  }

  private static TouchResult result(
      int number, String label, Hunt hunt, ContactWatch watch, ContactShare felt) {
    Optional<Findings> all = hunt.findings();
    Optional<HeatSource> source = all.flatMap(Touch::source);
    return new TouchResult(
        number,
        label,
        hunt.folder().name(),
        all.map(f -> f.verdict().name()).orElse("NO_FINDINGS"),
        source.map(found -> where(all.get(), found)).orElse(""),
        source.map(HeatSource::swingKelvin).orElse(Double.NaN),
        all.map(Findings::unit).orElse("K"),
        watch.meanVolts(),
        watch.meanAmperes(),
        watch.lowestOhms(),
        watch.highestOhms(),
        felt,
        all.map(Findings::cyclesUsed).orElse(0),
        all.map(Findings::cyclesRejected).orElse(0),
        hunt.ending().stop().evidence());
  }

  /** That of the first suspect: the strongest may be the probe's own contact getting warm. */
  private static Optional<HeatSource> source(Findings findings) {
    return findings.sources().isEmpty()
        ? Optional.empty()
        : Optional.of(findings.sources().get(findings.lead().source()));
  }

  private static String where(Findings findings, HeatSource source) {
    return findings
        .lead()
        .suspect()
        .map(Suspect::part)
        .orElseGet(
            () ->
                String.format(Locale.ROOT, "column %.0f row %.0f", source.column(), source.row()));
  }

  private int notTouched(RunEnding ending) {
    if (!ending.provenOff()) {
      EndingText.notProvenOff(terminal, ending.doubt());
    }
    voice.stopped(ending.stop().cause(), ending.stop().evidence());
    Summary.sentence(
        terminal,
        "Ended      ",
        ending.stop().evidence() + (ending.provenOff() ? "; output proven off" : ""));
    boolean asked = stops.isEndWanted() && !stops.signal().isSet();
    boolean byOperator = ending.stop().cause().kind() == StopCause.Kind.OPERATOR;
    return ending.provenOff() && asked && byOperator ? ExitCode.DONE : ending.exitCode();
  }

  private void compare() throws IOException {
    if (results.isEmpty()) {
      return;
    }
    touchedRuns.forEach(run -> CatalogueAt.take(run, settings.runs(), terminal));
    List<String> lines = new ArrayList<>();
    lines.add("Touches");
    lines.addAll(new TouchComparison(results, setup.bench().sensedAtBoard()).text());
    terminal.say("");
    terminal.say(lines);
    for (TouchResult result : results) {
      lines.add("Run        " + result.label() + ": " + result.runId() + ", " + result.ended());
    }
    Files.write(session.resolve("touches.txt"), lines);
  }
}
