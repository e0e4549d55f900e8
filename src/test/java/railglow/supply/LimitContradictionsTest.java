package railglow.supply;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import railglow.safety.Envelope;

class LimitContradictionsTest {
  private static final SupplyDescriptor SUPPLY =
      Descriptors.read("supply-scpi-regulation-in-operation.yaml");

  private static List<String> of(Envelope limits) {
    return LimitContradictions.of(limits, SUPPLY, 1);
  }

  @Test
  void theShippedBenchContradictsItselfNowhere() {
    assertEquals(List.of(), of(Envelope.OPEN.withMaxReadingAgeSeconds(0.5, "bench file, mine")));
    assertEquals(List.of(), of(Envelope.OPEN));
  }

  @Test
  void aReadingThatMayNotBeAsOldAsItsIntervalIsRefusedWithBothNamed() {
    List<String> found = of(Envelope.OPEN.withMaxReadingAgeSeconds(0.1, "bench file, mine"));

    assertEquals(1, found.size(), found.toString());
    assertTrue(found.get(0).contains("at most 100 ms (bench file, mine)"), found.get(0));
    assertTrue(found.get(0).contains("every 100 ms (supply SCPI supply"), found.get(0));
  }

  @Test
  void aBenchThatAllowsLessThanTheSupplyCanBeSetToIsRefusedWithBothNamed() {
    List<String> found = of(Envelope.OPEN.withMaxAmperes(0.001, "bench file, mine"));

    assertEquals(1, found.size(), found.toString());
    assertTrue(found.get(0).contains("at most 1 mA (bench file, mine)"), found.get(0));
    assertTrue(found.get(0).contains("below 2 mA (supply SCPI supply"), found.get(0));
  }
}
