package railglow.link;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import railglow.time.MonotonicClock;

/** A {@link Link} over any {@link BytePort}. */
public final class PortLink implements Link {
  private static final String SPOIL = "@";

  private final BytePort port;
  private final LinkSettings settings;
  private final MonotonicClock clock;
  private final Transcript transcript;
  private final ReplyBytes incoming;
  private boolean inStep;
  private boolean sentInPart;
  private boolean needsOpening = true;
  private boolean everAsked;
  private boolean closed;
  private long lastEndNanos;
  private long sentNanos;
  private int attempts;
  private int proofsUnanswered;
  private String whyOutOfStep = "it has not been opened";

  /** Made while there is memory: a literal met for the first time takes some (decision 0122). */
  private final String noMemory;

  /**
   * Does not open the port; {@link #resynchronise} does.
   *
   * @throws IllegalArgumentException if replies are to end with the transport's messages and the
   *     port does not keep them
   */
  public PortLink(
      BytePort port, LinkSettings settings, MonotonicClock clock, Transcript transcript) {
    if (settings.replyEnd() == LineEnd.NONE && !port.traits().keepsMessageEnds()) {
      throw new IllegalArgumentException(
          port.description() + " has no message ends; replies need a line end");
    }
    this.port = port;
    this.settings = settings;
    this.clock = clock;
    this.transcript = transcript;
    this.incoming = new ReplyBytes(port, settings, clock, transcript);
    this.lastEndNanos = clock.nanos() - settings.pauseNanos();
    this.sentNanos = lastEndNanos;
    this.noMemory = "the program had no memory left";
  }

  @Override
  public String exchange(String request, long timeoutNanos) throws LinkException {
    return exchange(request, timeoutNanos, incoming::line);
  }

  @Override
  public byte[] exchangeBlock(String request, int maxBytes, long timeoutNanos)
      throws LinkException {
    return exchange(request, timeoutNanos, deadline -> incoming.block(maxBytes, deadline));
  }

  /** Takes one reply. */
  private interface Taking<T> {
    T take(long deadline) throws LinkException;
  }

  /** Out of step from before the question is sent until its whole reply is here. */
  private <T> T exchange(String request, long timeoutNanos, Taking<T> reply) throws LinkException {
    byte[] bytes = encode(request);
    requireInStep();
    long deadline = clock.nanos() + timeoutNanos;
    leaveStep("the exchange of '" + request + "' did not end");
    everAsked = true;
    try {
      pause(deadline);
      if (incoming.unasked()) {
        incoming.requireNothingLeft();
      }
      write(bytes, deadline);
      if (settings.echo()) {
        incoming.echo(request, deadline);
      }
      T taken = reply.take(deadline);
      incoming.requireNothingLeft();
      lastEndNanos = clock.nanos();
      inStep = true;
      return taken;
    } catch (LinkLostException e) {
      needsOpening = true;
      throw e;
    }
  }

  @Override
  public void send(String message, long timeoutNanos) throws LinkException {
    byte[] bytes = encode(message);
    if (closed || sentInPart) {
      requireInStep();
    }
    long deadline = clock.nanos() + timeoutNanos;
    boolean wasInStep = inStep;
    String why = whyOutOfStep;
    leaveStep("sending '" + message + "' did not end");
    try {
      pause(deadline);
      boolean unasked = incoming.unasked();
      write(bytes, deadline);
      lastEndNanos = clock.nanos();
      if (!wasInStep) {
        incoming.forget();
        whyOutOfStep = why;
      } else if (unasked) {
        // the message had to go out; what came before it makes the next answer doubtful
        leaveStep("bytes came that nobody asked for");
      } else {
        if (settings.echo()) {
          incoming.echo(message, deadline);
          lastEndNanos = clock.nanos();
        }
        inStep = true;
      }
    } catch (LinkLostException e) {
      needsOpening = true;
      throw e;
    }
  }

  @Override
  public ReadyMessage ready(List<String> messages) {
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    messages.forEach(message -> all.writeBytes(encode(message)));
    return new ReadyMessage(all.toByteArray());
  }

  @Override
  public boolean sendWithoutMemory(ReadyMessage message) {
    inStep = false;
    whyOutOfStep = noMemory;
    try {
      boolean handedOver = port.writeWithoutMemory(message);
      // opening a serial line anew could throw away what was just handed over
      needsOpening |= !handedOver;
      return handedOver;
    } catch (Throwable t) {
      needsOpening = true;
      // nothing can be made of it now, not even a sentence; whoever asked tries again
      return false;
    }
  }

  @Override
  public boolean inStep() {
    return inStep;
  }

  @Override
  public void resynchronise(long timeoutNanos) throws LinkException {
    if (closed) {
      throw new OutOfStepException("the link to " + description() + " is closed");
    }
    long deadline = clock.nanos() + timeoutNanos;
    leaveStep("it could not be resynchronised");
    incoming.forget();
    if (needsOpening || port.traits().freshAfterOpen()) {
      port.open(timeoutNanos);
      transcript.note(clock.nanos(), "opened " + description());
    }
    // cleared only by success: a port that could not be brought into step is opened anew next time
    needsOpening = true;
    if (port.traits().freshAfterOpen()) {
      sentInPart = false;
      if (!everAsked) {
        inStep = true;
        return;
      }
    }
    if (sentInPart) {
      // makes the part that arrived a syntax error instead of a shorter command
      write(encode(SPOIL), deadline);
    }
    while (!proven(deadline)) {
      transcript.note(clock.nanos(), "the answer proves nothing, asking again");
    }
    lastEndNanos = clock.nanos();
    needsOpening = false;
    inStep = true;
  }

  /** One attempt; false if another may still succeed. */
  private boolean proven(long deadline) throws LinkException {
    boolean repliesMayLinger = !port.traits().readsOnRequest() && !port.traits().freshAfterOpen();
    if (repliesMayLinger) {
      incoming.drain(deadline);
    }
    incoming.forget();
    ProofQuestion.Attempt attempt = settings.proof().attempt(attempts++);
    for (String message : attempt.before()) {
      pause(deadline);
      write(encode(message), deadline);
      lastEndNanos = clock.nanos();
    }
    proofsUnanswered++;
    for (ProofQuestion.Asked asked : attempt.questions()) {
      if (!answered(asked, deadline)) {
        return false;
      }
    }
    boolean only = !repliesMayLinger && proofsUnanswered == 1;
    if (!only && !incoming.silentFor(settings.quietNanos(), deadline)) {
      return false;
    }
    proofsUnanswered = 0;
    return true;
  }

  private boolean answered(ProofQuestion.Asked asked, long deadline) throws LinkException {
    pause(deadline);
    incoming.forget();
    write(encode(asked.question()), deadline);
    long now = clock.nanos();
    long until = now + Math.max((deadline - now) / 3, settings.quietNanos());
    try {
      String reply;
      do {
        // whatever else comes is the late answer to something else, or an echo
        reply = incoming.line(until - deadline < 0 ? until : deadline);
      } while (!asked.answer().test(reply));
      lastEndNanos = clock.nanos();
      return true;
    } catch (OutOfStepException e) {
      return false;
    } catch (LinkTimeoutException e) {
      if (deadline - clock.nanos() <= settings.quietNanos()) {
        throw e;
      }
      return false;
    }
  }

  private void write(byte[] bytes, long deadline) throws LinkException {
    int written = -1;
    try {
      written = port.write(bytes, Math.max(0, deadline - clock.nanos()));
    } finally {
      // after a failure nobody knows how much went out
      sentInPart = written != 0 && written < bytes.length;
      needsOpening |= written < 0;
    }
    sentNanos = clock.nanos() + written * port.traits().nanosPerByte();
    transcript.sent(clock.nanos(), bytes, written);
    if (written < bytes.length) {
      throw new LinkTimeoutException(
          description() + " took " + written + " of " + bytes.length + " bytes in time");
    }
  }

  /** Waits by reading, so that bytes nobody asked for are seen. */
  private void pause(long deadline) throws LinkException {
    if (settings.pauseNanos() == 0) {
      return;
    }
    // what a slow line was given last is still on its way when the port has taken it
    long lastNanos = sentNanos - lastEndNanos > 0 ? sentNanos : lastEndNanos;
    long until = lastNanos + settings.pauseNanos();
    if (until - deadline > 0) {
      throw new LinkTimeoutException(
          "the time-out is shorter than the pause that " + description() + " needs");
    }
    incoming.collectUntil(until);
  }

  private void leaveStep(String why) {
    inStep = false;
    whyOutOfStep = why;
  }

  private void requireInStep() throws OutOfStepException {
    if (closed || !inStep) {
      throw new OutOfStepException(
          "the link to "
              + description()
              + " must be resynchronised: "
              + (closed ? "it is closed" : whyOutOfStep));
    }
  }

  private byte[] encode(String message) {
    for (int i = 0; i < message.length(); i++) {
      char c = message.charAt(i);
      if (c == '\n' || c == '\r' || c > 0xff) {
        throw new IllegalArgumentException(
            "a message is one line of bytes; character " + (i + 1) + " is code " + (int) c);
      }
    }
    return (message + settings.sendEnd().text()).getBytes(StandardCharsets.ISO_8859_1);
  }

  @Override
  public String description() {
    return port.description();
  }

  @Override
  public void close() {
    closed = true;
    inStep = false;
    port.close();
  }
}
