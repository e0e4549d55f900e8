package railglow.run.ladder;

import java.util.Optional;
import railglow.journal.RunFolder;
import railglow.run.pulsed.CompanionStarter;
import railglow.run.pulsed.HeaderMaker;
import railglow.safety.Envelope;
import railglow.safety.StopLatch;
import railglow.supply.OutputPlan;
import railglow.supply.Supply;
import railglow.time.MonotonicClock;

/**
 * What a ladder is made of, opened and checked by the caller, who also closes supply and camera
 * afterwards.
 *
 * @param folder takes the journal
 * @param supply connected and identified
 * @param leadOhms taken off each voltage; 0 when sensed at the board
 * @param readBack how well the supply reads back
 * @param header makes the journal's header once the start is known
 * @param camera whose picture guards the board; empty for none
 */
public record LadderParts(
    RunFolder folder,
    Supply supply,
    OutputPlan outputPlan,
    Envelope envelope,
    LadderPlan plan,
    double leadOhms,
    ReadBack readBack,
    StopLatch latch,
    MonotonicClock clock,
    HeaderMaker header,
    CompanionStarter companion,
    Optional<WatchedCamera> camera) {}
