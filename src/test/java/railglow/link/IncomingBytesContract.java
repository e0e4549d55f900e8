package railglow.link;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.time.Duration;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What every one-way stream of bytes must do. */
abstract class IncomingBytesContract {
  private static final long SECOND = 1_000_000_000;

  /** A stream that gives these bytes and ends. */
  abstract IncomingBytes thatGives(byte[] bytes) throws Exception;

  /** A stream that stays open and gives nothing. */
  abstract IncomingBytes thatIsSilent() throws Exception;

  @Test
  void everyByteComesInOrderAndThenTheEnd() throws Exception {
    byte[] sent = new byte[300_001];
    new Random(7).nextBytes(sent);
    try (IncomingBytes stream = thatGives(sent)) {
      byte[] got = new byte[sent.length];
      int filled = 0;
      while (filled < got.length) {
        int count = stream.read(got, filled, got.length - filled, 5 * SECOND);
        assertTrue(count > 0, "stopped after " + filled + " bytes");
        filled += count;
      }
      assertArrayEquals(sent, got);
      assertEquals(IncomingBytes.ENDED, stream.read(got, 0, 1, 5 * SECOND));
      assertEquals(IncomingBytes.ENDED, stream.read(got, 0, 1, 5 * SECOND));
    }
  }

  @Test
  void aSilentStreamGivesNothingWithinTheTime() throws Exception {
    try (IncomingBytes stream = thatIsSilent()) {
      assertTimeoutPreemptively(
          Duration.ofSeconds(5),
          () -> assertEquals(0, stream.read(new byte[4], 0, 4, SECOND / 100)));
    }
  }

  @Test
  void closingEndsASilentStreamAtOnceAndMayBeRepeated() throws Exception {
    IncomingBytes stream = thatIsSilent();
    assertTimeoutPreemptively(
        Duration.ofSeconds(5),
        () -> {
          stream.close();
          stream.close();
        });
  }

  @Test
  void theDescriptionNamesThePlace() throws IOException, Exception {
    try (IncomingBytes stream = thatIsSilent()) {
      assertTrue(stream.description().length() > 3);
    }
  }
}
