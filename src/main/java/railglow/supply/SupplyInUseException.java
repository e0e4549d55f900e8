package railglow.supply;

import java.io.IOException;

/** Another controller of this machine has the supply; the message is for the operator. */
public final class SupplyInUseException extends IOException {
  SupplyInUseException(SupplyAddress address, String holder) {
    super(
        "the supply at "
            + address
            + " is already driven by "
            + holder
            + "; end that run first, or drive the output off with 'railglow off'");
  }
}
