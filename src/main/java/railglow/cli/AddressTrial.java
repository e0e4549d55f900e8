package railglow.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import railglow.config.ConfigException;
import railglow.config.SupplyDescriptorFile;
import railglow.link.LineEnd;
import railglow.link.Transcript;
import railglow.safety.Protection;
import railglow.supply.BenchProtection;
import railglow.supply.DescriptorMatch;
import railglow.supply.SupplyAddress;
import railglow.supply.SupplyDescriptor;
import railglow.supply.SupplyGreeting;
import railglow.supply.SupplyLock;
import railglow.supply.TalkingWay;
import railglow.time.MonotonicClock;
import railglow.time.WallStamp;

/**
 * A supply of which only the address is known: who it is, which descriptor fits, whether every word
 * of it works with the output off, and how a bench file for it begins.
 */
final class AddressTrial {
  /** A descriptor that was tried. */
  private record Tried(SupplyDescriptor descriptor, Path file, int exitCode) {}

  private final Terminal terminal;
  private final MonotonicClock clock;
  private final Path folder;
  private final boolean own;

  /**
   * @param own whether the descriptors are the user's own files, to be used where they are
   */
  AddressTrial(Terminal terminal, MonotonicClock clock, Path folder, boolean own) {
    this.terminal = terminal;
    this.clock = clock;
    this.folder = folder;
    this.own = own;
  }

  /** The exit code: done, nothing usable there, or not proven off. */
  int run(String given, KnownSupplies known) throws UserMistake, IOException, ConfigException {
    SupplyAddress address = address(given);
    SupplyGreeting.Outcome greeting = greeted(address, known.descriptors());
    String identity =
        greeting.identity().orElseThrow(() -> new UserMistake(silence(address, greeting)));
    terminal.say("Answers    " + identity);
    terminal.say("           " + heardHow(address, greeting.way()));
    List<SupplyDescriptor> fitting = DescriptorMatch.equallyGood(identity, known.descriptors());
    if (fitting.isEmpty()) {
      throw new UserMistake(
          "no descriptor knows '"
              + identity
              + "'. Nothing but questions was sent. Copy the nearest one of instruments/, put this"
              + " supply's identity and words into it, and give it with --supply FILE");
    }
    Files.createDirectories(folder);
    List<Tried> tried = new ArrayList<>();
    for (SupplyDescriptor each : fitting) {
      tried.add(tried(address, greeting.way(), each, known.fileOf(each)));
    }
    List<Tried> working = tried.stream().filter(t -> t.exitCode() == ExitCode.DONE).toList();
    if (working.isEmpty()) {
      terminal.complain(
          "Not every word works: correct the descriptor and try it again with --supply FILE.");
      return tried.stream().mapToInt(Tried::exitCode).max().orElseThrow();
    }
    beginning(at(address, greeting.way()), working);
    return ExitCode.DONE;
  }

  private static SupplyAddress address(String given) throws UserMistake {
    try {
      return SupplyAddress.parse(given);
    } catch (IllegalArgumentException e) {
      throw new UserMistake(e.getMessage());
    }
  }

  private SupplyGreeting.Outcome greeted(SupplyAddress address, List<SupplyDescriptor> known)
      throws UserMistake {
    terminal.say(
        "Asking     "
            + address
            + ", by questions alone"
            + (address.isSerial() ? "; a line that stays silent takes a minute" : ""));
    try {
      SupplyLock lock = SupplyLock.take(address, WallStamp.now(clock).instant());
      try {
        return SupplyGreeting.ask(address, known, Transcript.NONE, clock);
      } finally {
        lock.close();
      }
    } catch (IOException e) {
      throw new UserMistake(e.getMessage());
    }
  }

  private static String heardHow(SupplyAddress address, TalkingWay way) {
    return (address.isSerial() ? way.line().baud() + " baud, " : "") + way.framing();
  }

  private static String silence(SupplyAddress address, SupplyGreeting.Outcome greeting) {
    SupplyGreeting.Attempt nearest = greeting.nearest().orElseThrow();
    String rates =
        greeting.failed().stream()
            .map(attempt -> Integer.toString(attempt.way().line().baud()))
            .distinct()
            .collect(Collectors.joining(", "));
    String asked =
        "no identity from "
            + address
            + ", asked with LF, CR LF and CR, with and without echo"
            + (address.isSerial() ? ", at " + rates + " baud" : "");
    if (nearest.heard() == 0) {
      return asked
          + ": not one byte came. Is it the right address, is the supply on, and is its remote"
          + " control switched on"
          + (address.isSerial()
              ? "? A null-modem cable or other settings of the line may be needed: give them in a"
                  + " descriptor with --supply FILE"
              : "?");
    }
    return asked
        + ": "
        + nearest.heard()
        + " bytes came, "
        + (address.isSerial() ? "first at " + nearest.way().line().baud() + " baud, " : "")
        + "but no identity ("
        + nearest.complaint()
        + "). "
        + (address.isSerial()
            ? "A wrong baud rate, parity or number of data bits looks like this: see the supply's"
                + " manual, and give ?baud=... or a descriptor with --supply FILE"
            : "Something else than a SCPI supply looks like this: check the address");
  }

  private static SupplyAddress at(SupplyAddress address, TalkingWay way) {
    return address.withBaud(way.line().baud());
  }

  private Tried tried(SupplyAddress address, TalkingWay way, SupplyDescriptor fitting, Path file)
      throws UserMistake, IOException, ConfigException {
    Path used = own ? file : besideBench(file, way, fitting);
    SupplyDescriptor descriptor = SupplyDescriptorFile.read(used);
    if (!way.framesAs(descriptor.wire().link())) {
      throw new UserMistake(
          address
              + " answers where "
              + way.framing()
              + "; "
              + used
              + " says otherwise: correct its"
              + " send-end, reply-end and echo");
    }
    int exitCode = ExitCode.DONE;
    for (int channel = 1; channel <= descriptor.channels().size(); channel++) {
      if (descriptor.channels().size() > 1) {
        terminal.say("Channel    " + channel + " of " + descriptor.channels().size());
      }
      SupplyPlace place = new SupplyPlace(at(address, way).toString(), channel, true, Set.of());
      exitCode =
          Math.max(exitCode, new SupplyTrial(terminal, clock).run(place, descriptor, folder));
    }
    return new Tried(descriptor, used, exitCode);
  }

  /**
   * A shipped descriptor where the user can change it, as it must be for this way of talking. What
   * lies there already may have been changed by the user, and is taken as it is.
   */
  private Path besideBench(Path shipped, TalkingWay way, SupplyDescriptor fitting)
      throws IOException {
    Path copy = folder.resolve(shipped.getFileName().toString());
    if (Files.exists(copy)) {
      terminal.say("Descriptor " + copy + " is there already and is used as it is");
    } else {
      Files.writeString(copy, adapted(Files.readString(shipped), way, fitting));
    }
    return copy;
  }

  /** The text with the ends and the echo that were heard. */
  private static String adapted(String text, TalkingWay way, SupplyDescriptor fitting) {
    if (way.framesAs(fitting.wire().link())) {
      return text;
    }
    String echo = way.link().echo() ? "\n  echo: yes" : "";
    return text.replaceAll("(?m)^  echo:.*\\R", "")
        .replaceAll("(?m)^  (send|reply)-end:.*\\R", "")
        .replaceFirst(
            "(?m)^wire:.*$",
            "wire:\n  send-end: "
                + word(way.link().sendEnd())
                + "\n  reply-end: "
                + word(way.link().replyEnd())
                + echo);
  }

  private static String word(LineEnd end) {
    return end.name().toLowerCase(Locale.ROOT);
  }

  private void beginning(SupplyAddress address, List<Tried> working) {
    Tried first = working.get(0);
    if (DescriptorMatch.isGeneric(first.descriptor())) {
      terminal.say(
          "This is a description of a family, not of your supply: put its identity, ranges and meter"
              + " errors into "
              + first.file()
              + " before the first run.");
    }
    if (working.size() > 1) {
      terminal.say(
          working.size()
              + " descriptions fit equally and every word of each works with the output off. They"
              + " differ in where the supply shows constant voltage and constant current, which its"
              + " manual says. Take the right one: "
              + working.stream()
                  .map(t -> t.file().getFileName() + " (" + t.descriptor().name() + ")")
                  .collect(Collectors.joining(" or ")));
    }
    terminal.say("");
    terminal.say(
        "# A bench file beside "
            + first.file()
            + " begins like this; add camera, leads and limits.");
    terminal.say("name: my bench");
    terminal.say("supply:");
    terminal.say("  descriptor: " + first.file().getFileName());
    terminal.say("  address: " + address);
    terminal.say(
        "  channel: 1"
            + (first.descriptor().channels().size() > 1
                ? "  # of " + first.descriptor().channels().size()
                : ""));
    terminal.say("companion: yes");
    TreeSet<String> lacks =
        BenchProtection.missing(first.descriptor(), true).stream()
            .filter(Protection::isDemanded)
            .map(Protection::key)
            .collect(Collectors.toCollection(TreeSet::new));
    if (!lacks.isEmpty()) {
      terminal.say("# Add this only when you accept to work without:");
      terminal.say("# accepts-missing: [" + String.join(", ", lacks) + "]");
    }
  }
}
