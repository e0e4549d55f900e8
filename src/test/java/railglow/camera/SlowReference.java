package railglow.camera;

import java.math.BigInteger;

/**
 * One pixel of a raw frame at a time, written for being obvious: undo the turn, then the mirror.
 */
final class SlowReference {
  private SlowReference() {}

  static double value(RawLayout layout, byte[] bytes, int start, int x, int y) {
    int column = x;
    int row = y;
    int width = layout.laidWidth();
    int height = layout.laidHeight();
    int turns = layout.orientation().turn().ordinal();
    for (int i = 0; i < turns; i++) {
      // One turn back: what is at (x, y) after a clockwise turn was at (y, width - 1 - x).
      int oldColumn = row;
      row = width - 1 - column;
      column = oldColumn;
      int swap = width;
      width = height;
      height = swap;
    }
    column =
        layout.orientation().mirror() == Orientation.Mirror.LEFT_RIGHT
            ? width - 1 - column
            : column;
    row = layout.orientation().mirror() == Orientation.Mirror.UP_DOWN ? height - 1 - row : row;
    int size = layout.sample().bytes();
    int at =
        start
            + layout.headerBytes()
            + (layout.headerRows() + row) * layout.rowStrideBytes()
            + (layout.firstColumn() + column) * size;
    byte[] number = new byte[size];
    for (int i = 0; i < size; i++) {
      number[layout.endian() == Endian.BIG ? i : size - 1 - i] = bytes[at + i];
    }
    int unsigned = new BigInteger(1, number).intValue();
    return switch (layout.sample()) {
      case U8, U16 -> unsigned;
      case U14 -> unsigned % 16384;
      case I16 -> new BigInteger(number).intValue() + 32768;
      case F32 -> Float.intBitsToFloat(unsigned);
    };
  }
}
