package railglow.sim.wire;

import railglow.scpi.Argument;
import railglow.scpi.HeaderTable;
import railglow.scpi.ReplyText;
import railglow.scpi.ScpiException;
import railglow.scpi.StandardEventBit;

/** The commands every IEEE 488.2 instrument has, and the SYSTem branch. */
final class CommonCommands {
  private CommonCommands() {}

  static void addTo(HeaderTable<SupplyAction> table) {
    table
        .add(
            "*IDN?",
            call ->
                "Railglow,SimulatedSupply,"
                    + call.supply().settings().serial()
                    + ","
                    + SimulatedSupply.VERSION)
        .add("*RST", CommonCommands::reset)
        .add("*CLS", CommonCommands::clear)
        .add("*ESE", call -> setEventEnable(call, argument(call)))
        .add("*ESE?", call -> ReplyText.nr1(call.supply().status().eventEnable()))
        .add("*ESR?", call -> ReplyText.nr1(call.supply().status().takeStandardEvents()))
        .add("*OPC", CommonCommands::operationComplete)
        .add("*OPC?", call -> "1")
        .add("*OPT?", call -> "0")
        .add("*SRE", call -> setServiceEnable(call, argument(call)))
        .add("*SRE?", call -> ReplyText.nr1(call.supply().status().serviceEnable()))
        .add("*STB?", call -> ReplyText.nr1(call.supply().status().statusByte(false)))
        .add("*TST?", call -> "0")
        .add("*WAI", SupplyCall::nothing)
        .add("SYSTem:ERRor[:NEXT]?", call -> call.supply().status().errors().next().format())
        .add("SYSTem:ERRor:COUNt?", call -> ReplyText.nr1(call.supply().status().errors().size()))
        .add("SYSTem:VERSion?", call -> "1999.0")
        .add("SYSTem:LOCal", SupplyCall::nothing)
        .add("SYSTem:REMote", SupplyCall::nothing)
        .add("SYSTem:RWLock", SupplyCall::nothing);
  }

  private static int argument(SupplyCall call) throws ScpiException {
    call.requireValues(1, 1);
    Argument value = call.value();
    return value.integer(0, 255);
  }

  private static String setEventEnable(SupplyCall call, int bits) {
    call.supply().status().setEventEnable(bits);
    return null;
  }

  private static String setServiceEnable(SupplyCall call, int bits) {
    call.supply().status().setServiceEnable(bits);
    return null;
  }

  private static String reset(SupplyCall call) throws ScpiException {
    call.requireValues(0, 0);
    call.supply().reset();
    return null;
  }

  private static String clear(SupplyCall call) throws ScpiException {
    call.requireValues(0, 0);
    call.supply().status().clear();
    return null;
  }

  private static String operationComplete(SupplyCall call) throws ScpiException {
    call.requireValues(0, 0);
    call.supply().status().raise(StandardEventBit.OPERATION_COMPLETE);
    return null;
  }
}
