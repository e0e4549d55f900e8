package railglow.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import railglow.board.Suspect;
import railglow.journal.CameraFacts;
import railglow.journal.Entry;
import railglow.journal.Findings;
import railglow.journal.FindingsFile;
import railglow.journal.JournalWriter;
import railglow.journal.NpyFile;
import railglow.journal.RunFolder;
import railglow.journal.RunHeader;
import railglow.journal.SampleRun;
import railglow.observed.Edge;
import railglow.observed.OutputState;
import railglow.observed.Regulation;
import railglow.observed.SupplyReading;
import railglow.observed.Trip;
import railglow.safety.StopCause;
import railglow.thermal.HeatSource;
import railglow.thermal.InventedSource;
import railglow.thermal.Plane;
import railglow.units.Interval;

/**
 * Invented run folders for looking at reports: a camera of any size, any number of Gaussian
 * sources, finished or cut off. Same arguments, same bytes.
 */
final class Scene {
  private static final long SECOND = 1_000_000_000L;
  static final double NOISE = 0.012;

  private final RunFolder folder;
  private final int width;
  private final int height;
  private final List<HeatSource> sources = new ArrayList<>();
  private final List<PartMark> parts = new ArrayList<>();

  Scene(Path folder, int width, int height) {
    this.folder = new RunFolder(folder);
    this.width = width;
    this.height = height;
  }

  Scene source(double column, double row, double sigma, double rise) {
    return source(column, row, sigma, rise, new Interval(rise * 0.87, rise * 1.13));
  }

  /** One whose pulses may tell little of where it would settle. */
  Scene source(double column, double row, double sigma, double rise, Interval settled) {
    sources.add(
        InventedSource.at(column, row)
            .variances(0.04, 0.11, 0.03)
            .swings(rise, new Interval(rise * 0.87, rise * 1.13))
            .settles(rise, settled)
            .channels(rise * 0.8, rise * 0.25)
            .timeConstant(0.6)
            .width(sigma)
            .p(3.04e-12)
            .source());
    return this;
  }

  /** A grid of parts a real board might have, the one at the first source called C37. */
  Scene parts() {
    Random random = new Random(5);
    int count = 0;
    double pitch = width / 11.0;
    for (double row = pitch; row < height - pitch / 2; row += pitch * 0.9) {
      for (double column = pitch; column < width - pitch / 2; column += pitch) {
        count++;
        add(
            (count % 3 == 0 ? "R" : count % 7 == 0 ? "U" : "C") + (100 + count),
            column + random.nextDouble() * 4,
            row + random.nextDouble() * 4,
            random.nextInt(4) == 0,
            width / 60.0 * (count % 7 == 0 ? 2.4 : 1));
      }
    }
    if (!sources.isEmpty()) {
      add("C37", sources.get(0).column() + 0.5, sources.get(0).row() - 0.3, true, width / 60.0);
    }
    return this;
  }

  private void add(String reference, double column, double row, boolean onRail, double half) {
    parts.add(
        new PartMark(
            reference,
            onRail,
            new double[] {column - half, column + half, column + half, column - half},
            new double[] {row - half / 2, row - half / 2, row + half / 2, row + half / 2}));
  }

  Placement placement() {
    return parts.isEmpty()
        ? Placement.NONE
        : new Placement(parts, java.util.List.of(), 120.0 / width, java.util.Optional.empty());
  }

  RunFolder folder() {
    return folder;
  }

  Plane plane(double amplitudeShare, long seed) {
    Random random = new Random(seed);
    Plane plane = new Plane(width, height);
    for (int row = 0; row < height; row++) {
      for (int column = 0; column < width; column++) {
        double value = NOISE * random.nextGaussian();
        for (HeatSource s : sources) {
          double d2 = Math.pow(column - s.column(), 2) + Math.pow(row - s.row(), 2);
          value +=
              amplitudeShare
                  * s.riseKelvin()
                  * Math.exp(-d2 / (2 * s.widthPixels() * s.widthPixels()));
        }
        plane.set(column, row, (float) value);
      }
    }
    return plane;
  }

  /** Writes the folder; a run cut off has no closing entry, no findings and half of a last line. */
  RunFolder write(boolean finished) throws IOException {
    return write(finished, Double.NaN);
  }

  RunFolder write(boolean finished, double upperLimitMilliwatts) throws IOException {
    RunHeader sample = SampleRun.header(folder.name(), List.of());
    CameraFacts c = sample.camera();
    CameraFacts camera =
        new CameraFacts(
            "simulated camera",
            width,
            height,
            c.sampleType(),
            c.framesPerSecond(),
            c.kelvinPerCount(),
            c.celsiusAtZero(),
            c.noiseKelvin(),
            c.latencySeconds(),
            c.timeConstantSeconds(),
            c.numbersAreCounted(),
            c.timesAreExposures(),
            c.shutterSettlingSeconds(),
            c.saturationValue());
    RunHeader header =
        new RunHeader(
            sample.formatVersion(),
            sample.programVersion(),
            sample.started(),
            sample.startNanos(),
            folder.name(),
            sample.board(),
            sample.rail(),
            sample.sequence(),
            sample.envelope(),
            camera,
            sample.supplyIdentity(),
            sample.leadOhms(),
            sample.protections(),
            sample.detection(),
            sample.cycles(),
            sample.usedFiles(),
            List.of(
                "railglow", "hunt", "--rail", "3V3", "--board", "docs/examples/hx 12/board.yaml"));
    Files.createDirectories(folder.used());
    for (String used : header.usedFiles().values()) {
      Files.writeString(folder.root().resolve(used), "# " + used + "\n");
    }
    try (JournalWriter journal = JournalWriter.create(folder, header, 0)) {
      measurements(journal, finished ? 34 : 17);
      if (finished) {
        long end = SampleRun.START + 35 * SECOND;
        journal.append(new Entry.Stopped(end, StopCause.SURE_ENOUGH, ""));
        journal.append(
            new Entry.Closed(end + 1, StopCause.SURE_ENOUGH, OutputState.PROVEN_OFF, 0, 861, 0, 2));
      }
    }
    if (!finished) {
      Files.writeString(
          folder.journal(), "{\"n\":999,\"kind\":\"rea", java.nio.file.StandardOpenOption.APPEND);
      return folder;
    }
    NpyFile.write(folder.plane("in-phase"), plane(0.8, 1));
    NpyFile.write(folder.plane("quadrature"), plane(0.25, 2));
    NpyFile.write(folder.plane("significance"), scaled(plane(0.9, 3), 1 / NOISE, 0));
    NpyFile.write(folder.plane("background"), scaled(plane(2, 4), 1, 26.4f));
    FindingsFile.write(folder.findings(), findings(upperLimitMilliwatts));
    return folder;
  }

  private void measurements(JournalWriter journal, int seconds) throws IOException {
    Random random = new Random(9);
    journal.append(new Entry.Output(SampleRun.START, OutputState.PROVEN_OFF));
    boolean on = false;
    double rise = 0;
    for (int tick = 1; tick < seconds * 10; tick++) {
      long now = SampleRun.START + tick * SECOND / 10;
      double inCycle = ((tick / 10.0 - 2) % 4 + 4) % 4;
      boolean wanted = tick > 20 && inCycle >= 1 && inCycle < 3;
      if (wanted != on) {
        on = wanted;
        journal.append(
            new Entry.EdgeMade(new Edge(tick / 20, on, on ? 1.2 : 0, now, now + SECOND / 50)));
        journal.append(
            new Entry.Output(now + SECOND / 50, on ? OutputState.ON : OutputState.PROVEN_OFF));
      }
      rise += ((on ? 0.42 : 0) - rise) * 0.15;
      journal.append(
          new Entry.Reading(
              new SupplyReading(
                  now,
                  now + SECOND / 100,
                  on ? 1.2 + 0.0004 * random.nextGaussian() : 0.001,
                  on ? 0.1735 + 0.0002 * random.nextGaussian() : 0.0001,
                  on,
                  on ? Regulation.CONSTANT_VOLTAGE : Regulation.NONE,
                  EnumSet.noneOf(Trip.class))));
      if (tick % 2 == 0) {
        double hottest = 0.16 + rise + 0.02 * random.nextGaussian();
        journal.append(new Entry.Hottest(now, 26.4 + hottest, hottest, 3, 4));
      }
    }
  }

  private static Plane scaled(Plane plane, double factor, float offset) {
    for (int i = 0; i < plane.values().length; i++) {
      plane.values()[i] = (float) (plane.values()[i] * factor) + offset;
    }
    return plane;
  }

  private Findings findings(double upperLimitMilliwatts) {
    boolean found = !sources.isEmpty();
    List<Suspect> suspects = new ArrayList<>();
    if (found && !parts.isEmpty()) {
      suspects.add(
          new Suspect(0, "C37", 1, 0, 0, true, "The heat lies inside C37, which is on 3V3."));
      suspects.add(
          new Suspect(
              0, "C101", 2, 3.4, 4.1, false, "C101 is near, but none of its pads is on 3V3."));
    }
    return new Findings(
        found ? Findings.Verdict.HEAT_FOUND : Findings.Verdict.NOTHING_FOUND,
        found
            ? "Heat at C37: it swings by 420 mK in step with the pulse (95 %: 365 mK to 475 mK)."
            : "Nothing found; a place that swings by more than 31 mK would have been seen.",
        found ? "Lift C37; 3V3 should then read 45 ohm or more." : "",
        sources,
        suspects,
        List.of(),
        8,
        1,
        Map.of("TRANSITION", 36, "FROZEN", 2, "OUTSIDE", 60, "SHUTTER", 0),
        "K",
        0.031,
        upperLimitMilliwatts,
        1.1965,
        0.1735,
        0.2047,
        6.8,
        railglow.journal.HeatPower.NONE,
        java.util.List.of(
            new railglow.board.TrueRise(
                0, 0.467, 0.037, "ceramic body of C37", 0.9, 0.04, 23, 3, "entered", false)));
  }
}
