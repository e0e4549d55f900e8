package railglow.camera;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import railglow.observed.Frame;
import railglow.observed.FrameMark;

/** The truths are those stated beside the recordings. */
class MarksOnRecordingsTest {
  /** A camera that smooths in time leaves two thirds of the pixels unchanged: that is normal. */
  @ParameterizedTest
  @ValueSource(strings = {"a_lepton3_static_489", "a1_added_source_489", "b_lepton3_flat_102"})
  void aSmoothingCameraOnAStaticSceneGetsNoMark(String name) throws IOException {
    for (FrameMark mark : FrameMark.values()) {
      assertEquals(Set.of(), marked(name, mark, 8.77), mark.name());
    }
  }

  @Test
  void theHalfEmptyFirstFrameOfAThermopileArrayIsDamaged() throws IOException {
    assertEquals(Set.of(0), marked("g_mlx90640_heating_400", FrameMark.DAMAGED, 8));
  }

  @Test
  void framesWithSuddenNanPixelsAreDamagedAndRepeatedOnesFrozen() throws IOException {
    assertEquals(
        Set.of(11, 12, 260, 261, 292, 293), marked("h_mlx90640_faulty_310", FrameMark.DAMAGED, 8));
    // The second frame of each damaged pair repeats the first; 267 and 280 repeat good ones.
    Set<Integer> frozen = marked("h_mlx90640_faulty_310", FrameMark.FROZEN, 8);
    assertTrue(frozen.containsAll(Set.of(267, 280)), frozen.toString());
    frozen.removeAll(Set.of(267, 280, 12, 261, 293));
    assertEquals(Set.of(), frozen);
  }

  @Test
  void theCommonFallAfterTheStartIsNoShutterEvent() throws IOException {
    assertEquals(Set.of(), marked("f_lepton3x_startup_ck_82", FrameMark.SHUTTER, 8.77));
  }

  private static TreeSet<Integer> marked(String name, FrameMark mark, double rate)
      throws IOException {
    TreeSet<Integer> indices = new TreeSet<>();
    try (RecordedFrames frames = Recordings.open(name)) {
      FrameMarks marks = new FrameMarks(frames.newSamples(), rate, 1);
      for (int n = 0; n < frames.count(); n++) {
        Frame frame = new Frame(frames.newSamples());
        frames.read(n, frame.samples());
        frame.begin(n, 0);
        marks.mark(frame, Math.round(n / rate * 1e9));
        if (frame.marks().contains(mark)) {
          indices.add(n);
        }
      }
    }
    return indices;
  }
}
