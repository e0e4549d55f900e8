package railglow.supply;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import railglow.link.LinkSettings;
import railglow.link.ReplyPattern;
import railglow.units.Interval;

/**
 * What can be said to a supply nobody has described: the standard's own words (SCPI-99, Vol 2), one
 * in each message. Good for switching off and for looking, not for a run.
 */
public final class PlainSupply {
  private static final MeterError VOLTS_ERROR = new MeterError(0.05, 0.01);
  private static final MeterError AMPERES_ERROR = new MeterError(0.02, 0.01);

  /** Maker, model, serial number, version: IEEE 488.2, 10.14.3. */
  private static final String FOUR_FIELDS = "^[^,;]*[A-Za-z][^,;]*(?:,[^,]*){3,}$";

  private PlainSupply() {}

  public static SupplyDescriptor descriptor() {
    ChannelAbility any =
        new ChannelAbility(
            new Interval(0, 1000),
            0,
            new Interval(0, 1000),
            0,
            Double.POSITIVE_INFINITY,
            0,
            0,
            VOLTS_ERROR,
            AMPERES_ERROR);
    SupplyCommands commands =
        new SupplyCommands(
            "*IDN?",
            List.of(),
            Optional.empty(),
            "OUTP ON",
            "OUTP OFF",
            Optional.of("OUTP?"),
            Set.of("1", "ON"),
            Set.of("0", "OFF"),
            "VOLT {volts}",
            Optional.of("VOLT?"),
            "CURR {amperes}",
            Optional.of("CURR?"),
            "MEAS:VOLT?",
            "MEAS:CURR?",
            Optional.empty(),
            Optional.empty(),
            Optional.empty());
    return new SupplyDescriptor(
        "unknown SCPI supply",
        ReplyPattern.of(""),
        new WireManners(
            LinkSettings.USUAL.withProof(
                IdentityProof.of("*IDN?", ReplyPattern.of(FOUR_FIELDS), "MEAS:VOLT?")),
            1_000_000_000L,
            false,
            200_000_000L),
        Optional.empty(),
        List.of(any),
        commands,
        List.of(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }
}
