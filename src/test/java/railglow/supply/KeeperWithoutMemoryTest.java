package railglow.supply;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railglow.process.ChildJava;
import railglow.sim.BenchPorts;
import railglow.sim.BenchScenarios;
import railglow.sim.SimulatedBench;
import railglow.sim.truth.TruthEvent;
import railglow.time.SystemClock;

/** Decision 0025, to the last byte; in a process of its own and over a real socket. */
class KeeperWithoutMemoryTest {
  @TempDir Path folder;

  @Test
  void aKeeperWithoutAnyMemorySendsOff() throws Exception {
    try (SimulatedBench bench =
        SimulatedBench.start(BenchScenarios.hx12(), BenchPorts.ANY, SystemClock.INSTANCE)) {
      Path said = folder.resolve("said.txt");
      Process child =
          ChildJava.of(
                  // compiled code may need memory to be left at an error, at a place of its own
                  List.of("-Xmx32m", "-XX:+UseSerialGC", "-Xint"),
                  KeeperWithoutMemory.class,
                  Integer.toString(bench.supplyAddress().getPort()))
              .redirectErrorStream(true)
              .redirectOutput(said.toFile())
              .start();

      assertTrue(child.waitFor(60, TimeUnit.SECONDS), "it does not end");
      child.destroyForcibly();

      assertEquals(0, child.exitValue(), Files.readString(said));
      // its last words may still be under way
      for (int i = 0; i < 400 && bench.truth().outputIsOn(); i++) {
        Thread.sleep(5);
      }
      assertTrue(bench.truth().last(TruthEvent.Kind.OUTPUT).isPresent(), "it never was on");
      assertFalse(bench.truth().outputIsOn());
    }
  }
}
