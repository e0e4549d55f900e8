package railglow.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class PermitSlotTest {
  private final PermitSlot slot = new PermitSlot();
  private final OutputPermit on = new OutputPermit(0, true, 1, 1_000);

  @Test
  void aPermitInForceIsRenewed() {
    slot.post(on);

    assertTrue(slot.post(on.renewedUntil(2_000), 999));
    assertEquals(2_000, slot.get().expiresNanos());
  }

  @Test
  void aLapsedPermitCantBeRenewedAndStaysToBeFound() {
    slot.post(on);

    assertFalse(slot.post(on.renewedUntil(2_000), 1_000));
    assertTrue(slot.get().isLapsed(1_000));
  }

  @Test
  void offNeverLapses() {
    assertFalse(OutputPermit.OFF.isLapsed(Long.MAX_VALUE));
    assertFalse(OutputPermit.OFF.isLapsed(Long.MIN_VALUE));
    assertTrue(slot.post(on, Long.MIN_VALUE + 5));
  }
}
