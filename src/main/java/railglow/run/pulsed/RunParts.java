package railglow.run.pulsed;

import railglow.camera.CameraDescriptor;
import railglow.camera.FrameSource;
import railglow.journal.RunFolder;
import railglow.pulse.Timeline;
import railglow.run.ContactNotes;
import railglow.safety.Envelope;
import railglow.safety.StopLatch;
import railglow.supply.OutputPlan;
import railglow.supply.Supply;
import railglow.time.MonotonicClock;

/**
 * What a pulsed run is made of, opened and checked by the caller, who also closes supply and source
 * afterwards.
 *
 * @param leadOhms to take off the voltage; 0 when sensed at the board
 * @param plannedBytes what the run may write at most
 * @param contact watches a contact that is held by hand
 * @param header makes the header once the run's start is known
 */
public record RunParts(
    RunFolder folder,
    Supply supply,
    OutputPlan outputPlan,
    FrameSource source,
    CameraDescriptor camera,
    Envelope envelope,
    Timeline timeline,
    StopLatch latch,
    MonotonicClock clock,
    HeaderMaker header,
    CompanionStarter companion,
    long plannedBytes,
    ContactNotes contact) {}
