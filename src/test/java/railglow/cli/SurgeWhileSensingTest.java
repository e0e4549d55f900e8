package railglow.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import railglow.observed.OutputState;
import railglow.run.handsfree.Sensing;
import railglow.run.handsfree.SensingLevel;
import railglow.run.handsfree.SensingParts;
import railglow.safety.Envelope;
import railglow.safety.StopCause;
import railglow.safety.StopLatch;
import railglow.sim.BenchPorts;
import railglow.sim.BenchScenarios;
import railglow.sim.SimulatedBench;
import railglow.sim.hand.HandMove;
import railglow.sim.hand.HandScript;
import railglow.supply.ReadingDraft;
import railglow.supply.Supply;
import railglow.time.SystemClock;

/** A probe that meets the board while the supply's capacitor is charged to the sensing level. */
@Timeout(60)
class SurgeWhileSensingTest {
  @TempDir Path folder;

  @Test
  void aSurgeIsDrivenOffAndProvenOffLikeEveryBreachAndMayBePassedOver() throws Exception {
    Sensing.Outcome surged = sensedWith(0.089, 1.0);
    assertEquals(StopCause.CURRENT_ABOVE_LIMIT, surged.ending().stop().cause());
    assertEquals(OutputState.PROVEN_OFF, surged.ending().output());
    assertTrue(surged.isSurge(), surged.toString());
    assertTrue(surged.armed(), "the probe was in the air");
    assertTrue(surged.judgedWell() >= 3, surged.toString());
    assertFalse(surged.isTouched());
  }

  @Test
  void aCurrentAboveWhatTheBoardMayGetIsNoSurge() throws Exception {
    Sensing.Outcome breached = sensedWith(0.089, 0.05);
    assertEquals(StopCause.CURRENT_ABOVE_LIMIT, breached.ending().stop().cause());
    assertEquals(OutputState.PROVEN_OFF, breached.ending().output());
    assertFalse(breached.isSurge());
  }

  @Test
  void anyOtherBreachIsNone() throws Exception {
    Sensing.Outcome breached = sensedWith(Double.NaN, 1.0);
    assertEquals(StopCause.READING_NOT_A_NUMBER, breached.ending().stop().cause());
    assertFalse(breached.isSurge());
  }

  /** Of an open probe, whose tenth reading shows this current once. */
  private Sensing.Outcome sensedWith(double amperes, double mostAmperes) throws Exception {
    HandScript inTheAir = new HandScript(List.of(HandMove.parse("touch:C9@500s..501s")));
    RunOptions options = new RunOptions();
    options.simulated = true;
    options.sequence = "touch";
    try (SimulatedBench bench =
        SimulatedBench.start(
            BenchScenarios.hx12().withHand(inTheAir), BenchPorts.ANY, SystemClock.INSTANCE)) {
      RunSetup setup = SimulatedBenches.joined(RunSetup.of(options), bench);
      try (OpenedSupply opened =
          OpenedSupply.open(
              setup.bench(), setup.supply(), folder.resolve("wire.txt"), SystemClock.INSTANCE)) {
        return new Sensing(
                new SensingParts(
                    surging(opened.supply(), amperes),
                    new SensingLevel(0.05, 0.02).plan(setup.supply()),
                    Envelope.OPEN.withMaxVolts(2.6, "test").withMaxAmperes(mostAmperes, "test"),
                    TouchSensing.waitingBounds(setup),
                    true,
                    new StopLatch(),
                    SystemClock.INSTANCE,
                    (event, contact) -> {},
                    sentence -> {},
                    news -> {}))
            .run();
      }
    }
  }

  private static Supply surging(Supply supply, double amperes) {
    AtomicInteger readings = new AtomicInteger();
    return (Supply)
        Proxy.newProxyInstance(
            Supply.class.getClassLoader(),
            new Class<?>[] {Supply.class},
            (proxy, method, arguments) -> {
              try {
                Object answer = method.invoke(supply, arguments);
                if (method.getName().equals("readPart") && readings.incrementAndGet() == 10) {
                  ((ReadingDraft) arguments[1]).amperes(amperes);
                }
                return answer;
              } catch (InvocationTargetException e) {
                throw e.getCause();
              }
            });
  }
}
