package railglow.journal;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import railglow.board.HeatPath;
import railglow.board.Suspect;
import railglow.observed.Edge;
import railglow.observed.OutputState;
import railglow.observed.Regulation;
import railglow.observed.SupplyReading;
import railglow.observed.Trip;
import railglow.pulse.CycleWindow;
import railglow.pulse.PulseSequence;
import railglow.safety.Envelope;
import railglow.safety.StopCause;
import railglow.thermal.DetectionSettings;
import railglow.thermal.HeatSource;
import railglow.thermal.InventedSource;
import railglow.units.Interval;

/** One invented run, small, with a value in every field and every kind of entry. */
public final class SampleRun {
  public static final long START = 5_000_000_000L;

  private SampleRun() {}

  public static RunHeader header() {
    return header("2026-03-01-hx12-3V3-01", List.of(new CycleWindow(0, 1, 2, 3, 4, 5)));
  }

  public static RunHeader header(String runId, List<CycleWindow> cycles) {
    return new RunHeader(
        RunHeader.CURRENT_FORMAT,
        "0.1.0",
        Instant.parse("2026-03-01T09:30:00.123456789Z"),
        START,
        runId,
        "HX-12 greenhouse irrigation controller",
        "3V3",
        new PulseSequence(
            "low-ohm hunt", "finds a few ohms", 1.2, 0.35, 4, 4, 40, true, 2, 1, 0.05, 80, 25),
        Envelope.OPEN
            .withMaxVolts(2.64, "80 % of the rail's nominal 3.3 V")
            .withMaxAmperes(0.5, "bench file")
            .withMaxWatts(0.6, "sequence")
            .withMaxCelsius(80, "sequence")
            .withMaxRiseKelvin(25, "sequence"),
        new CameraFacts(
            "sim camera",
            32,
            24,
            "uint16",
            25,
            0.01,
            -273.15,
            0.05,
            0.04,
            0.01,
            true,
            false,
            2,
            65_535),
        "RAILGLOW,SIM-SUPPLY,0,1.0",
        0.02,
        List.of("supply: OVP 1.5 V", "companion process"),
        new DetectionSettings(
            4, 0.01, 0.05, 4, 40, new double[] {0.8, 1.6}, new double[] {0, 0.5, 2}),
        cycles,
        Map.of("board", "used/board.yaml", "sequence", "used/hunt.yaml"),
        List.of("hunt", "--rail", "3V3"));
  }

  public static List<Entry> entries() {
    List<Entry> entries = new ArrayList<>();
    entries.add(new Entry.Output(START, OutputState.UNKNOWN));
    entries.add(new Entry.EdgeMade(new Edge(0, true, 1.2, START + 10, START + 20)));
    entries.add(
        new Entry.Reading(
            new SupplyReading(
                START + 21,
                START + 30,
                1.1999999999999997,
                0.17647058823529413,
                true,
                Regulation.CONSTANT_VOLTAGE,
                EnumSet.of(Trip.OVERPOWER, Trip.OVERCURRENT))));
    entries.add(
        new Entry.Reading(
            new SupplyReading(
                START + 31,
                START + 40,
                Double.NaN,
                Double.POSITIVE_INFINITY,
                false,
                Regulation.NOT_REPORTED,
                Set.of())));
    entries.add(
        new Entry.Cycle(
            START + 50, 0, false, "2 frames in Q3", new int[] {9, 9, 2, 9}, Map.of("FROZEN", 7)));
    entries.add(new Entry.Looked(START + 60, 4, 1, 3e-12, 14.25, 9.5, 0.41));
    entries.add(new Entry.Hottest(START + 70, Double.NaN, -0.0, 14, 9));
    entries.add(new Entry.PlaceNamed(START + 71, "C37", new int[] {9, 14, 15, 10, 14, 15}));
    entries.add(
        new Entry.Followed(
            START + 72,
            7,
            new double[] {23.5},
            new double[] {23.1},
            new double[] {24.0},
            new double[] {0.5},
            new double[] {Double.NaN},
            new double[] {1.25}));
    entries.add(new Entry.Marker(START + 73, "lid pressed", Entry.Marker.Origin.TYPED));
    entries.add(new Entry.Aligned(START + 74, 0.002, Double.NaN));
    entries.add(new Entry.Stopped(START + 80, StopCause.SURE_ENOUGH, "p 3e-12 \u2264 0.05"));
    entries.add(new Entry.ContactSwung(START + 85, 6.5, 13.25));
    entries.add(new Entry.Note(START + 90, "quote \" backslash \\ newline \n done"));
    entries.add(
        new Entry.Closed(START + 100, StopCause.SURE_ENOUGH, OutputState.PROVEN_OFF, 0, 400, 1, 2));
    return entries;
  }

  public static HeatSource source(double column, double row, double widthPixels) {
    return InventedSource.at(column, row)
        .variances(0.04, 0.09, 0.01)
        .swings(0.32, new Interval(0.35, 0.47))
        .settles(0.41, new Interval(0.35, 0.47))
        .channels(0.32, 0.11)
        .timeConstant(0.6)
        .width(widthPixels)
        .p(3e-12)
        .source();
  }

  public static Findings findings() {
    return new Findings(
        Findings.Verdict.HEAT_FOUND,
        "Heat found at C37 on 3V3.",
        "Lift C37; 3V3 should then read 45 ohm or more.",
        List.of(source(14.25, 9.5, 1.6)),
        List.of(new Suspect(0, "C37", 1, 0, 0, true, "The position lies inside C37, on 3V3.")),
        List.of(
            new HeatPath(
                0, HeatPath.Kind.CLIP, false, "where the clip on C9 sits", "the clip sits there")),
        18,
        1,
        Map.of("TRANSITION", 36, "FROZEN", 7),
        "K",
        0.05,
        Double.NaN,
        1.18,
        0.1735,
        0.2047,
        6.8,
        new HeatPower(0.19, 0.05, 1.4, List.of(new HeatPower.Place("C37", 164.1, 113.9, 0.19))),
        List.of(
            new railglow.board.TrueRise(
                0, 0.0791, 0.0042, "ceramic body of C37", 0.9, 0.04, 23, 3, "entered", false)));
  }
}
