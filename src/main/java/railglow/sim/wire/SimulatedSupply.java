package railglow.sim.wire;

import java.util.ArrayList;
import java.util.List;
import railglow.scpi.Command;
import railglow.scpi.ErrorEntry;
import railglow.scpi.HeaderTable;
import railglow.scpi.InstrumentStatus;
import railglow.scpi.ProgramMessage;
import railglow.scpi.ScpiError;
import railglow.scpi.ScpiException;
import railglow.sim.circuit.OutputStage;
import railglow.sim.circuit.Protection;
import railglow.sim.fault.FaultKind;
import railglow.sim.fault.FaultSwitches;

/**
 * A bench supply that speaks SCPI, as one state machine: a line and the time go in, an answer comes
 * out. What stands behind its outputs is a circuit.
 *
 * <p>Deterministic. Not thread-safe: its owner gives it one line at a time.
 */
public final class SimulatedSupply {
  /** The version it gives in its identity. */
  public static final String VERSION = "1.0";

  private static final int ERROR_QUEUE_CAPACITY = 20;
  private static final int MAX_LINE = 4096;

  private final SupplySettings settings;
  private final List<OutputStage> outputs;
  private final FaultSwitches faults;
  private final InstrumentStatus status = new InstrumentStatus(ERROR_QUEUE_CAPACITY);
  private final Meter meter;
  private final HeaderTable<SupplyAction> commands;
  private final StatusWiring wiring;
  private final OutputWatchdog watchdog = new OutputWatchdog();
  private int selected;

  /**
   * @param outputs one for each channel, the first with the board
   */
  public SimulatedSupply(
      SupplySettings settings, List<OutputStage> outputs, FaultSwitches faults, long seed) {
    this.settings = settings;
    this.outputs = List.copyOf(outputs);
    this.faults = faults;
    meter = new Meter(settings, faults, seed);
    wiring = new StatusWiring(settings.family(), status);
    commands = new HeaderTable<>();
    CommonCommands.addTo(commands);
    OutputCommands.addTo(commands);
    StatusCommands.addTo(commands);
    reset();
  }

  SupplySettings settings() {
    return settings;
  }

  InstrumentStatus status() {
    return status;
  }

  StatusWiring wiring() {
    return wiring;
  }

  Meter meter() {
    return meter;
  }

  OutputWatchdog watchdog() {
    return watchdog;
  }

  public int channels() {
    return outputs.size();
  }

  /** The output of a channel, from 1. */
  public OutputStage output(int channel) {
    return outputs.get(channel - 1);
  }

  int selected() {
    return selected;
  }

  void select(int channel) {
    selected = channel;
  }

  /** {@code *RST}: everything off and at its first value; the status registers stay. */
  void reset() {
    selected = 1;
    watchdog.disable();
    for (OutputStage stage : outputs) {
      stage.clearTrips();
      stage.switchOutput(false);
      stage.setVolts(0);
      stage.setAmperes(settings.maxAmperes());
      stage.setProtection(
          new Protection(settings.maxVolts() * 1.1, settings.maxAmperes() * 1.1, true, 0.02));
    }
  }

  /** Lets time pass without a word on the wire. */
  public void advanceTo(long nowNanos) {
    if (faults.takeOnce(FaultKind.RESETS_ITSELF, nowNanos)) {
      reset();
    }
    if (watchdog.expiredBy(nowNanos)) {
      long then = watchdog.expiryNanos();
      outputs.forEach(stage -> stage.advanceTo(then));
      outputs.forEach(stage -> stage.switchOutput(false));
      watchdog.disable();
    }
    for (OutputStage stage : outputs) {
      stage.advanceTo(nowNanos);
    }
  }

  /** An output has changed its regulation or tripped: remembered in the event registers. */
  public void refreshStatus() {
    wiring.refresh(outputs.get(selected - 1));
  }

  /**
   * Executes one line.
   *
   * @param line without its terminator, one character for each byte
   * @return the answer without terminator; null when nothing was asked
   */
  public String receive(String line, long nowNanos) {
    advanceTo(nowNanos);
    watchdog.fed(nowNanos);
    if (faults.isActive(FaultKind.ERROR_QUEUE_FILLS, nowNanos)) {
      status.report(ErrorEntry.of(ScpiError.HARDWARE_ERROR));
    }
    if (line.length() > MAX_LINE) {
      status.report(ErrorEntry.of(ScpiError.INPUT_BUFFER_OVERRUN));
      return null;
    }
    ProgramMessage message = ProgramMessage.parse(line);
    List<String> answers = new ArrayList<>();
    try {
      for (Command command : message.commands()) {
        refreshStatus();
        HeaderTable.Found<SupplyAction> found = commands.find(command);
        String answer = found.value().run(new SupplyCall(this, command, found.numbers(), nowNanos));
        if (answer != null) {
          answers.add(answer);
        }
      }
      if (message.error().isPresent()) {
        throw message.error().get();
      }
    } catch (ScpiException e) {
      status.report(e.entry());
    }
    refreshStatus();
    return answers.isEmpty() ? null : String.join(";", answers);
  }
}
