package railglow.run.handsfree;

import java.util.function.BiConsumer;
import java.util.function.Consumer;
import railglow.safety.Envelope;
import railglow.safety.StopLatch;
import railglow.supply.OutputPlan;
import railglow.supply.Supply;
import railglow.time.MonotonicClock;

/**
 * What a wait for a touch is made of, opened and checked by the caller, who also closes the supply
 * afterwards.
 *
 * @param plan of the sensing level, see {@link SensingLevel#plan}
 * @param armed whether a contact that is there from the beginning may begin a touch
 * @param latch of this wait alone
 * @param told what has just happened, on the keeper's thread: must return at once
 * @param warned what the operator must read, likewise
 * @param news how it stands, some ten times a second, on the caller's thread
 */
public record SensingParts(
    Supply supply,
    OutputPlan plan,
    Envelope envelope,
    ContactBounds bounds,
    boolean armed,
    StopLatch latch,
    MonotonicClock clock,
    BiConsumer<TouchStart.Event, Contact> told,
    Consumer<String> warned,
    Consumer<SensingNews> news) {}
