package railglow.sim.wire;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import railglow.scpi.Argument;
import railglow.scpi.Command;
import railglow.scpi.ReplyText;
import railglow.scpi.ScpiError;
import railglow.scpi.ScpiException;
import railglow.sim.circuit.OutputStage;

/**
 * One command with the supply it is for.
 *
 * @param numbers of the header's numbered nodes
 */
record SupplyCall(SimulatedSupply supply, Command command, List<Integer> numbers, long nowNanos) {
  private static final Pattern CHANNEL_LIST = Pattern.compile("@\\s*([0-9]{1,3})\\s*");

  /** The arguments without a channel list at the end. */
  List<Argument> values() {
    List<Argument> all = command.arguments();
    return endsWithChannel() ? all.subList(0, all.size() - 1) : all;
  }

  private boolean endsWithChannel() {
    List<Argument> all = command.arguments();
    return !all.isEmpty() && all.get(all.size() - 1).kind() == Argument.Kind.EXPRESSION;
  }

  void requireValues(int least, int most) throws ScpiException {
    int lists = endsWithChannel() ? 1 : 0;
    command.requireArguments(least + lists, most + lists);
  }

  Argument value() throws ScpiException {
    requireValues(1, 1);
    return values().get(0);
  }

  /** The output meant: that of the channel list, else the selected one. */
  OutputStage output() throws ScpiException {
    if (!endsWithChannel()) {
      return supply.output(supply.selected());
    }
    Argument list = command.arguments().get(command.arguments().size() - 1);
    Matcher matcher = CHANNEL_LIST.matcher(list.expression());
    if (!matcher.matches()) {
      throw new ScpiException(
          ScpiError.EXPRESSION_ERROR, list.position(), "a channel list looks like (@1)");
    }
    return supply.output(channel(Integer.parseInt(matcher.group(1)), list.position()));
  }

  int channel(int number, int position) throws ScpiException {
    if (number < 1 || number > supply.channels()) {
      throw new ScpiException(
          ScpiError.DATA_OUT_OF_RANGE, position, "there is no channel " + number);
    }
    return number;
  }

  /** A number in a range, or one of the words MINimum and MAXimum. */
  double limited(String unit, double low, double high) throws ScpiException {
    Argument argument = value();
    if (argument.is("MINimum")) {
      return low;
    }
    if (argument.is("MAXimum")) {
      return high;
    }
    double number = argument.number(unit);
    if (number < low || number > high) {
      throw new ScpiException(
          ScpiError.DATA_OUT_OF_RANGE,
          argument.position(),
          number + " is not in " + low + ".." + high);
    }
    return number;
  }

  /** The answer to a query of a setting: the setting, or its ends when MIN or MAX is asked for. */
  String answer(double setting, double low, double high) throws ScpiException {
    requireValues(0, 1);
    if (values().isEmpty()) {
      return ReplyText.nr3(setting, 6);
    }
    Argument which = values().get(0);
    if (!which.is("MINimum") && !which.is("MAXimum")) {
      throw new ScpiException(
          ScpiError.ILLEGAL_PARAMETER_VALUE, which.position(), "only MIN or MAX can be asked for");
    }
    return ReplyText.nr3(which.is("MINimum") ? low : high, 6);
  }

  String nothing() throws ScpiException {
    requireValues(0, 0);
    return null;
  }
}
