package railglow.camera;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import railglow.thermal.CountSamples;
import railglow.thermal.FloatSamples;
import railglow.thermal.Samples;

/**
 * Undoes a raw layout: bytes of one frame in, an image the right way up out. Allocates nothing per
 * frame. Immutable and thread-safe.
 */
public final class FrameDecoder {
  private static final VarHandle SHORT_LE =
      MethodHandles.byteArrayViewVarHandle(short[].class, ByteOrder.LITTLE_ENDIAN);
  private static final VarHandle SHORT_BE =
      MethodHandles.byteArrayViewVarHandle(short[].class, ByteOrder.BIG_ENDIAN);
  private static final VarHandle FLOAT_LE =
      MethodHandles.byteArrayViewVarHandle(float[].class, ByteOrder.LITTLE_ENDIAN);
  private static final VarHandle FLOAT_BE =
      MethodHandles.byteArrayViewVarHandle(float[].class, ByteOrder.BIG_ENDIAN);
  private static final int FOURTEEN_BITS = 0x3FFF;

  /** Makes a count of 65535 less it. */
  private static final int TURNED_OVER = 0xFFFF;

  private final RawLayout layout;
  private final CountScale scale;
  private final int origin;
  private final int columnStep;
  private final int rowStep;

  public FrameDecoder(RawLayout layout, CountScale scale) {
    this.layout = layout;
    this.scale = scale;
    Orientation orientation = layout.orientation();
    int width = layout.width();
    int height = layout.height();
    // The target index is linear in column and row: three corners give all of it.
    origin = orientation.target(0, 0, width, height);
    columnStep = width > 1 ? orientation.target(1, 0, width, height) - origin : 0;
    rowStep = height > 1 ? orientation.target(0, 1, width, height) - origin : 0;
  }

  public RawLayout layout() {
    return layout;
  }

  /** A fresh image of the kind and size that {@link #decode} fills. */
  public Samples newSamples() {
    return layout.sample() == SampleType.F32 || scale.isTable()
        ? new FloatSamples(layout.laidWidth(), layout.laidHeight())
        : new CountSamples(layout.laidWidth(), layout.laidHeight());
  }

  /** Whether the pixels are little-endian counts, one after the other, the right way up. */
  boolean isPlainCounts() {
    return layout.sample() == SampleType.U16
        && layout.endian() == Endian.LITTLE
        && layout.orientation() == Orientation.AS_STORED
        && layout.rowStrideBytes() == 2 * layout.width()
        && !scale.isTable()
        && !scale.hotIsDark();
  }

  /**
   * Decodes one frame.
   *
   * @param bytes holds a whole frame from {@code start} on
   * @param into made by {@link #newSamples}
   */
  public void decode(byte[] bytes, int start, Samples into) {
    if (into instanceof FloatSamples floats) {
      if (layout.sample() == SampleType.F32) {
        decodeFloats(bytes, start, floats.values());
      } else {
        decodeByTable(bytes, start, floats.values());
      }
    } else {
      decodeCounts(bytes, start, ((CountSamples) into).counts());
    }
  }

  private void decodeCounts(byte[] bytes, int start, short[] into) {
    int from = start + layout.firstPixelByte();
    int turn = scale.hotIsDark() ? TURNED_OVER : 0;
    for (int row = 0; row < layout.height(); row++) {
      int to = origin + row * rowStep;
      switch (layout.sample()) {
        case U8 -> bytesRow(bytes, from, into, to, turn);
        case U16 -> shortsRow(bytes, from, into, to, 0xFFFF, turn);
        case U14 -> shortsRow(bytes, from, into, to, FOURTEEN_BITS, turn);
        case I16 -> shortsRow(bytes, from, into, to, 0xFFFF, SampleType.SIGNED_OFFSET ^ turn);
        case F32 -> throw new IllegalArgumentException("float samples don't fit into counts");
      }
      from += layout.rowStrideBytes();
    }
  }

  private void bytesRow(byte[] bytes, int from, short[] into, int to, int flip) {
    for (int column = 0; column < layout.width(); column++) {
      into[to + column * columnStep] = (short) ((bytes[from + column] & 0xFF) ^ flip);
    }
  }

  private void shortsRow(byte[] bytes, int from, short[] into, int to, int mask, int flip) {
    int width = layout.width();
    int step = columnStep;
    boolean little = layout.endian() == Endian.LITTLE;
    if (step == 1 && little) {
      // a loop of its own: with a constant step and a constant view it becomes vector code
      for (int column = 0; column < width; column++) {
        short value = (short) SHORT_LE.get(bytes, from + 2 * column);
        into[to + column] = (short) ((value & mask) ^ flip);
      }
    } else if (little) {
      for (int column = 0; column < width; column++) {
        short value = (short) SHORT_LE.get(bytes, from + 2 * column);
        into[to + column * step] = (short) ((value & mask) ^ flip);
      }
    } else {
      for (int column = 0; column < width; column++) {
        short value = (short) SHORT_BE.get(bytes, from + 2 * column);
        into[to + column * step] = (short) ((value & mask) ^ flip);
      }
    }
  }

  private void decodeFloats(byte[] bytes, int start, float[] into) {
    int from = start + layout.firstPixelByte();
    VarHandle view = layout.endian() == Endian.LITTLE ? FLOAT_LE : FLOAT_BE;
    float sign = scale.hotIsDark() ? -1 : 1;
    for (int row = 0; row < layout.height(); row++) {
      int to = origin + row * rowStep;
      for (int column = 0; column < layout.width(); column++) {
        into[to + column * columnStep] = sign * (float) view.get(bytes, from + 4 * column);
      }
      from += layout.rowStrideBytes();
    }
  }

  private void decodeByTable(byte[] bytes, int start, float[] into) {
    int from = start + layout.firstPixelByte();
    int width = layout.sample().bytes();
    for (int row = 0; row < layout.height(); row++) {
      int to = origin + row * rowStep;
      for (int column = 0; column < layout.width(); column++) {
        into[to + column * columnStep] = scale.celsiusOf(count(bytes, from + column * width));
      }
      from += layout.rowStrideBytes();
    }
  }

  private int count(byte[] bytes, int at) {
    if (layout.sample() == SampleType.U8) {
      return bytes[at] & 0xFF;
    }
    VarHandle view = layout.endian() == Endian.LITTLE ? SHORT_LE : SHORT_BE;
    int value = (short) view.get(bytes, at) & 0xFFFF;
    return switch (layout.sample()) {
      case U14 -> value & FOURTEEN_BITS;
      case I16 -> value ^ SampleType.SIGNED_OFFSET;
      default -> value;
    };
  }
}
