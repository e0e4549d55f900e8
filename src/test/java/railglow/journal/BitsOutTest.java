package railglow.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.junit.jupiter.api.Test;
import railglow.thermal.CountPairs;

/** The stored bits are as {@code docs/run-folder.md} says, however they are put together. */
class BitsOutTest {
  @Test
  void numbersOfEverySizeTakeTheBitsThatTheFormatGivesThem() {
    Random random = new Random(4);
    for (int k = 0; k <= 14; k++) {
      for (int count = 1; count < 40; count++) {
        int[] numbers = new int[count];
        for (int i = 0; i < count; i++) {
          // mostly ordinary numbers of this k, some of any size up to 16 bits
          int most = random.nextInt(8) == 0 ? 16 : Math.min(16, k + 2);
          numbers[i] = random.nextInt(1 << most);
        }
        assertEquals(inFormat(numbers, k), written(numbers, k), "k " + k);
      }
    }
  }

  private static String written(int[] numbers, int k) {
    int[] pairs = new int[CountPairs.of(numbers.length)];
    for (int i = 0; i < numbers.length; i++) {
      pairs[i / 2] |= numbers[i] << 16 * (i % 2);
    }
    BitsOut bits = new BitsOut(4 * numbers.length + 1);
    bits.begin();
    bits.put(5, 3);
    bits.putRice(pairs, numbers.length, k);
    int length = bits.end();
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < length; i++) {
      text.append(binary(bits.bytes()[i] & 0xFF, 8));
    }
    return text.toString();
  }

  private static String inFormat(int[] numbers, int k) {
    StringBuilder text = new StringBuilder("101");
    for (int u : numbers) {
      int zeros = u >>> k;
      if (zeros < BitsOut.MOST_ZEROS) {
        text.append("0".repeat(zeros)).append('1');
        text.append(k == 0 ? "" : binary(u & (1 << k) - 1, k));
      } else {
        text.append("0".repeat(BitsOut.MOST_ZEROS)).append('1').append(binary(u, 16));
      }
    }
    return text.append("0".repeat(7 - (text.length() + 7) % 8)).toString();
  }

  private static String binary(int value, int digits) {
    String text = Integer.toBinaryString(value);
    return "0".repeat(digits - text.length()) + text;
  }
}
