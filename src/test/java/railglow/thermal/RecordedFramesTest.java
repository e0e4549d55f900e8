package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Real recordings of an uncooled camera; what is in them is told by the README beside them. */
class RecordedFramesTest {
  // the camera's own smoothing: weight 0.113 a frame of 114 ms
  private static final double CAMERA_SECONDS = -0.114 / Math.log(1 - 0.113);
  private static final DetectionSettings PULSES_OF_3_S =
      DetectionSettings.usual(6.0, CAMERA_SECONDS, 0.05, 4, 9);

  @Test
  void theOneAddedSourceIsFoundWhereItWasPut() {
    Look look = Recording.require("a1_added_source_489").detect(PULSES_OF_3_S, 3.0);
    assertEquals(1, look.sources().size(), () -> look.sources().toString());
    HeatSource source = look.sources().get(0);
    assertEquals(22.3, source.row(), 0.5);
    assertEquals(61.7, source.column(), 0.5);
    assertTrue(source.familyWiseP() < 1e-4, () -> source.toString());
    assertTrue(source.riseInterval95().contains(9.0), () -> source.toString());
  }

  @Test
  void aStaticSceneDrivenByNothingShowsNothing() {
    Look look = Recording.require("a_lepton3_static_489").detect(PULSES_OF_3_S, 3.0);
    assertEquals(0, look.sources().size(), () -> look.sources().toString());
    assertTrue(look.strongest().familyWiseP() > 0.05, () -> look.strongest().toString());
  }
}
