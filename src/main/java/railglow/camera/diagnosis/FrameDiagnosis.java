package railglow.camera.diagnosis;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import railglow.camera.CameraDescriptor;
import railglow.camera.CameraProfile;
import railglow.camera.Endian;
import railglow.camera.FrameDecoder;
import railglow.camera.RawLayout;
import railglow.camera.SampleType;
import railglow.thermal.Samples;

/**
 * Looks at one raw frame as the descriptor describes it, and says what looks wrong: byte order, row
 * length, samples that are no counts, rows and columns that don't belong to the image, a scale that
 * gives impossible temperatures. Thermal images are smooth; a wrong layout makes them rough. Pure.
 */
public final class FrameDiagnosis {
  private static final double MUCH_SMOOTHER = 0.35;
  private static final double ROW_SMOOTHER = 0.6;
  private static final double ODD_LINE = 5;
  private static final double SATURATED_SHARE = 0.01;
  private static final double COLDEST = -40;
  private static final double HOTTEST = 150;
  private final CameraDescriptor camera;
  private final RawLayout layout;
  private final byte[] frame;
  private final List<String> findings = new ArrayList<>();

  private FrameDiagnosis(CameraDescriptor camera, byte[] frame) {
    this.camera = camera;
    this.layout = camera.layout();
    this.frame = frame;
  }

  /**
   * Judges a frame.
   *
   * @param frame all bytes of one frame of the layout's size
   * @return sentences for the operator, the most likely cause first; empty when all looks well
   */
  public static List<String> of(CameraDescriptor camera, byte[] frame) {
    if (frame.length != camera.layout().frameBytes()) {
      return List.of(
          "the frame has "
              + frame.length
              + " bytes, but the descriptor adds up to "
              + camera.layout().frameBytes());
    }
    FrameDiagnosis diagnosis = new FrameDiagnosis(camera, frame);
    diagnosis.run();
    return List.copyOf(diagnosis.findings);
  }

  private void run() {
    FrameDecoder decoder = new FrameDecoder(layout, camera.scale());
    Samples image = decoder.newSamples();
    decoder.decode(frame, 0, image);
    LineFacts facts = LineFacts.of(image);
    if (facts.isFlat()) {
      findings.add(
          "every pixel has the same value: the lens may be covered, or these bytes hold no image");
      return;
    }
    boolean wrongSamples = judgeSamples();
    judgeRowLength();
    judgeLines(facts);
    judgeRange(image, facts);
    if (!wrongSamples) {
      judgeTemperature(facts);
    }
  }

  private boolean judgeSamples() {
    SampleRun samples = SampleRun.of(frame, layout, layout.sample(), layout.endian());
    int first = firstSample();
    int last = first + imageSamples();
    double asTold = samples.roughness(1, first, last);
    if (samples.roughness(2, first, last) < MUCH_SMOOTHER * asTold) {
      findings.add(
          "neighbouring samples alternate: these look like the bytes of a colour picture, not"
              + " counts; the counts may stand below the picture (header-rows)");
      return true;
    }
    Endian other = layout.endian() == Endian.LITTLE ? Endian.BIG : Endian.LITTLE;
    boolean wide = layout.sample() == SampleType.U16;
    double swapped = layout.sample() == SampleType.U8 ? asTold : run(layout.sample(), other);
    double masked = wide ? run(SampleType.U14, layout.endian()) : asTold;
    double signed = wide ? run(SampleType.I16, layout.endian()) : asTold;
    double least = Math.min(swapped, Math.min(masked, signed));
    if (!(least < MUCH_SMOOTHER * asTold)) {
      return false;
    }
    if (least == swapped) {
      findings.add(
          String.format(
              Locale.ROOT,
              "the byte order looks wrong: with byte-order: %s the image is %.0f times smoother",
              other.name().toLowerCase(Locale.ROOT),
              asTold / swapped));
    } else if (least == masked) {
      findings.add("the upper two bits of the samples don't belong to the counts; try sample: u14");
    } else {
      findings.add("the samples look signed; try sample: i16");
    }
    return true;
  }

  /** How rough rows are along their length when read in another way. */
  private double run(SampleType sample, Endian endian) {
    SampleRun samples = SampleRun.of(frame, layout, sample, endian);
    return samples.roughness(1, firstSample(), firstSample() + imageSamples());
  }

  private void judgeRowLength() {
    int size = layout.sample().bytes();
    if (layout.rowStrideBytes() % size != 0) {
      return;
    }
    SampleRun samples = SampleRun.of(frame, layout, layout.sample(), layout.endian());
    int told = layout.rowStrideBytes() / size;
    int first = firstSample();
    int last = first + imageSamples();
    double asTold = samples.roughness(told, first, last);
    int best = told;
    double least = asTold;
    for (int length = Math.max(8, told / 2); length <= Math.min(2 * told, last - first); length++) {
      double roughness = samples.roughness(length, first, last);
      if (roughness < least) {
        least = roughness;
        best = length;
      }
    }
    if (best != told && least < ROW_SMOOTHER * asTold) {
      findings.add(
          "rows look "
              + best
              + " samples long, not "
              + told
              + ": check width and row-stride-bytes ("
              + best * size
              + ")");
    }
  }

  private void judgeLines(LineFacts facts) {
    name(
        facts.constantRows(),
        "row",
        "all of one value: header-rows or trailer-rows may be missing");
    name(facts.constantColumns(), "column", "all of one value: width or first-column may be wrong");
    List<Integer> odd = facts.oddRows(ODD_LINE);
    odd.removeAll(facts.constantRows());
    boolean atEnd = odd.stream().anyMatch(row -> row < 4 || row >= layout.laidHeight() - 4);
    name(
        odd,
        "row",
        atEnd
            ? "unlike the others: they may be telemetry (header-rows, trailer-rows)"
            : "unlike the rows beside: bad pixels, or samples read out of step");
  }

  private void name(List<Integer> lines, String kind, String what) {
    if (lines.isEmpty()) {
      return;
    }
    String numbers = LineFacts.ranges(lines);
    boolean one = lines.size() == 1;
    findings.add(kind + (one ? " " : "s ") + numbers + (one ? " is " : " are ") + what);
  }

  private void judgeRange(Samples image, LineFacts facts) {
    int pixels = image.width() * image.height();
    int saturated = 0;
    for (int i = 0; i < pixels; i++) {
      saturated += image.valueAt(i) >= camera.saturationValue() ? 1 : 0;
    }
    if (saturated > SATURATED_SHARE * pixels) {
      findings.add(saturated + " pixels are at the end of the scale: the scene is too hot for it");
    }
    if (facts.notFinite() > 0) {
      findings.add(facts.notFinite() + " pixels are not numbers: dead pixels, or not f32 samples");
    }
  }

  private void judgeTemperature(LineFacts facts) {
    CameraProfile profile = camera.profile();
    if (!profile.hasCelsius()) {
      return;
    }
    double celsius = profile.celsius(facts.median());
    if (celsius < COLDEST || celsius > HOTTEST) {
      findings.add(
          String.format(
              Locale.ROOT,
              "the scene would be at %.0f degC: kelvin-per-count or celsius-at-zero is wrong, or the"
                  + " image is read from the wrong place",
              celsius));
    }
  }

  private int firstSample() {
    return (layout.firstPixelByte() - layout.headerBytes()) / layout.sample().bytes();
  }

  private int imageSamples() {
    return layout.height() * layout.rowStrideBytes() / layout.sample().bytes();
  }
}
