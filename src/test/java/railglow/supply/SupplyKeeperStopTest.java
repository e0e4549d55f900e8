package railglow.supply;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import railglow.observed.OutputState;
import railglow.safety.StopCause;
import railglow.supply.FakeSupply.Fate;

class SupplyKeeperStopTest {
  private final KeeperBench bench = new KeeperBench();

  private void latch(StopCause cause) {
    bench.latch.set(cause, bench.clock.nanos(), "by the test");
    bench.nextNanos = bench.clock.nanos();
  }

  /** Sets the latch in the middle of the next exchange of that name. */
  private void latchDuring(String words) {
    bench.supply.interference =
        exchange -> {
          if (exchange.equals(words)) {
            latch(StopCause.OPERATOR_REQUEST);
          }
          return Fate.NORMAL;
        };
  }

  private List<String> after(String words) {
    List<String> all = bench.supply.exchanges;
    return all.subList(all.indexOf(words) + 1, all.size());
  }

  @Test
  void theFirstExchangeAfterAStopIsOffAndTheProofFollowsInTheSameStep() {
    bench.on();
    bench.supply.exchanges.clear();

    latch(StopCause.OPERATOR_REQUEST);
    bench.step();
    bench.run(1);

    assertEquals("off", bench.supply.exchanges.get(0));
    assertFalse(bench.supply.isTrulyOn());
    assertEquals(OutputState.PROVEN_OFF, bench.keeper.outputState());
    assertTrue(bench.finished());
  }

  @Test
  void stopDuringTheOnExchangeIsUndoneByTheVeryNextExchange() {
    bench.started();
    latchDuring("on");
    bench.permit(true, 10);

    bench.run(1);

    assertEquals("off", after("on").get(0));
    assertEquals(OutputState.PROVEN_OFF, bench.keeper.outputState());
    assertTrue(bench.edges.isEmpty(), "an undone change is no edge");
  }

  @Test
  void stopDuringAReadingOfSeveralExchangesIsServedBeforeTheRest() {
    KeeperBench three = new KeeperBench(3, KeeperBench.ENVELOPE).on();
    three.supply.exchanges.clear();
    three.supply.interference =
        exchange -> {
          if (exchange.equals("read 0")) {
            three.latch.set(StopCause.OPERATOR_REQUEST, three.clock.nanos(), "by the test");
          }
          return Fate.NORMAL;
        };

    three.run(1);

    int at = three.supply.exchanges.indexOf("read 0");
    assertEquals("off", three.supply.exchanges.get(at + 1));
    assertTrue(three.finished());
  }

  @Test
  void stopDuringTheStartOrderSendsNoFurtherSetting() {
    latchDuring("amperes " + KeeperBench.LIMIT_AMPERES);

    bench.started();
    bench.run(1);

    List<String> rest = after("amperes " + KeeperBench.LIMIT_AMPERES);
    assertTrue(bench.finished());
    assertFalse(bench.supply.exchanges.contains("on"));
    assertTrue(rest.isEmpty() || rest.get(0).equals("off"), rest.toString());
  }

  @Test
  void theFirstCauseStaysAndALaterBreachIsReportedAsSeenAfterIt() {
    bench.on();
    latch(StopCause.OPERATOR_REQUEST);
    bench.supply.interference = exchange -> Fate.LOST_BEFORE;
    bench.step();

    assertEquals(StopCause.OPERATOR_REQUEST, bench.stop().cause());
    assertEquals(StopCause.LINK_LOST, bench.further.get(0).cause());
  }

  @Test
  void anUnansweredReadingStopsTheRunAndOffIsSentBlindBeforeAnythingIsAsked() {
    bench.on();
    bench.supply.exchanges.clear();
    bench.supply.interference =
        exchange -> exchange.startsWith("read") ? Fate.LOST_BEFORE : Fate.NORMAL;

    bench.run(0.7);

    assertEquals(StopCause.LINK_LOST, bench.stop().cause());
    List<String> rest = after("read 0");
    assertEquals(List.of("off", "resynchronise", "off"), rest.subList(0, 3));
    assertFalse(bench.supply.isTrulyOn());
  }

  @Test
  void whileNothingAnswersTheStateIsUnknownAndOffIsTriedAgainAndAgain() {
    bench.on();
    bench.supply.interference = exchange -> Fate.LOST_BEFORE;

    bench.run(20);

    assertEquals(OutputState.UNKNOWN, bench.keeper.outputState());
    assertFalse(bench.finished());
    assertTrue(bench.supply.isTrulyOn(), "the words never arrived");
    assertTrue(bench.supply.exchanges.stream().filter("off"::equals).count() > 5);
    assertTrue(bench.warnings.get(0).startsWith("output NOT proven off: "));
  }

  @Test
  void theFirstWarningSaysWhatToDoAndTheLaterOnesComeEverMoreSeldom() {
    bench.on();
    bench.supply.interference = exchange -> Fate.LOST_BEFORE;

    bench.run(0.5);
    String first = bench.warnings.get(0);
    assertTrue(first.contains("Switch the supply off by hand, or pull the leads, NOW"), first);
    int atOnce = bench.warnings.size();

    bench.run(19.5);
    int inTwentySeconds = bench.warnings.size();
    bench.run(30);

    assertEquals(1, atOnce);
    assertEquals(5, inTwentySeconds, "after 0, 1, 3, 7 and 15 s: " + bench.warnings);
    assertEquals(8, bench.warnings.size(), "every 10 s from then on: " + bench.warnings);
  }

  @Test
  void aReasonThatIsASentenceIsNotEndedTwice() {
    assertEquals(
        NotProvenOff.sentence("output NOT proven off", "the line is cut"),
        NotProvenOff.sentence("output NOT proven off", "the line is cut."));
  }

  @Test
  void aLinkThatComesBackIsUsedToProveOff() {
    bench.on();
    bench.supply.interference = exchange -> Fate.LOST_BEFORE;
    bench.run(5);
    bench.supply.interference = exchange -> Fate.NORMAL;

    bench.run(2);

    assertTrue(bench.finished());
    assertEquals(OutputState.PROVEN_OFF, bench.keeper.outputState());
  }

  @Test
  void aSupplyThatIgnoresOffIsNeverProvenAndIsTurnedDownAsASecondMeans() {
    bench.on();
    bench.supply.ignoresOff = true;
    latch(StopCause.OPERATOR_REQUEST);

    bench.run(2);

    assertFalse(bench.finished());
    assertEquals(OutputState.ON, bench.keeper.outputState());
    assertEquals(0, bench.supply.volts);
    assertTrue(bench.keeper.doubt().contains("still on"), bench.keeper.doubt());
  }

  @Test
  void aSupplyThatHadToBeTurnedDownIsNotBelievedOnItsWordAlone() {
    bench.on();
    bench.supply.ignoresOff = true;
    latch(StopCause.OPERATOR_REQUEST);
    bench.run(2);
    bench.supply.saysOff = true;

    bench.run(2);

    assertTrue(bench.supply.isTrulyOn());
    assertEquals(OutputState.UNKNOWN, bench.keeper.outputState());
    assertTrue(bench.keeper.doubt().contains("turned down"), bench.keeper.doubt());
  }

  @Test
  void aSupplyThatLiesAboutItsSwitchIsCaughtByTheCurrent() {
    bench.on();
    bench.supply.ignoresOff = true;
    bench.supply.saysOff = true;
    latch(StopCause.OPERATOR_REQUEST);

    bench.run(0.8);

    assertFalse(bench.finished());
    assertEquals(OutputState.UNKNOWN, bench.keeper.outputState());
    assertTrue(bench.keeper.doubt().contains("still flow"), bench.keeper.doubt());
  }

  @Test
  void aRailThatDischargesWithinHalfASecondIsNoReasonForAlarm() {
    bench.on();
    bench.supply.dischargeSeconds = 0.05;
    latch(StopCause.OPERATOR_REQUEST);
    bench.step();
    assertEquals(OutputState.UNKNOWN, bench.keeper.outputState());

    bench.run(2);

    assertEquals(OutputState.PROVEN_OFF, bench.keeper.outputState());
    assertEquals(List.of(), bench.warnings);
  }

  @Test
  void aBigCapacitorDelaysTheProofUntilTheVoltageHasFallen() {
    bench.on();
    bench.supply.dischargeSeconds = 3;
    latch(StopCause.OPERATOR_REQUEST);
    bench.step();
    assertEquals(OutputState.UNKNOWN, bench.keeper.outputState());
    assertTrue(bench.keeper.doubt().contains("still stand"), bench.keeper.doubt());

    bench.run(1);

    assertTrue(bench.finished());
    assertTrue(bench.supply.trueVolts() < 0.9);
  }

  @Test
  void anErrorInsideTheProgramStopsTheRunAndStillDrivesOff() {
    bench.on();
    bench.supply.interference =
        exchange -> {
          if (exchange.startsWith("read")) {
            bench.supply.interference = e -> Fate.NORMAL;
            throw new OutOfMemoryError("by the test");
          }
          return Fate.NORMAL;
        };

    bench.run(1);

    assertEquals(StopCause.INTERNAL_FAULT, bench.stop().cause());
    assertTrue(bench.finished());
    assertFalse(bench.supply.isTrulyOn());
  }

  @Test
  void withoutMemoryEvenForAnErrorOffIsSentAndTheLoopGoesOn() {
    bench.on();
    bench.supply.exchanges.clear();
    boolean[] memory = {false};
    bench.supply.interference =
        exchange -> {
          if (!memory[0] && !exchange.equals("off without memory")) {
            throw new OutOfMemoryError("by the test");
          }
          return Fate.NORMAL;
        };
    bench.latch.onSet(
        () -> {
          throw new OutOfMemoryError("by the test: nobody can be told");
        });

    bench.run(0.5);

    assertEquals("off", bench.supply.exchanges.get(1), "after the reading that had no memory");
    assertFalse(bench.supply.isTrulyOn());
    assertEquals(StopCause.INTERNAL_FAULT, bench.stop().cause());
    assertFalse(bench.finished(), "off is not proven while nothing can be read");

    memory[0] = true;
    bench.run(0.5);

    assertTrue(bench.finished());
    assertEquals(OutputState.PROVEN_OFF, bench.keeper.outputState());
  }

  @Test
  void whoClosesTheLoopHasOffSentFirstWhereItIsNotProven() throws InterruptedException {
    bench.on();
    Thread closing = new Thread(bench.keeper::sendOffUnlessProven, "closing");
    closing.start();
    while (bench.supply.isTrulyOn() && closing.isAlive()) {
      bench.step();
    }
    closing.join();

    assertFalse(bench.supply.isTrulyOn());
    assertTrue(bench.latch.isSet());
    bench.run(1);
    assertEquals(OutputState.PROVEN_OFF, bench.keeper.outputState());
  }
}
