package railglow.supply;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import railglow.link.CannotOpenException;
import railglow.link.Link;
import railglow.link.LinkException;
import railglow.link.LinkSettings;
import railglow.link.PortLink;
import railglow.link.ProofQuestion;
import railglow.link.ReplyPattern;
import railglow.link.Transcript;
import railglow.time.MonotonicClock;

/**
 * Finds out by questions alone who answers at an address of which nothing else is known: each way
 * of talking is tried until one brings an identity.
 */
public final class SupplyGreeting {
  private static final long PATIENCE_NANOS = 1_500_000_000;
  private static final long REPLY_NANOS = 700_000_000;

  /** Maker, model, serial number, version: IEEE 488.2, 10.14.3. */
  private static final ReplyPattern FOUR_FIELDS =
      ReplyPattern.of("[^,;]*[A-Za-z][^,;]*(?:,[^,]*){3,}");

  /**
   * One way that brought no identity.
   *
   * @param heard bytes that came all the same
   * @param complaint why they are no identity
   */
  public record Attempt(TalkingWay way, long heard, String complaint) {}

  /**
   * What was found.
   *
   * @param identity empty when nobody said who it is
   * @param way in which it was said; the last one tried otherwise
   * @param failed the ways tried before
   */
  public record Outcome(Optional<String> identity, TalkingWay way, List<Attempt> failed) {
    public Outcome {
      failed = List.copyOf(failed);
    }

    /** The attempt that came nearest: the one in which something was heard, else the first. */
    public Optional<Attempt> nearest() {
      return failed.stream()
          .filter(attempt -> attempt.heard() > 0)
          .findFirst()
          .or(() -> failed.stream().findFirst());
    }
  }

  /** Opens nothing before it is asked to. */
  interface Links {
    Link to(TalkingWay way, LinkSettings settings, Transcript transcript);
  }

  private final Links links;
  private final List<SupplyDescriptor> known;
  private final Transcript transcript;

  SupplyGreeting(Links links, List<SupplyDescriptor> known, Transcript transcript) {
    this.links = links;
    this.known = List.copyOf(known);
    this.transcript = transcript;
  }

  /**
   * Asks in every way until one is answered. Nothing but questions is sent.
   *
   * @param known descriptors whose identities are believed besides the standard's form
   * @throws CannotOpenException when the address can't be opened at all, with what to do
   */
  public static Outcome ask(
      SupplyAddress address,
      List<SupplyDescriptor> known,
      Transcript transcript,
      MonotonicClock clock)
      throws CannotOpenException {
    Links links =
        (way, settings, told) ->
            new PortLink(address.port(way.line(), clock), settings, clock, told);
    return new SupplyGreeting(links, known, transcript).ask(TalkingWay.all(address, known));
  }

  Outcome ask(List<TalkingWay> ways) throws CannotOpenException {
    List<Attempt> failed = new ArrayList<>();
    for (TalkingWay way : ways) {
      Heard heard = new Heard(transcript);
      LinkSettings asking =
          way.link().withProof(ProofQuestion.fixed(way.identify(), this::isIdentity));
      try (Link link = links.to(way, asking, heard)) {
        link.resynchronise(PATIENCE_NANOS);
        String reply = link.exchange(way.identify(), REPLY_NANOS).strip();
        if (isIdentity(reply)) {
          return new Outcome(Optional.of(reply), way, failed);
        }
        failed.add(new Attempt(way, heard.bytes, "'" + reply + "' is no identity"));
      } catch (CannotOpenException e) {
        throw e;
      } catch (LinkException e) {
        failed.add(new Attempt(way, heard.bytes, e.getMessage()));
      }
    }
    return new Outcome(Optional.empty(), ways.get(ways.size() - 1), failed);
  }

  private boolean isIdentity(String reply) {
    return FOUR_FIELDS.matches(reply)
        || known.stream()
            .map(SupplyDescriptor::identity)
            .anyMatch(pattern -> !pattern.text().isEmpty() && pattern.isFoundIn(reply));
  }

  /** Passes on and counts what came. */
  private static final class Heard implements Transcript {
    private final Transcript next;
    private long bytes;

    Heard(Transcript next) {
      this.next = next;
    }

    @Override
    public void sent(long nowNanos, byte[] sent, int length) {
      next.sent(nowNanos, sent, length);
    }

    @Override
    public void received(long nowNanos, byte[] received, int length) {
      bytes += length;
      next.received(nowNanos, received, length);
    }

    @Override
    public void note(long nowNanos, String text) {
      next.note(nowNanos, text);
    }
  }
}
