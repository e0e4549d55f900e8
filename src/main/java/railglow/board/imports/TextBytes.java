package railglow.board.imports;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/** Turns the bytes of a text file of unknown encoding into text. Total, stateless. */
public final class TextBytes {
  private static final int SAMPLE = 512;

  private TextBytes() {}

  /** UTF-8 or UTF-16 by mark or by look, else ISO 8859-1 (which every byte sequence is). */
  public static String decode(byte[] bytes) {
    if (startsWith(bytes, 0xEF, 0xBB, 0xBF)) {
      return new String(bytes, 3, bytes.length - 3, StandardCharsets.UTF_8);
    }
    if (startsWith(bytes, 0xFF, 0xFE)) {
      return new String(bytes, 2, bytes.length - 2, StandardCharsets.UTF_16LE);
    }
    if (startsWith(bytes, 0xFE, 0xFF)) {
      return new String(bytes, 2, bytes.length - 2, StandardCharsets.UTF_16BE);
    }
    Charset wide = unmarkedWide(bytes);
    if (wide != null) {
      return new String(bytes, wide);
    }
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      return new String(bytes, StandardCharsets.ISO_8859_1);
    }
  }

  /** Text that is mostly ASCII has a zero in every other byte when it is UTF-16. */
  private static Charset unmarkedWide(byte[] bytes) {
    int pairs = Math.min(bytes.length, SAMPLE) / 2;
    int evenZeros = 0;
    int oddZeros = 0;
    for (int i = 0; i < pairs; i++) {
      evenZeros += bytes[2 * i] == 0 ? 1 : 0;
      oddZeros += bytes[2 * i + 1] == 0 ? 1 : 0;
    }
    if (pairs >= 4 && oddZeros > pairs * 3 / 4 && evenZeros == 0) {
      return StandardCharsets.UTF_16LE;
    }
    return pairs >= 4 && evenZeros > pairs * 3 / 4 && oddZeros == 0
        ? StandardCharsets.UTF_16BE
        : null;
  }

  private static boolean startsWith(byte[] bytes, int... mark) {
    if (bytes.length < mark.length) {
      return false;
    }
    for (int i = 0; i < mark.length; i++) {
      if ((bytes[i] & 0xFF) != mark[i]) {
        return false;
      }
    }
    return true;
  }
}
