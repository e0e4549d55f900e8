package railglow.config;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import railglow.link.ReplyPattern;
import railglow.supply.ChannelAbility;
import railglow.supply.MeterError;
import railglow.supply.OutputTimer;
import railglow.supply.ProtectionLevel;
import railglow.supply.SupplyCommands;
import railglow.supply.SupplyDescriptor;
import railglow.units.Interval;
import railglow.units.Unit;

/** Reads a supply descriptor: what one kind of supply can do and how it wants to be talked to. */
public final class SupplyDescriptorFile {
  private static final double MAX_VOLTS = 1000;
  private static final double MAX_AMPERES = 500;
  private static final double MAX_WATTS = 20_000;
  private static final double MAX_SECONDS = 3600;

  private SupplyDescriptorFile() {}

  /**
   * @throws ConfigException listing everything that is wrong with the file
   */
  public static SupplyDescriptor read(Path path) throws ConfigException {
    ConfigFile file = ConfigFile.read(path).as(FileKind.SUPPLY);
    SupplyDescriptor descriptor = from(file.root());
    file.finish();
    return descriptor;
  }

  /** As {@link #read}, from text already in hand; the path only names it. */
  public static SupplyDescriptor parse(Path path, String text) throws ConfigException {
    ConfigFile file = ConfigFile.parse(path, text).as(FileKind.SUPPLY);
    SupplyDescriptor descriptor = from(file.root());
    file.finish();
    return descriptor;
  }

  private static SupplyDescriptor from(ConfigSection root) {
    String name = root.text("name");
    ReplyPattern identity = identity(root);
    List<ChannelAbility> channels = channels(root);
    SupplyWordsReader words = new SupplyWordsReader(channels.size());
    SupplyCommands commands = words.commands(root.section("commands"));
    SupplyDescriptor descriptor =
        new SupplyDescriptor(
            name,
            identity,
            SupplyWireReader.wire(root.section("wire"), identity, commands),
            SupplyWireReader.line(root.optionalSection("serial")),
            channels,
            commands,
            words.status(root),
            protection(root, "over-voltage-protection", "{volts}", Unit.VOLT, MAX_VOLTS),
            protection(root, "over-current-protection", "{amperes}", Unit.AMPERE, MAX_AMPERES),
            timer(root));
    words.checkChannels(root, descriptor);
    return descriptor;
  }

  private static ReplyPattern identity(ConfigSection root) {
    String text = root.text("identity");
    try {
      return ReplyPattern.of(text);
    } catch (IllegalArgumentException e) {
      root.report("identity", e.getMessage());
      return ReplyPattern.none();
    }
  }

  private static List<ChannelAbility> channels(ConfigSection root) {
    List<ChannelAbility> channels = new ArrayList<>();
    for (ConfigSection section : root.sections("channels")) {
      ConfigSection volts = section.section("voltage");
      ConfigSection amperes = section.section("current");
      channels.add(
          new ChannelAbility(
              range(volts, Unit.VOLT, MAX_VOLTS),
              step(volts, "step", Unit.VOLT),
              range(amperes, Unit.AMPERE, MAX_AMPERES),
              step(amperes, "step", Unit.AMPERE),
              section
                  .optionalQuantity("power", Unit.WATT, 0.001, MAX_WATTS)
                  .orElse(Double.POSITIVE_INFINITY),
              step(volts, "meter-step", Unit.VOLT),
              step(amperes, "meter-step", Unit.AMPERE),
              meterError(volts, Unit.VOLT),
              meterError(amperes, Unit.AMPERE)));
    }
    if (channels.isEmpty()) {
      root.report("channels", "must list at least one channel with 'voltage' and 'current'");
    }
    return channels;
  }

  private static MeterError meterError(ConfigSection section, Unit unit) {
    return new MeterError(
        section.quantity("meter-error", unit, 1e-7, 10),
        section.optionalQuantity("meter-error-share", Unit.PERCENT, 0, 10).orElse(0) / 100);
  }

  private static double step(ConfigSection section, String key, Unit unit) {
    return section.optionalQuantity(key, unit, 1e-7, 10).orElse(0);
  }

  private static Interval range(ConfigSection section, Unit unit, double most) {
    return interval(
        section,
        "lowest",
        section.quantity("lowest", unit, 0, most),
        "highest",
        section.quantity("highest", unit, 0, most),
        unit);
  }

  private static Interval interval(
      ConfigSection section, String lowKey, double low, String highKey, double high, Unit unit) {
    if (low <= high) {
      return new Interval(low, high);
    }
    if (low > high) {
      section.report(
          lowKey,
          "is "
              + railglow.units.Quantity.format(low, unit)
              + ", above '"
              + highKey
              + "' "
              + railglow.units.Quantity.format(high, unit));
    }
    return new Interval(0, 0);
  }

  private static Optional<ProtectionLevel> protection(
      ConfigSection root, String key, String placeholder, Unit unit, double most) {
    return root.optionalSection(key)
        .map(
            section ->
                new ProtectionLevel(
                    SupplyWordsReader.template(section, "set", placeholder),
                    SupplyWordsReader.optionalTemplate(section, "query"),
                    SupplyWordsReader.optionalTemplate(section, "enable"),
                    range(section, unit, most),
                    step(section, "step", unit)));
  }

  private static Optional<OutputTimer> timer(ConfigSection root) {
    Optional<ConfigSection> found = root.optionalSection("watchdog");
    if (found.isEmpty()) {
      return Optional.empty();
    }
    ConfigSection section = found.get();
    OutputTimer timer =
        new OutputTimer(
            SupplyWordsReader.template(section, "arm", "{seconds}"),
            SupplyWordsReader.optionalTemplate(section, "feed"),
            SupplyWordsReader.optionalTemplate(section, "disarm"),
            interval(
                section,
                "shortest",
                section.quantity("shortest", Unit.SECOND, 0.01, MAX_SECONDS),
                "longest",
                section.quantity("longest", Unit.SECOND, 0.01, MAX_SECONDS),
                Unit.SECOND),
            section.flag("any-command-feeds", false));
    if (timer.feed().isEmpty() == !timer.anyCommandFeeds()) {
      section.report(
          "feed",
          "and 'any-command-feeds' must not both be given or both be absent: say how the time is"
              + " restarted");
    }
    return Optional.of(timer);
  }
}
