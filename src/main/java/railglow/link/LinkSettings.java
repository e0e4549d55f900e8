package railglow.link;

import java.time.Duration;

/**
 * How an instrument wants to be talked to.
 *
 * @param sendEnd ends each message sent
 * @param replyEnd ends each reply
 * @param pauseNanos least time between the end of one message or exchange and the next message
 * @param echo whether the instrument sends back what it gets, before it answers
 * @param maxReplyBytes a longer reply is taken as garbage
 * @param quietNanos silence of this length means that nothing more is under way
 * @param proof asked after reopening where a fresh connection alone proves nothing
 */
public record LinkSettings(
    LineEnd sendEnd,
    LineEnd replyEnd,
    long pauseNanos,
    boolean echo,
    int maxReplyBytes,
    long quietNanos,
    ProofQuestion proof) {
  /** LF both ways, no pause, no echo, 64 KiB, 200 ms of silence, an identity of four fields. */
  public static final LinkSettings USUAL =
      new LinkSettings(
          LineEnd.LF,
          LineEnd.LF,
          0,
          false,
          65_536,
          Duration.ofMillis(200).toNanos(),
          ProofQuestion.fixed(
              "*IDN?", ReplyPattern.of("[^,;]*[A-Za-z][^,;]*(?:,[^,]*){3,}")::matches));

  public LinkSettings {
    if (sendEnd == LineEnd.NONE) {
      throw new IllegalArgumentException("a message that is sent needs an end");
    }
    if (pauseNanos < 0 || pauseNanos > Duration.ofSeconds(10).toNanos()) {
      throw new IllegalArgumentException("the pause between messages is not in 0..10 s");
    }
    if (maxReplyBytes < 16 || maxReplyBytes > 1 << 24) {
      throw new IllegalArgumentException("the longest reply is not in 16..16777216 bytes");
    }
    if (quietNanos < 1_000_000 || quietNanos > Duration.ofSeconds(10).toNanos()) {
      throw new IllegalArgumentException("the time of silence is not in 1 ms..10 s");
    }
  }

  public LinkSettings withEnds(LineEnd send, LineEnd reply) {
    return new LinkSettings(send, reply, pauseNanos, echo, maxReplyBytes, quietNanos, proof);
  }

  public LinkSettings withPause(long nanos) {
    return new LinkSettings(sendEnd, replyEnd, nanos, echo, maxReplyBytes, quietNanos, proof);
  }

  public LinkSettings withEcho(boolean sendsBack) {
    return new LinkSettings(
        sendEnd, replyEnd, pauseNanos, sendsBack, maxReplyBytes, quietNanos, proof);
  }

  public LinkSettings withMaxReplyBytes(int bytes) {
    return new LinkSettings(sendEnd, replyEnd, pauseNanos, echo, bytes, quietNanos, proof);
  }

  public LinkSettings withQuiet(long nanos) {
    return new LinkSettings(sendEnd, replyEnd, pauseNanos, echo, maxReplyBytes, nanos, proof);
  }

  public LinkSettings withProof(ProofQuestion question) {
    return new LinkSettings(
        sendEnd, replyEnd, pauseNanos, echo, maxReplyBytes, quietNanos, question);
  }
}
