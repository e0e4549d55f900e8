package railglow.supply;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import railglow.link.ReplyPattern;
import railglow.safety.Protection;
import railglow.safety.SupplyFacts;

/**
 * Everything the driver must know of one kind of supply; read from a text file, so that a new
 * supply needs no code. Immutable.
 *
 * @param name of this kind
 * @param identity must be found in the reply to the identity query
 * @param line of a serial port; empty where the usual one does
 * @param channels abilities, the first is channel 1
 * @param status queries for regulation and trips; empty when there are none
 * @param overVoltage empty when the supply has no such protection
 * @param overCurrent empty when the supply has no such protection
 * @param timer the supply's own watchdog; empty when it has none
 */
public record SupplyDescriptor(
    String name,
    ReplyPattern identity,
    WireManners wire,
    Optional<LineManners> line,
    List<ChannelAbility> channels,
    SupplyCommands commands,
    List<StatusQuery> status,
    Optional<ProtectionLevel> overVoltage,
    Optional<ProtectionLevel> overCurrent,
    Optional<OutputTimer> timer) {
  public SupplyDescriptor {
    channels = List.copyOf(channels);
    status = List.copyOf(status);
  }

  /**
   * @param channel from 1
   * @throws IllegalArgumentException if there is no such channel
   */
  public ChannelAbility channel(int channel) {
    if (channel < 1 || channel > channels.size()) {
      throw new IllegalArgumentException(
          "supply " + name + " has channels 1 to " + channels.size() + ", not " + channel);
    }
    return channels.get(channel - 1);
  }

  /** Whether some status reply tells constant voltage from constant current. */
  public boolean tellsRegulation() {
    return says(StatusMeaning.CONSTANT_VOLTAGE) || says(StatusMeaning.CONSTANT_CURRENT);
  }

  /** The protections this supply does not have; the companion is none of its own. */
  public Set<Protection> missing() {
    EnumSet<Protection> missing = EnumSet.noneOf(Protection.class);
    addIf(missing, overVoltage.isEmpty(), Protection.OVER_VOLTAGE_PROTECTION);
    addIf(missing, overCurrent.isEmpty(), Protection.OVER_CURRENT_PROTECTION);
    addIf(missing, commands.outputQuery().isEmpty(), Protection.OUTPUT_READ_BACK);
    addIf(
        missing,
        commands.voltsQuery().isEmpty() || commands.amperesQuery().isEmpty(),
        Protection.SETTINGS_READ_BACK);
    addIf(missing, !tellsRegulation(), Protection.REGULATION_STATUS);
    addIf(
        missing,
        !says(StatusMeaning.OVERVOLTAGE_TRIP) && !says(StatusMeaning.OVERCURRENT_TRIP),
        Protection.TRIP_STATUS);
    addIf(missing, commands.errorQuery().isEmpty(), Protection.ERROR_QUEUE);
    addIf(missing, timer.isEmpty(), Protection.SUPPLY_WATCHDOG);
    return missing;
  }

  /** What the envelope check needs of one channel. */
  public SupplyFacts facts(int channel) {
    ChannelAbility ability = channel(channel);
    return new SupplyFacts(
        "supply " + name,
        ability.volts(),
        ability.amperes(),
        ability.voltsStep(),
        ability.amperesStep(),
        ability.maxWatts(),
        missing());
  }

  private boolean says(StatusMeaning meaning) {
    return status.stream()
        .anyMatch(q -> q.bits().containsValue(meaning) || q.words().containsValue(meaning));
  }

  private static void addIf(Set<Protection> missing, boolean absent, Protection protection) {
    if (absent) {
      missing.add(protection);
    }
  }
}
