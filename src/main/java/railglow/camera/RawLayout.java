package railglow.camera;

/**
 * Where the pixels of one raw frame stand. A frame is: header bytes, header rows, image rows,
 * trailer rows, trailer bytes; every row is {@code rowStrideBytes} long and the image starts {@code
 * firstColumn} samples into it.
 *
 * @param width of the image as stored, in pixels
 * @param height of the image as stored, in pixels
 * @param rowStrideBytes from the start of one row to the next
 * @param headerBytes before the first row
 * @param headerRows rows above the image that are not part of it (a picture, telemetry)
 * @param trailerRows rows below the image
 * @param trailerBytes after the last row
 * @param firstColumn samples left of the image in each row
 */
public record RawLayout(
    int width,
    int height,
    SampleType sample,
    Endian endian,
    int rowStrideBytes,
    int headerBytes,
    int headerRows,
    int trailerRows,
    int trailerBytes,
    int firstColumn,
    Orientation orientation,
    Telemetry telemetry) {
  private static final int MAX_FRAME_BYTES = 256 << 20;

  public RawLayout {
    if (width <= 0 || height <= 0) {
      throw new IllegalArgumentException("an image of " + width + " x " + height + " pixels");
    }
    if (headerBytes < 0
        || headerRows < 0
        || trailerRows < 0
        || trailerBytes < 0
        || firstColumn < 0) {
      throw new IllegalArgumentException("header, trailer and first column can't be negative");
    }
    long needed = ((long) firstColumn + width) * sample.bytes();
    if (rowStrideBytes < needed) {
      throw new IllegalArgumentException(
          "a row of " + rowStrideBytes + " bytes can't hold the " + needed + " its pixels need");
    }
    long bytes =
        totalBytes(rowStrideBytes, height, headerBytes, headerRows, trailerRows, trailerBytes);
    if (bytes > MAX_FRAME_BYTES) {
      throw new IllegalArgumentException(
          "a frame of " + bytes + " bytes; at most " + MAX_FRAME_BYTES + " are allowed");
    }
    if (telemetry.neededBytes() > bytes) {
      throw new IllegalArgumentException(
          "telemetry ends at byte "
              + telemetry.neededBytes()
              + " of a frame that has only "
              + bytes);
    }
  }

  /** Nothing but the pixels, row after row. */
  public static RawLayout packed(int width, int height, SampleType sample, Endian endian) {
    return new RawLayout(
        width,
        height,
        sample,
        endian,
        Math.multiplyExact(width, sample.bytes()),
        0,
        0,
        0,
        0,
        0,
        Orientation.AS_STORED,
        Telemetry.NONE);
  }

  /** The same with a fixed number of bytes and fields before the pixels. */
  public RawLayout withHeader(int bytes, Telemetry fields) {
    return new RawLayout(
        width,
        height,
        sample,
        endian,
        rowStrideBytes,
        bytes,
        headerRows,
        trailerRows,
        trailerBytes,
        firstColumn,
        orientation,
        fields);
  }

  public RawLayout withOrientation(Orientation other) {
    return new RawLayout(
        width,
        height,
        sample,
        endian,
        rowStrideBytes,
        headerBytes,
        headerRows,
        trailerRows,
        trailerBytes,
        firstColumn,
        other,
        telemetry);
  }

  /** All bytes of one frame. */
  public int frameBytes() {
    return (int)
        totalBytes(rowStrideBytes, height, headerBytes, headerRows, trailerRows, trailerBytes);
  }

  /** Where the image's first sample stands. */
  public int firstPixelByte() {
    return headerBytes + headerRows * rowStrideBytes + firstColumn * sample.bytes();
  }

  /** Width of the image as it is used, after turning. */
  public int laidWidth() {
    return orientation.swapsSides() ? height : width;
  }

  /** Height of the image as it is used, after turning. */
  public int laidHeight() {
    return orientation.swapsSides() ? width : height;
  }

  private static long totalBytes(
      int stride, int height, int headerBytes, int headerRows, int trailerRows, int trailerBytes) {
    return headerBytes + (long) stride * ((long) headerRows + height + trailerRows) + trailerBytes;
  }
}
