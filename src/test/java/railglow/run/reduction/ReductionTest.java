package railglow.run.reduction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import railglow.journal.Entry;
import railglow.journal.Findings;
import railglow.journal.FindingsFile;
import railglow.observed.Frame;
import railglow.observed.FrameMark;
import railglow.run.FindingsMaker;
import railglow.thermal.HeatSource;
import railglow.thermal.Look;
import railglow.thermal.Plane;

class ReductionTest {
  private static final long START = 123_456_789_012L;
  private static final long MS = InventedRun.MS;
  private final List<Entry.Cycle> cycles = new ArrayList<>();

  private static List<String> differences(InventedRun run, Reduced first, Reduced second) {
    Findings a = FindingsMaker.make(run.header, first, null);
    Findings b = FindingsMaker.make(run.header, second, null);
    return FindingsFile.difference(a, b);
  }

  @Test
  void aWarmSpotIsFoundWhereItIs() {
    Reduced reduced = new InventedRun(START, 4, 1).reduce(0, cycles);
    HeatSource source = reduced.look().sources().get(0);
    assertEquals(20.3, source.column(), 0.5);
    assertEquals(9.7, source.row(), 0.5);
    assertTrue(source.riseInterval95().contains(0.04), source.riseInterval95().toString());
    assertEquals(8, reduced.cyclesUsed());
    assertEquals(0, reduced.cyclesRejected());
  }

  @Test
  void withoutAScaleARiseIsInCountsAndInUnitsOfTheNoise() {
    InventedRun run = new InventedRun(START, 4, 1);
    Reduced reduced = run.reduce(0, new ArrayList<>());
    Findings findings = FindingsMaker.make(run.withoutScale(), reduced, null);
    assertEquals("counts", findings.unit());
    assertTrue(
        findings
            .headline()
            .matches(
                "Heat at .*: it swings by [0-9.]+ counts, [0-9.]+ times the noise of one pixel of the"
                    + " difference, in step with the pulse .95 %: [0-9.]+ counts to [0-9.]+ counts.*"),
        findings.headline());
    assertFalse(findings.headline().contains(" K") || findings.headline().contains("mK"));
    Reduced nothing = new InventedRun(START, 0, 2).reduce(0, new ArrayList<>());
    assertTrue(
        FindingsMaker.make(run.withoutScale(), nothing, null)
            .headline()
            .contains("times the noise of one pixel"));
  }

  @Test
  void whereThePictureCanBeTrustedIsTold() {
    Plane trust = new InventedRun(START, 4, 1).reduce(0, new ArrayList<>()).trust();
    int trusted = 0;
    for (float value : trust.values()) {
      assertTrue(value >= 0 && value <= 1, () -> "trust " + value);
      trusted += value == 1 ? 1 : 0;
    }
    assertTrue(trusted > 0.95 * trust.values().length, "trusted pixels: " + trusted);
  }

  @Test
  void nothingIsFoundWhereNothingIsWarm() {
    Reduced reduced = new InventedRun(START, 0, 2).reduce(0, cycles);
    assertEquals(List.of(), reduced.look().sources());
    assertEquals(
        Findings.Verdict.NOTHING_FOUND,
        FindingsMaker.make(new InventedRun(START, 0, 2).header, reduced, null).verdict());
  }

  @Test
  void theOrderInWhichThreadsMetChangesNotOneBit() {
    InventedRun run = new InventedRun(START, 2, 3);
    Reduced inStep = run.reduce(0, cycles);
    Reduced supplyLate = run.reduce(700 * MS, new ArrayList<>());
    Reduced replayed = run.replay(new ArrayList<>());
    assertEquals(List.of(), differences(run, inStep, supplyLate));
    assertEquals(List.of(), differences(run, inStep, replayed));
    assertTrue(inStep.look().significance().sameBitsAs(replayed.look().significance()));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 0.5, 0.7, 0.9, 1.2, 4})
  void looksLeftOutChangeNotOneBitWhetherNothingIsCalledOrLateOrAtOnce(double spotCounts) {
    for (long seed = 1; seed <= 5; seed++) {
      InventedRun run = new InventedRun(START, spotCounts, seed);
      Reduced looked = run.reduce(0, cycles);
      List<Look> all = List.copyOf(run.looks);
      run.looks.clear();
      Reduced spared = run.replay(new ArrayList<>());
      assertEquals(List.of(), differences(run, looked, spared));
      assertEquals(looked.look().sources(), spared.look().sources());
      assertEquals(looked.look().strongest(), spared.look().strongest());
      assertTrue(looked.look().significance().sameBitsAs(spared.look().significance()));
      assertTrue(looked.trust().sameBitsAs(spared.trust()));
      long untilFirstCall = all.stream().takeWhile(look -> look.sources().isEmpty()).count() + 1;
      assertTrue(run.looks.size() <= Math.min(all.size(), untilFirstCall));
    }
  }

  @Test
  void looksNowAndThenSayWhenTheyDoNotSuffice() {
    int sufficed = 0;
    int lacking = 0;
    int calledAtTheEnd = 0;
    for (double spotCounts : new double[] {0, 0.5, 0.7, 0.8, 0.9, 1.2, 4}) {
      for (long seed = 1; seed <= 5; seed++) {
        InventedRun run = new InventedRun(START, spotCounts, seed);
        Reduced looked = run.reduce(0, cycles);
        List<Look> all = List.copyOf(run.looks);
        Optional<Reduced> few = run.replayWithFewLooks();
        boolean calls = !looked.look().sources().isEmpty();
        boolean before = all.stream().limit(all.size() - 1).anyMatch(l -> !l.sources().isEmpty());
        if (few.isPresent()) {
          sufficed++;
          assertEquals(List.of(), differences(run, looked, few.get()));
          assertEquals(looked.look().strongest(), few.get().look().strongest());
          assertTrue(looked.look().significance().sameBitsAs(few.get().look().significance()));
        } else {
          lacking++;
          assertTrue(spotCounts > 0, "seed " + seed + ": there is nothing, so nothing was lacking");
        }
        if (calls && !before) {
          calledAtTheEnd++;
          assertTrue(few.isEmpty(), "seed " + seed + ": the bounds before count");
        }
      }
    }
    assertTrue(sufficed > 0 && lacking > 0 && calledAtTheEnd > 0, sufficed + ", " + lacking);
  }

  @Test
  void anotherZeroOfTheClockChangesNoPlane() {
    Reduced here = new InventedRun(START, 2, 4).reduce(0, cycles);
    Reduced there = new InventedRun(-5_000_000_000_000L, 2, 4).reduce(0, new ArrayList<>());
    assertTrue(here.look().inPhase().sameBitsAs(there.look().inPhase()));
  }

  @Test
  void everyFrameOfACycleIsUsedOrCountedWithItsReason() {
    InventedRun run = new InventedRun(START, 0, 5);
    run.reduce(0, cycles);
    for (Entry.Cycle cycle : cycles) {
      int used = 0;
      for (int n : cycle.framesUsed()) {
        used += n;
      }
      int leftOut = cycle.framesLeftOut().values().stream().mapToInt(Integer::intValue).sum();
      assertEquals(50, used + leftOut, "cycle " + cycle.cycle());
      assertTrue(cycle.framesLeftOut().get("transition") >= 2);
    }
  }

  @Test
  void aCycleWithoutItsEdgeIsRejectedAndSaysWhy() {
    InventedRun run = new InventedRun(START, 0, 6);
    run.supply.removeIf(e -> e instanceof Entry.EdgeMade made && made.edge().index() == 5);
    Reduced reduced = run.reduce(0, cycles);
    assertEquals(7, reduced.cyclesUsed());
    assertFalse(cycles.get(2).accepted());
    assertEquals("the off edge was not made", cycles.get(2).reason());
  }

  @Test
  void aCycleWithoutEnoughFramesIsRejectedAndSaysWhichQuarter() {
    InventedRun run = new InventedRun(START, 0, 7);
    long from = run.header.cycles().get(3).middleNanos() + 40 * MS;
    long until = run.header.cycles().get(3).offNanos();
    run.frames.removeIf(f -> f.arrivalNanos() > from && f.arrivalNanos() < until);
    Reduced reduced = run.reduce(0, cycles);
    assertEquals(7, reduced.cyclesUsed());
    assertTrue(cycles.get(3).reason().contains("quarter 3"), cycles.get(3).reason());
  }

  @Test
  void aHalfInWhichTheContactSwungDoesNotCount() {
    InventedRun run = new InventedRun(START, 0, 9);
    long at = run.header.cycles().get(4).middleNanos();
    int before = 0;
    while (run.supply.get(before).nanos() < at) {
      before++;
    }
    run.supply.add(before, new Entry.ContactSwung(at, 7, 13.4));
    Reduced reduced = run.reduce(0, cycles);
    assertEquals(7, reduced.cyclesUsed());
    assertEquals(1, reduced.cyclesRejected());
    assertEquals("the contact swung between 7.00 and 13.4 ohm", cycles.get(4).reason());
  }

  @Test
  void aShutterEventSpoilsItsCycle() {
    InventedRun run = new InventedRun(START, 0, 8);
    long at = run.header.cycles().get(1).middleNanos();
    for (Frame frame : run.frames) {
      if (Math.abs(frame.arrivalNanos() - at) < 30 * MS) {
        frame.marks().add(FrameMark.SHUTTER);
      }
    }
    Reduced reduced = run.reduce(0, cycles);
    assertEquals(7, reduced.cyclesUsed());
    assertEquals("a shutter event", cycles.get(1).reason());
  }

  @Test
  void aFrameWhoseTimeIsInDoubtIsLeftOutOnlyWhereTheCameraHasNoCounter() {
    for (boolean counted : new boolean[] {true, false}) {
      InventedRun run = new InventedRun(START, 0, 10, counted);
      long at = run.header.cycles().get(2).startNanos() + 200 * MS;
      run.frames.stream()
          .filter(f -> f.arrivalNanos() > at)
          .findFirst()
          .orElseThrow()
          .marks()
          .add(FrameMark.AFTER_GAP);
      List<Entry.Cycle> seen = new ArrayList<>();
      run.reduce(0, seen);
      Integer leftOut = seen.get(2).framesLeftOut().get("after-gap");
      assertEquals(counted ? null : 1, leftOut, "counted " + counted);
    }
  }

  @Test
  void voltsAndAmperesAreTakenAtTheBoardInTheSettledPart() {
    Reduced reduced = new InventedRun(START, 0, 9).reduce(0, cycles);
    assertEquals(1.5 - 0.25 * 0.1, reduced.onVolts(), 1e-9);
    assertEquals(0.25, reduced.onAmperes(), 1e-9);
  }
}
