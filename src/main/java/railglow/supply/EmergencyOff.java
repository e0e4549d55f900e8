package railglow.supply;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.LongConsumer;
import railglow.link.Link;
import railglow.link.PortLink;
import railglow.link.Transcript;
import railglow.safety.StopLatch;
import railglow.time.MonotonicClock;
import railglow.time.Pause;

/**
 * Drives the outputs of whatever is at an address off, with nothing known but the address, and says
 * truly whether that is proven. Off is sent before anything is asked.
 */
public final class EmergencyOff {
  private static final long RETRY_NANOS = 50_000_000;
  private static final long LEAST_PATIENCE_NANOS = 1_000_000_000;

  /**
   * What became of one output.
   *
   * @param identity what the instrument says it is; empty if it did not say
   * @param channel from 1
   * @param sentence for the operator
   */
  public record Result(String identity, int channel, boolean proven, String sentence) {}

  private final Function<SupplyDescriptor, Link> links;
  private final List<SupplyDescriptor> known;
  private final long patienceNanos;
  private final MonotonicClock clock;
  private final LongConsumer pause;
  private String lastComplaint = "it was not reached";

  EmergencyOff(
      Function<SupplyDescriptor, Link> links,
      List<SupplyDescriptor> known,
      long patienceNanos,
      MonotonicClock clock,
      LongConsumer pause) {
    this.links = links;
    this.known = List.copyOf(known);
    this.patienceNanos = Math.max(patienceNanos, LEAST_PATIENCE_NANOS);
    this.clock = clock;
    this.pause = pause;
  }

  /**
   * Tries until every output is proven off or the patience with one of them ends.
   *
   * @param known descriptors to look for a fitting one in; may be empty
   * @param patienceNanos for each output
   * @return one result for each output that is known of; at least one
   */
  public static List<Result> drive(
      SupplyAddress address,
      List<SupplyDescriptor> known,
      long patienceNanos,
      MonotonicClock clock,
      Transcript transcript) {
    Function<SupplyDescriptor, Link> links =
        descriptor ->
            new PortLink(
                address.port(descriptor.line().orElse(LineManners.USUAL), clock),
                descriptor.wire().link(),
                clock,
                transcript);
    return new EmergencyOff(links, known, patienceNanos, clock, Pause::nanos).drive();
  }

  List<Result> drive() {
    for (SupplyDescriptor manner : manners()) {
      Optional<String> identity = greet(manner);
      if (identity.isPresent()) {
        SupplyDescriptor fitting = DescriptorMatch.best(identity.get(), known).orElse(manner);
        return outputs(identity.get(), fitting);
      }
    }
    return List.of(
        new Result(
            "",
            1,
            false,
            "nothing answers there: "
                + lastComplaint
                + ". Off was sent where a connection could be made, but it is NOT proven:"
                + " switch the supply off by hand"));
  }

  /** One descriptor for each different way of talking, the plainest first. */
  private List<SupplyDescriptor> manners() {
    Map<Object, SupplyDescriptor> different = new LinkedHashMap<>();
    List<SupplyDescriptor> all = new ArrayList<>();
    all.add(PlainSupply.descriptor());
    all.addAll(known);
    for (SupplyDescriptor each : all) {
      var link = each.wire().link();
      different.putIfAbsent(
          List.of(
              link.sendEnd(),
              link.replyEnd(),
              link.echo(),
              each.commands().off(),
              each.line().orElse(LineManners.USUAL)),
          each);
    }
    return List.copyOf(different.values());
  }

  /** Sends off and asks who is there; empty when no answer comes in this manner. */
  private Optional<String> greet(SupplyDescriptor manner) {
    try (Link link = links.apply(manner)) {
      SupplyTalk talk = new SupplyTalk(link, manner, 1);
      String off = SupplyWords.filled(manner.commands().off(), 1);
      SupplyException notInStep = null;
      try {
        talk.reopen();
      } catch (SupplyException e) {
        notInStep = e;
      }
      try {
        // Where the line can't be brought in step the words may still arrive.
        talk.tell(off);
      } catch (SupplyException e) {
        throw notInStep == null ? e : notInStep;
      }
      if (notInStep != null) {
        throw notInStep;
      }
      String identity = talk.askInstrument(manner.commands().identify()).strip();
      return identity.isEmpty() ? Optional.empty() : Optional.of(identity);
    } catch (SupplyException e) {
      lastComplaint = e.getMessage();
      return Optional.empty();
    }
  }

  /** Off to every output before the first is looked at: a proof may take its time. */
  private void tellAll(SupplyDescriptor descriptor) {
    try (Link link = links.apply(descriptor)) {
      new SupplyTalk(link, descriptor, 1).reopen();
      for (int channel = 1; channel <= descriptor.channels().size(); channel++) {
        new SupplyTalk(link, descriptor, channel)
            .tell(SupplyWords.filled(descriptor.commands().off(), channel));
      }
    } catch (SupplyException e) {
      lastComplaint = e.getMessage();
    }
  }

  private List<Result> outputs(String identity, SupplyDescriptor descriptor) {
    List<Result> results = new ArrayList<>();
    if (descriptor.channels().size() > 1) {
      tellAll(descriptor);
    }
    boolean described = known.contains(descriptor);
    for (int channel = 1; channel <= descriptor.channels().size(); channel++) {
      String doubt = prove(descriptor, channel);
      String what =
          described
              ? "output " + channel + " of '" + identity + "'"
              : "the selected output of '" + identity + "', which no descriptor knows,";
      results.add(
          new Result(
              identity,
              channel,
              doubt.isEmpty(),
              doubt.isEmpty()
                  ? what
                      + " is off and proven: its switch was read back, volts and amperes are down"
                  : NotProvenOff.sentence(what + " is NOT proven off", doubt)));
    }
    return results;
  }

  /** Empty when proven; else the last reason why not. */
  private String prove(SupplyDescriptor descriptor, int channel) {
    long deadline = clock.nanos() + patienceNanos;
    try (Link link = links.apply(descriptor);
        ScpiSupply supply = ScpiSupply.connect(link, descriptor, channel)) {
      KeeperReports reports = new KeeperReports(SupplyListener.NONE, new StopLatch());
      OffDrive drive = new OffDrive(supply, reports, clock);
      double setVolts = Double.NaN;
      while (true) {
        String doubt;
        try {
          if (drive.attempt(setVolts, () -> false)) {
            return "";
          }
          doubt = reports.doubt();
          setVolts = supply.voltsSetting().orElse(Double.NaN);
        } catch (SupplyException e) {
          doubt = e.getMessage();
        }
        if (clock.nanos() - deadline >= 0) {
          return doubt;
        }
        pause.accept(RETRY_NANOS);
      }
    } catch (SupplyException e) {
      return e.getMessage();
    }
  }
}
