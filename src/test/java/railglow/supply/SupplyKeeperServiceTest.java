package railglow.supply;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import railglow.observed.OutputState;
import railglow.safety.OutputPermit;
import railglow.safety.StopCause;
import railglow.supply.FakeSupply.Fate;

class SupplyKeeperServiceTest {
  private final KeeperBench bench = new KeeperBench();

  @Test
  void theStartOrderIsOffThenLimitsThenLevelThenProtectionEachReadBack() {
    while (!bench.keeper.isReady()) {
      bench.step();
    }

    assertEquals(
        List.of(
            "off",
            "read 0",
            "error?",
            "amperes 0.5",
            "error?",
            "amperes?",
            "volts 1.0",
            "error?",
            "volts?",
            "over-voltage 1.2",
            "error?",
            "over-voltage?",
            "over-current 0.55",
            "error?",
            "over-current?",
            "off",
            "read 0"),
        bench.supply.exchanges);
    assertEquals(OutputState.PROVEN_OFF, bench.keeper.outputState());
  }

  @Test
  void aPermitBeforeTheStartOrderIsDoneSwitchesNothingOnUntilThen() {
    bench.permit(true, 10);
    while (!bench.keeper.isReady()) {
      assertFalse(bench.supply.exchanges.contains("on"));
      bench.step();
    }
  }

  @Test
  void clearingATripThatBringsTheOutputBackIsFollowedByOff() {
    bench.supply.restoresOnClear = true;
    bench.supply.overCurrentTripped = true;
    bench.supply.volts = 5;

    while (!bench.keeper.isReady()) {
      bench.step();
    }

    int clear = bench.supply.exchanges.indexOf("clear trips");
    assertEquals("volts 0.0", bench.supply.exchanges.get(clear - 2));
    assertEquals(
        List.of("error?", "off", "read 0"), bench.supply.exchanges.subList(clear + 1, clear + 4));
    assertFalse(bench.supply.isTrulyOn());
  }

  @Test
  void aSettingTheSupplyRefusesIsNamedInItsOwnWords() {
    bench.supply.interference =
        exchange -> {
          if (exchange.startsWith("over-voltage ")) {
            bench.supply.errors.add("-222,\"Data out of range\"");
          }
          return Fate.NORMAL;
        };

    bench.started();

    assertEquals(StopCause.SUPPLY_ERROR, bench.stop().cause());
    assertEquals(
        "the supply refused the over-voltage protection of 1.2 V: -222,\"Data out of range\"",
        bench.stop().evidence());
  }

  @Test
  void aLimitTheSupplyDidNotTakeIsFoundByReadingItBack() {
    bench.supply.interference =
        exchange -> {
          if (exchange.equals("amperes?")) {
            bench.supply.amperes = 5;
          }
          return Fate.NORMAL;
        };

    bench.started();

    assertEquals(StopCause.SUPPLY_ERROR, bench.stop().cause());
    assertTrue(bench.stop().evidence().contains("says it is set to 5 A"), bench.stop().evidence());
  }

  @Test
  void aBoardThatHoldsAVoltageByItselfIsNotStartedOn() {
    bench.supply.voltsOffset = 3;

    bench.run(15);

    assertEquals(StopCause.OUTPUT_NOT_AS_COMMANDED, bench.stop().cause());
    assertTrue(
        bench.stop().evidence().contains("3 V still stand at the output"), bench.stop().evidence());
  }

  @Test
  void aSupplyThatLiesAboutItsSwitchShowsItselfBeforeTheFirstPermit() {
    bench.supply.ignoresOff = true;
    bench.supply.saysOff = true;
    bench.supply.loadOhms = 1e6;
    bench.supply.force(true);

    bench.run(15);

    assertFalse(bench.keeper.isReady());
    assertEquals(StopCause.OUTPUT_NOT_AS_COMMANDED, bench.stop().cause());
    assertTrue(bench.keeper.doubt().contains("still stand"), bench.keeper.doubt());
  }

  @Test
  void permitsAreServedAsEdgesWithBothTimes() {
    bench.on();
    bench.run(0.3);
    bench.permit(false, 0);
    bench.run(0.3);

    assertEquals(2, bench.edges.size());
    assertTrue(bench.edges.get(0).on());
    assertEquals(KeeperBench.LEVEL_VOLTS, bench.edges.get(0).levelVolts());
    assertFalse(bench.edges.get(1).on());
    assertEquals(
        bench.supply.exchangeNanos,
        bench.edges.get(1).confirmedNanos() - bench.edges.get(1).commandedNanos());
    assertEquals(OutputState.PROVEN_OFF, bench.keeper.outputState());
    assertFalse(bench.latch.isSet());
  }

  @Test
  void aPermitThatIsNotRenewedLapsesAtItsTime() {
    bench.started();
    bench.permit(true, 0.12);
    long expires = bench.permits.get().expiresNanos();
    while (!bench.latch.isSet()) {
      bench.step();
    }
    bench.run(1);

    assertEquals(StopCause.PERMIT_LAPSED, bench.stop().cause());
    assertTrue(bench.stop().nanos() - expires < bench.supply.exchangeNanos);
    assertFalse(bench.supply.isTrulyOn());
  }

  @Test
  void aRenewedPermitKeepsTheOutputOn() {
    bench.on();
    for (int i = 0; i < 40; i++) {
      OutputPermit permit = bench.permits.get();
      bench.permits.post(permit.renewedUntil(bench.clock.nanos() + 200_000_000));
      bench.run(0.1);
    }

    assertFalse(bench.latch.isSet());
    assertTrue(bench.supply.isTrulyOn());
    assertEquals(1, bench.edges.size());
  }

  @Test
  void aLapsedPermitNeverSwitchesOn() {
    bench.started();
    bench.permit(true, -0.001);

    bench.run(1);

    assertFalse(bench.supply.exchanges.contains("on"));
    assertEquals(StopCause.PERMIT_LAPSED, bench.stop().cause());
  }

  @Test
  void aLevelAboveThePlanIsRefused() {
    bench.started();
    bench.permits.post(new OutputPermit(0, true, 1.5, Long.MAX_VALUE));

    bench.run(1);

    assertEquals(StopCause.INTERNAL_FAULT, bench.stop().cause());
    assertFalse(bench.supply.exchanges.stream().anyMatch(e -> e.startsWith("volts 1.5")));
  }

  @Test
  void aListenerThatFailsStopsTheRunButNotTheKeeper() {
    KeeperBench inner = new KeeperBench();
    SupplyKeeper keeper =
        new SupplyKeeper(
            inner.supply,
            KeeperBench.PLAN,
            KeeperBench.ENVELOPE,
            inner.permits,
            inner.latch,
            new SupplyListener() {
              @Override
              public void onReading(railglow.observed.SupplyReading reading) {
                throw new IllegalStateException("by the test");
              }

              @Override
              public void onEdge(railglow.observed.Edge edge) {}

              @Override
              public void onOutputState(OutputState state, long nowNanos) {}
            },
            inner.clock);

    long next = 0;
    for (int i = 0; i < 20 && next != SupplyKeeper.FINISHED; i++) {
      next = keeper.step(inner.clock.nanos());
    }

    assertEquals(SupplyKeeper.FINISHED, next);
    assertEquals(StopCause.INTERNAL_FAULT, inner.stop().cause());
    assertEquals(OutputState.PROVEN_OFF, keeper.outputState());
  }
}
