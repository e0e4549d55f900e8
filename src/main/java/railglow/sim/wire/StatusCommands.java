package railglow.sim.wire;

import java.util.function.Function;
import railglow.scpi.HeaderTable;
import railglow.scpi.InstrumentStatus;
import railglow.scpi.ReplyText;
import railglow.scpi.ScpiException;
import railglow.scpi.StatusRegister;
import railglow.sim.circuit.OutputStage;

/** The STATus branch. */
final class StatusCommands {
  private StatusCommands() {}

  static void addTo(HeaderTable<SupplyAction> table) {
    register(table, "STATus:QUEStionable", InstrumentStatus::questionable);
    register(table, "STATus:OPERation", InstrumentStatus::operation);
    table
        .add("STATus:PRESet", StatusCommands::preset)
        .add(
            "STATus:QUEStionable:INSTrument:ISUMmary<n>:CONDition?",
            call -> ReplyText.nr1(call.supply().wiring().questionable(numbered(call))))
        .add(
            "STATus:OPERation:INSTrument:ISUMmary<n>:CONDition?",
            call -> ReplyText.nr1(call.supply().wiring().operation(numbered(call))));
  }

  private static OutputStage numbered(SupplyCall call) throws ScpiException {
    int number = call.numbers().get(0);
    return call.supply().output(call.channel(number, call.command().position()));
  }

  private static void register(
      HeaderTable<SupplyAction> table,
      String branch,
      Function<InstrumentStatus, StatusRegister> which) {
    table
        .add(
            branch + "[:EVENt]?",
            call -> ReplyText.nr1(which.apply(call.supply().status()).takeEvents()))
        .add(
            branch + ":CONDition?",
            call -> ReplyText.nr1(which.apply(call.supply().status()).condition()))
        .add(
            branch + ":ENABle?",
            call -> ReplyText.nr1(which.apply(call.supply().status()).enable()))
        .add(
            branch + ":ENABle",
            call -> {
              which.apply(call.supply().status()).setEnable(call.value().integer(0, 65535));
              return null;
            });
  }

  private static String preset(SupplyCall call) throws ScpiException {
    call.requireValues(0, 0);
    call.supply().status().questionable().setEnable(0);
    call.supply().status().operation().setEnable(0);
    return null;
  }
}
