package railglow.link;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.charset.StandardCharsets;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.provider.MethodSource;
import railglow.fuzz.Documented;
import railglow.time.InventedClock;

/** Any bytes in place of a reply, in any pieces. */
@Tag("fuzz")
public class LinkBytesFuzz {
  public static Stream<byte[]> seeds() {
    return Stream.of("\n1.5\r\n", "\4#15a\nb\nc\n", "\1#0abc\n", "\2VOLT?\n1\n")
        .map(text -> text.getBytes(StandardCharsets.ISO_8859_1));
  }

  @MethodSource("seeds")
  @FuzzTest(maxDuration = "20s")
  void bytes(byte[] bytes) {
    check(bytes);
  }

  public static void check(byte[] bytes) {
    for (LineEnd end : new LineEnd[] {LineEnd.LF, LineEnd.CR, LineEnd.CRLF, LineEnd.NONE}) {
      for (boolean echo : new boolean[] {false, true}) {
        Documented.only(() -> ask(bytes, end, echo, false), LinkException.class);
        Documented.only(() -> ask(bytes, end, echo, true), LinkException.class);
      }
    }
  }

  private static void ask(byte[] bytes, LineEnd end, boolean echo, boolean block)
      throws LinkException {
    InventedClock clock = new InventedClock(0);
    String text = new String(bytes, StandardCharsets.ISO_8859_1);
    int step = text.isEmpty() ? 1 : text.charAt(0) + 1;
    MemoryPort port =
        new MemoryPort(
            clock,
            (sent, to) -> {
              for (int i = 1; i < text.length(); i += step) {
                to.deliver(text.substring(i, Math.min(text.length(), i + step)), i * 1000L);
              }
            },
            new BytePort.Traits(true, false, true));
    LinkSettings settings =
        LinkSettings.USUAL.withEnds(LineEnd.LF, end).withEcho(echo).withMaxReplyBytes(64);
    Link link = new PortLink(port, settings, clock, Transcript.NONE);
    link.resynchronise(1_000_000_000);
    try {
      int length =
          block
              ? link.exchangeBlock("VOLT?", 32, 1_000_000_000).length
              : link.exchange("VOLT?", 1_000_000_000).length();
      if (length > 64 + 4096 || !link.inStep()) {
        throw new AssertionError("a reply of " + length + " bytes");
      }
    } finally {
      if (clock.nanos() > 1_000_000_000) {
        throw new AssertionError("took longer than allowed: " + clock.nanos() + " ns");
      }
    }
  }
}
