package railglow.supply;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import railglow.link.Link;
import railglow.link.LinkException;
import railglow.link.LinkTimeoutException;
import railglow.link.OutOfStepException;
import railglow.link.ReadyMessage;
import railglow.scpi.ReplyItem;
import railglow.scpi.ScpiException;
import railglow.scpi.ScpiReply;

/**
 * Words to one channel and the answers of it. After an answer that can't be the answer to its
 * question, nothing more is asked until the link is back in step. Owned by one thread.
 */
final class SupplyTalk {
  /** Makes a value of the items of an answer. */
  interface Meaning<T> {
    T of(List<ReplyItem> items) throws SupplyException;
  }

  private final Link link;
  private final long timeoutNanos;
  private final boolean compound;
  private final Optional<String> select;
  private boolean doubtful;

  SupplyTalk(Link link, SupplyDescriptor descriptor, int channel) {
    this.link = link;
    this.timeoutNanos = descriptor.wire().replyTimeoutNanos();
    this.compound = descriptor.wire().compound();
    this.select =
        descriptor.commands().selectChannel().map(words -> SupplyWords.filled(words, channel));
  }

  boolean compound() {
    return compound;
  }

  boolean isOutOfStep() {
    return doubtful || !link.inStep();
  }

  void reopen() throws SupplyException {
    try {
      link.resynchronise(Math.max(timeoutNanos, timeoutNanos * 2 + 1_000_000_000L));
      doubtful = false;
    } catch (LinkException e) {
      throw failure(e);
    }
  }

  /** Words to the channel that have no answer. */
  void tell(String... words) throws SupplyException {
    try {
      for (String message : messages(List.of(words))) {
        link.send(message, timeoutNanos);
      }
    } catch (LinkException e) {
      throw failure(e);
    }
  }

  /** Words, then questions to the channel, and as many answers of one value each. */
  <T> T ask(List<String> words, int answers, Meaning<T> meaning) throws SupplyException {
    List<String> messages = messages(words);
    String question = messages.get(messages.size() - 1);
    String reply;
    try {
      for (String message : messages.subList(0, messages.size() - 1)) {
        link.send(message, timeoutNanos);
      }
      reply = link.exchange(question, timeoutNanos);
    } catch (LinkException e) {
      throw failure(e);
    }
    try {
      return meaning.of(ScpiReply.items(reply, answers));
    } catch (ScpiException e) {
      doubtful = true;
      throw SupplyReplies.notUnderstood(question, reply, e.getMessage());
    } catch (SupplyException e) {
      doubtful = true;
      throw e;
    }
  }

  /** A question to the instrument as a whole, with its answer as it came. */
  String askInstrument(String question) throws SupplyException {
    try {
      return link.exchange(question, timeoutNanos);
    } catch (LinkException e) {
      throw failure(e);
    }
  }

  /** The last answer was none; what comes next can't be trusted. */
  SupplyException doubted(SupplyException cause) {
    doubtful = true;
    return cause;
  }

  /** Words to the channel that have no answer, for {@link #tellWithoutMemory}. */
  ReadyMessage ready(String words) {
    return link.ready(messages(List.of(words)));
  }

  boolean tellWithoutMemory(ReadyMessage message) {
    return link.sendWithoutMemory(message);
  }

  String description() {
    return link.description();
  }

  void close() {
    link.close();
  }

  private List<String> messages(List<String> words) {
    List<String> parts = new ArrayList<>(words.size() + 1);
    select.ifPresent(parts::add);
    parts.addAll(words);
    return compound ? List.of(SupplyWords.joined(parts)) : parts;
  }

  private static SupplyException failure(LinkException e) {
    SupplyException.Kind kind =
        e instanceof LinkTimeoutException
            ? SupplyException.Kind.NO_ANSWER
            : e instanceof OutOfStepException
                ? SupplyException.Kind.NOT_UNDERSTOOD
                : SupplyException.Kind.LINK_BROKEN;
    return new SupplyException(kind, e.getMessage(), e);
  }
}
