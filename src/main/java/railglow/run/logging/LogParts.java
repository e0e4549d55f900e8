package railglow.run.logging;

import java.util.Optional;
import railglow.camera.CameraDescriptor;
import railglow.camera.FrameSource;
import railglow.journal.RunFolder;
import railglow.run.pulsed.CompanionStarter;
import railglow.run.pulsed.HeaderMaker;
import railglow.safety.Envelope;
import railglow.safety.StopLatch;
import railglow.supply.OutputPlan;
import railglow.supply.ScpiSupply;
import railglow.supply.Supply;
import railglow.time.MonotonicClock;

/**
 * What a log is made of, opened and checked by the caller, who also closes supply and source
 * afterwards.
 *
 * @param driven the supply and how it is set; empty when nothing is injected
 * @param watched a supply that somebody else controls; empty when there is none
 * @param envelope of the injection; without one only how old frames may be counts
 * @param plannedBytes for which the disk must have room
 */
public record LogParts(
    RunFolder folder,
    LogPlan plan,
    Optional<Driven> driven,
    Optional<ScpiSupply> watched,
    FrameSource source,
    CameraDescriptor camera,
    Envelope envelope,
    StopLatch latch,
    MonotonicClock clock,
    HeaderMaker header,
    long plannedBytes) {
  /** A supply that this program drives. */
  public record Driven(Supply supply, OutputPlan plan, CompanionStarter companion) {}
}
