package railglow.camera.diagnosis;

import railglow.camera.Endian;
import railglow.camera.RawLayout;
import railglow.camera.SampleType;

/** The samples of a raw frame in the order of its bytes, from the first pixel on, as numbers. */
final class SampleRun {
  private final double[] values;

  private SampleRun(double[] values) {
    this.values = values;
  }

  /** All whole samples from the first header row to the end of the frame. */
  static SampleRun of(byte[] frame, RawLayout layout, SampleType sample, Endian endian) {
    int from = layout.headerBytes();
    int size = sample.bytes();
    double[] values = new double[Math.max(0, (frame.length - from) / size)];
    for (int i = 0; i < values.length; i++) {
      values[i] = value(frame, from + i * size, sample, endian);
    }
    return new SampleRun(values);
  }

  int length() {
    return values.length;
  }

  /** The mean size of the difference of samples at a distance, within a range of samples. */
  double roughness(int distance, int from, int to) {
    double sum = 0;
    int count = 0;
    for (int i = Math.max(0, from); i + distance < Math.min(to, values.length); i++) {
      double difference = Math.abs(values[i + distance] - values[i]);
      if (difference - difference == 0) {
        sum += difference;
        count++;
      }
    }
    return count == 0 ? Double.NaN : sum / count;
  }

  private static double value(byte[] frame, int at, SampleType sample, Endian endian) {
    long bits = 0;
    int size = sample.bytes();
    for (int i = 0; i < size; i++) {
      int byteAt = endian == Endian.BIG ? at + i : at + size - 1 - i;
      bits = bits << 8 | (frame[byteAt] & 0xFF);
    }
    return switch (sample) {
      case U8, U16 -> bits;
      case U14 -> bits & 0x3FFF;
      case I16 -> (short) bits;
      case F32 -> Float.intBitsToFloat((int) bits);
    };
  }
}
