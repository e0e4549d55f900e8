package railglow.board;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import railglow.config.BoardFile;
import railglow.thermal.HeatSource;
import railglow.thermal.InventedSource;
import railglow.units.Interval;

class SurfaceWordsTest {
  private static HeatSource at(double x, double y, double rise) {
    return InventedSource.at(8 + 2 * x, 176 - 2 * y)
        .rises(rise, new Interval(rise - 0.1, rise + 0.1))
        .source();
  }

  private static Board hx12() throws Exception {
    return BoardFile.read(Path.of("docs/examples/hx12/board.yaml")).board();
  }

  @Test
  void aCeramicPartShowsNearlyAllOfItsRise() throws Exception {
    var rise = SurfaceWords.trueRiseKelvin(hx12(), at(78, 31, 1.0), 25).orElseThrow();
    assertEquals(1 / 0.9, rise.value(), 0.02);
    // 0.04 of 0.90 from the emissivity and 0.05 K from the source, both on 1.1 K.
    assertEquals(Math.hypot(1.11 * 0.04 / 0.9, 0.051 / 0.9), rise.sigma(), 0.01);
    assertTrue(
        SurfaceWords.trueSwingClause(hx12(), at(78, 31, 1.0), 25).contains("ceramic body of C37"));
  }

  @Test
  void bareMetalIsMarkedAndTapingAdvised() throws Exception {
    List<Suspect> onLid = Ranked.suspects(hx12(), "3V3", List.of(at(91, 14, 0.5)));
    assertEquals("A1", onLid.get(0).part());
    assertTrue(onLid.get(0).reason().contains("tape it or tilt"), onLid.get(0).reason());
    List<Suspect> onCeramic = Ranked.suspects(hx12(), "3V3", List.of(at(78, 31, 0.5)));
    assertFalse(onCeramic.get(0).reason().contains("tape"));
    assertEquals("bare ring of H1", hx12().care().surfaces().at(hx12(), 4, 4).name());
    assertEquals("solder mask", hx12().care().surfaces().at(hx12(), 60, 60).name());
  }

  @Test
  void everySourceWhoseSurfaceIsKnownHasItsTrueRiseAndBareMetalIsMarked() throws Exception {
    List<HeatSource> sources = List.of(at(78, 31, 1.0), at(91, 14, 0.5));
    List<TrueRise> rises = SurfaceWords.trueRises(hx12(), sources, List.of(25.0, Double.NaN));
    assertEquals(List.of(0, 1), rises.stream().map(TrueRise::sourceIndex).toList());
    assertEquals(1 / 0.9, rises.get(0).riseKelvin(), 0.02);
    assertEquals("ceramic body of C37", rises.get(0).surface());
    assertFalse(rises.get(0).bareMetal());
    // A fifth of the radiation: about five times the rise, and an error to match.
    assertEquals(0.5 / rises.get(1).emissivity(), rises.get(1).riseKelvin(), 0.2);
    assertTrue(rises.get(1).bareMetal());
    assertTrue(rises.get(1).sigmaKelvin() > 1, rises.get(1).toString());
    assertEquals(
        List.of(),
        SurfaceWords.trueRises(hx12(), sources, List.of()),
        "without a scale in kelvin there is none");
  }
}
