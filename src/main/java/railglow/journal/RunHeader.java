package railglow.journal;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import railglow.pulse.CycleWindow;
import railglow.pulse.PulseSequence;
import railglow.safety.Envelope;
import railglow.thermal.DetectionSettings;

/**
 * The first entry of a journal: everything the run was made with.
 *
 * @param formatVersion of the run folder; see {@link #CURRENT_FORMAT}
 * @param programVersion of Railglow
 * @param started wall-clock start
 * @param startNanos the monotonic time of that instant; all other times are on the same clock
 * @param runId the run folder's name
 * @param board the board's name; empty when none was given
 * @param rail the rail's name; empty when none was given. Its normal and nominal values are in the
 *     board file kept beside the journal
 * @param sequence as it was run, after all command line changes
 * @param envelope the intersection with every limit's origin
 * @param camera name, size, rate and scale of the camera
 * @param supplyIdentity what the supply answered; empty for an imported run
 * @param leadOhms resistance of the leads, 0 when sensed at the board (4-wire)
 * @param protections what protects this bench, in order
 * @param detection the method's settings
 * @param cycles the planned cycle windows, on the run's clock (offset by startNanos already)
 * @param usedFiles role (bench, board, sequence, supply, camera, placement, netlist, picture) to
 *     the path inside the run folder of its copy
 * @param commandLine as typed
 */
public record RunHeader(
    int formatVersion,
    String programVersion,
    Instant started,
    long startNanos,
    String runId,
    String board,
    String rail,
    PulseSequence sequence,
    Envelope envelope,
    CameraFacts camera,
    String supplyIdentity,
    double leadOhms,
    List<String> protections,
    DetectionSettings detection,
    List<CycleWindow> cycles,
    Map<String, String> usedFiles,
    List<String> commandLine) {
  /** The oldest format in which a pulsed run can be written, so that older programs read it. */
  public static final int CURRENT_FORMAT = 1;

  /** Logs need it: the kinds of entries {@code place}, {@code followed}, {@code marker}. */
  public static final int LOG_FORMAT = 2;

  /** What is newer is refused. */
  public static final int NEWEST_FORMAT = LOG_FORMAT;

  /** A run without any cycle planned is a log. */
  public boolean isLog() {
    return sequence.maxCycles() == 0;
  }
}
