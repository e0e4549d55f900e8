package railglow.sim.wire;

import railglow.scpi.HeaderTable;
import railglow.scpi.ReplyText;
import railglow.scpi.ScpiError;
import railglow.scpi.ScpiException;
import railglow.sim.circuit.OutputStage;

/** Levels, protections, output switch, measurements, channels. */
final class OutputCommands {
  private static final double HIGHEST_DELAY_SECONDS = 10;
  private static final double HIGHEST_WATCHDOG_SECONDS = 3600;

  private OutputCommands() {}

  static void addTo(HeaderTable<SupplyAction> table) {
    levels(table);
    protections(table);
    outputs(table);
    measurements(table);
    channels(table);
  }

  private static void levels(HeaderTable<SupplyAction> table) {
    String voltage = "[SOURce:]VOLTage[:LEVel][:IMMediate][:AMPLitude]";
    String current = "[SOURce:]CURRent[:LEVel][:IMMediate][:AMPLitude]";
    table
        .add(
            voltage,
            call -> {
              call.output().setVolts(call.limited("V", 0, maxVolts(call)));
              return null;
            })
        .add(voltage + "?", call -> call.answer(call.output().setVolts(), 0, maxVolts(call)))
        .add(
            current,
            call -> {
              call.output().setAmperes(call.limited("A", 0, maxAmperes(call)));
              return null;
            })
        .add(current + "?", call -> call.answer(call.output().setAmperes(), 0, maxAmperes(call)))
        .add("[SOURce:]VOLTage:SENSe[:SOURce]", OutputCommands::sense)
        .add(
            "[SOURce:]VOLTage:SENSe[:SOURce]?",
            call -> call.output().circuit().isRemoteSense() ? "EXT" : "INT");
  }

  private static String sense(SupplyCall call) throws ScpiException {
    String word = call.value().word();
    boolean board = word.equals("EXT") || word.equals("EXTERNAL");
    if (!board && !word.equals("INT") && !word.equals("INTERNAL")) {
      throw new ScpiException(
          ScpiError.ILLEGAL_PARAMETER_VALUE, call.value().position(), "INT or EXT is wanted");
    }
    if (call.output().isOn()) {
      throw new ScpiException(
          ScpiError.SETTINGS_CONFLICT, call.command().position(), "the output is on");
    }
    call.output().circuit().setRemoteSense(board);
    return null;
  }

  private static double maxVolts(SupplyCall call) {
    return call.supply().settings().maxVolts();
  }

  private static double maxAmperes(SupplyCall call) {
    return call.supply().settings().maxAmperes();
  }

  private static void protections(HeaderTable<SupplyAction> table) {
    String voltage = "[SOURce:]VOLTage:PROTection";
    String current = "[SOURce:]CURRent:PROTection";
    table
        .add(
            voltage + "[:LEVel]",
            call -> {
              double volts = call.limited("V", 0, maxVolts(call) * 1.1);
              call.output().setProtection(call.output().protection().withOverVolts(volts));
              return null;
            })
        .add(
            voltage + "[:LEVel]?",
            call -> call.answer(call.output().protection().overVolts(), 0, maxVolts(call) * 1.1))
        .add(voltage + ":STATe", OutputCommands::overVoltageAlwaysOn)
        .add(voltage + ":STATe?", call -> "1")
        .add(voltage + ":TRIPped?", call -> ReplyText.bool(call.output().overVoltageTripped()))
        .add(voltage + ":CLEar", OutputCommands::clearTrips)
        .add(
            current + "[:LEVel]",
            call -> {
              double amperes = call.limited("A", 0, maxAmperes(call) * 1.1);
              call.output().setProtection(call.output().protection().withOverAmperes(amperes));
              return null;
            })
        .add(
            current + "[:LEVel]?",
            call ->
                call.answer(call.output().protection().overAmperes(), 0, maxAmperes(call) * 1.1))
        .add(
            current + ":STATe",
            call -> {
              boolean enabled = call.value().bool();
              call.output()
                  .setProtection(call.output().protection().withOverCurrentEnabled(enabled));
              return null;
            })
        .add(
            current + ":STATe?",
            call -> ReplyText.bool(call.output().protection().overCurrentEnabled()))
        .add(current + ":TRIPped?", call -> ReplyText.bool(call.output().overCurrentTripped()))
        .add(current + ":CLEar", OutputCommands::clearTrips);
    for (String delay : new String[] {current + ":DELay[:TIME]", "OUTPut:PROTection:DELay"}) {
      table
          .add(
              delay,
              call -> {
                double seconds = call.limited("S", 0, HIGHEST_DELAY_SECONDS);
                call.output().setProtection(call.output().protection().withDelaySeconds(seconds));
                return null;
              })
          .add(
              delay + "?",
              call ->
                  call.answer(call.output().protection().delaySeconds(), 0, HIGHEST_DELAY_SECONDS));
    }
    table.add("OUTPut:PROTection:CLEar", OutputCommands::clearTrips);
  }

  private static String overVoltageAlwaysOn(SupplyCall call) throws ScpiException {
    if (!call.value().bool()) {
      throw new ScpiException(
          ScpiError.SETTINGS_CONFLICT, call.command().position(), "this protection is always on");
    }
    return null;
  }

  private static String clearTrips(SupplyCall call) throws ScpiException {
    call.requireValues(0, 0);
    call.output().clearTrips();
    return null;
  }

  private static void outputs(HeaderTable<SupplyAction> table) {
    table
        .add("OUTPut[:STATe]", OutputCommands::switchOutput)
        .add(
            "OUTPut[:STATe]?",
            call -> {
              call.requireValues(0, 0);
              return ReplyText.bool(call.output().isOn());
            })
        .add(
            "OUTPut:WDOG[:STATe]",
            call -> {
              if (call.value().bool()) {
                call.supply().watchdog().enable(call.nowNanos());
              } else {
                call.supply().watchdog().disable();
              }
              return null;
            })
        .add("OUTPut:WDOG[:STATe]?", call -> ReplyText.bool(call.supply().watchdog().isEnabled()))
        .add(
            "OUTPut:WDOG:DELay",
            call -> {
              call.supply()
                  .watchdog()
                  .setDelaySeconds(call.limited("S", 0.05, HIGHEST_WATCHDOG_SECONDS));
              return null;
            })
        .add(
            "OUTPut:WDOG:DELay?",
            call ->
                call.answer(
                    call.supply().watchdog().delaySeconds(), 0.05, HIGHEST_WATCHDOG_SECONDS));
  }

  private static String switchOutput(SupplyCall call) throws ScpiException {
    boolean wanted = call.value().bool();
    OutputStage output = call.output();
    if (wanted && (output.overVoltageTripped() || output.overCurrentTripped())) {
      throw new ScpiException(
          ScpiError.SETTINGS_CONFLICT, call.command().position(), "a protection has tripped");
    }
    output.switchOutput(wanted);
    return null;
  }

  private static void measurements(HeaderTable<SupplyAction> table) {
    table
        .add("MEASure[:SCALar][:VOLTage][:DC]?", OutputCommands::volts)
        .add("MEASure[:SCALar]:CURRent[:DC]?", OutputCommands::amperes)
        .add("MEASure[:SCALar]:POWer[:DC]?", OutputCommands::watts);
  }

  private static String volts(SupplyCall call) throws ScpiException {
    call.requireValues(0, 0);
    return ReplyText.nr3(call.supply().meter().volts(call.output().circuit(), call.nowNanos()), 6);
  }

  private static String amperes(SupplyCall call) throws ScpiException {
    call.requireValues(0, 0);
    return ReplyText.nr3(
        call.supply().meter().amperes(call.output().circuit(), call.nowNanos()), 6);
  }

  private static String watts(SupplyCall call) throws ScpiException {
    call.requireValues(0, 0);
    Meter meter = call.supply().meter();
    double volts = meter.volts(call.output().circuit(), call.nowNanos());
    return ReplyText.nr3(volts * meter.amperes(call.output().circuit(), call.nowNanos()), 6);
  }

  private static void channels(HeaderTable<SupplyAction> table) {
    table
        .add(
            "INSTrument:NSELect",
            call -> {
              int number = call.value().integer(-32768, 32767);
              call.supply().select(call.channel(number, call.value().position()));
              return null;
            })
        .add("INSTrument:NSELect?", call -> ReplyText.nr1(call.supply().selected()))
        .add("INSTrument[:SELect]", OutputCommands::selectByName)
        .add("INSTrument[:SELect]?", call -> "OUTP" + call.supply().selected());
  }

  private static String selectByName(SupplyCall call) throws ScpiException {
    String name = call.value().word();
    for (int channel = 1; channel <= call.supply().channels(); channel++) {
      if (name.equals("OUTP" + channel) || name.equals("OUTPUT" + channel)) {
        call.supply().select(channel);
        return null;
      }
    }
    throw new ScpiException(
        ScpiError.ILLEGAL_PARAMETER_VALUE, call.value().position(), "there is no output " + name);
  }
}
