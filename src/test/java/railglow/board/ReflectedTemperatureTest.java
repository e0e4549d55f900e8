package railglow.board;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railglow.config.BoardFile;
import railglow.config.ConfigException;
import railglow.thermal.HeatSource;
import railglow.thermal.InventedSource;
import railglow.thermal.Plane;
import railglow.thermal.radiometry.PlanckBand;
import railglow.thermal.radiometry.Surface;
import railglow.units.Interval;

/**
 * The measurement equation W = e M(To) + (1 - e) M(Tr) of ISO 18434-1 (also Usamentiaga et al.,
 * Infrared Thermography for Temperature Measurement and Non-Destructive Testing, Sensors 14 (2014)
 * 12305), and the reflector method of ASTM E1862 that measures Tr.
 */
class ReflectedTemperatureTest {
  private static final int WIDTH = 256;
  private static final int HEIGHT = 192;
  private static final double BOARD_CELSIUS = 31;
  private static final double FOIL_EMISSIVITY = 0.05;
  private static final String REFLECTOR = "foil=area 1 px, 1 px, 12 px, 10 px";

  @TempDir Path folder;

  private Board board(String surfaces) throws Exception {
    Path file = folder.resolve("board.yaml");
    Files.writeString(
        file,
        """
        name: bare
        size: { width: 120 mm, height: 80 mm }
        rails:
          - { name: 3V3, nominal: 3.3 V }
        registration:
          points:
            - { name: a, x: 0 mm, y: 0 mm, column: 8 px, row: 176 px }
            - { name: b, x: 120 mm, y: 0 mm, column: 248 px, row: 176 px }
            - { name: c, x: 120 mm, y: 80 mm, column: 248 px, row: 16 px }
            - { name: d, x: 0 mm, y: 80 mm, column: 8 px, row: 16 px }
        surfaces:
        """
            + surfaces);
    return BoardFile.read(file).board();
  }

  private static double seen(double emissivity, double trueCelsius, double mirroredCelsius) {
    return new Surface(emissivity, 0, mirroredCelsius, 0)
        .apparentCelsius(PlanckBand.LONG_WAVE, trueCelsius);
  }

  /** A board of 31 degC, and beside it foil whose facets look at a room of some unevenness. */
  private static Plane scene(double roomCelsius, double unevenKelvin, long seed) {
    Random random = new Random(seed);
    Plane plane = new Plane(WIDTH, HEIGHT);
    Arrays.fill(plane.values(), (float) seen(0.9, BOARD_CELSIUS, roomCelsius));
    for (int row = 0; row <= 11; row++) {
      for (int column = 0; column <= 13; column++) {
        double facing = roomCelsius + unevenKelvin * random.nextGaussian();
        plane.values()[row * WIDTH + column] = (float) seen(FOIL_EMISSIVITY, 27, facing);
      }
    }
    return plane;
  }

  @Test
  void theFoilGivesWhatTheBoardMirrorsWithAnHonestError() throws Exception {
    Board stated = board("  reflector: \"" + REFLECTOR + "\"\n");
    int within = 0;
    for (int seed = 0; seed < 40; seed++) {
      BoardSurfaces found =
          SurfaceWords.withReflectedMeasured(stated, scene(18.0, 0.4, seed)).care().surfaces();
      assertEquals("measured at foil", found.reflectedFrom());
      assertEquals(18.0, found.reflectedCelsius(), 0.7);
      assertTrue(
          found.reflectedSigmaKelvin() > 0.4 && found.reflectedSigmaKelvin() < 2,
          "error " + found.reflectedSigmaKelvin());
      within += Math.abs(found.reflectedCelsius() - 18.0) < found.reflectedSigmaKelvin() ? 1 : 0;
    }
    assertEquals(40, within, "what the foil radiates itself is within the error");
  }

  /**
   * Seen through emissivity 0.5 in 8 to 14 um, 40 degC before 23 degC shows 31.8165 degC: computed
   * from Planck's law with the equation above, apart from this program.
   */
  @Test
  void aTemperatureBehindAHalfMirrorIsFoundWithWhatTheFoilShows() throws Exception {
    Board stated = board("  reflector: \"" + REFLECTOR + "\"\n");
    BoardSurfaces found =
        SurfaceWords.withReflectedMeasured(stated, scene(23.0, 0.05, 1)).care().surfaces();
    Surface half = new Surface(0.5, 0, found.reflectedCelsius(), found.reflectedSigmaKelvin());
    Surface.Estimate body = half.trueCelsius(PlanckBand.LONG_WAVE, 31.8165);
    assertEquals(40.0, body.value(), body.sigma());
    assertTrue(body.sigma() < 1, "known to " + body.sigma());
    Surface supposed = new Surface(0.5, 0, 23, 3);
    assertTrue(
        body.sigma() < supposed.trueCelsius(PlanckBand.LONG_WAVE, 31.8165).sigma() / 2,
        "measuring it is worth the foil");
  }

  @Test
  void theTrueRiseFollowsWhatIsMirroredAndSaysWhereItIsKnownFrom() throws Exception {
    String area =
        "  areas:\n    - { name: shield, left: 20 mm, low: 20 mm, width: 20 mm, height: 20 mm,"
            + " emissivity: 0.2, error: 0.01 }\n";
    Board stated =
        board(
            "  reflected: 23 degC\n  reflected-error: 15 K\n  reflector: \""
                + REFLECTOR
                + "\"\n"
                + area);
    Board measured = SurfaceWords.withReflectedMeasured(stated, scene(5.0, 0.4, 3));
    double start = seen(0.2, 30, 5);
    double rise = seen(0.2, 34, 5) - start;
    HeatSource source =
        InventedSource.at(8 + 2 * 30, 176 - 2 * 30).rises(rise, new Interval(rise, rise)).source();
    TrueRise byFile = SurfaceWords.trueRises(stated, List.of(source), List.of(start)).get(0);
    TrueRise byFoil = SurfaceWords.trueRises(measured, List.of(source), List.of(start)).get(0);
    assertEquals("by the board file", byFile.reflectedFrom());
    assertEquals("measured at foil", byFoil.reflectedFrom());
    assertEquals(4.0, byFoil.riseKelvin(), byFoil.sigmaKelvin());
    assertTrue(
        Math.abs(byFoil.riseKelvin() - 4) < Math.abs(byFile.riseKelvin() - 4) / 3,
        byFoil + " against " + byFile);
    assertTrue(byFoil.sigmaKelvin() < byFile.sigmaKelvin(), byFoil + " against " + byFile);
    assertTrue(
        SurfaceWords.trueSwingClause(measured, source, start).contains("measured at foil"),
        SurfaceWords.trueSwingClause(measured, source, start));
  }

  @Test
  void aFoilOutOfThePictureOrTooSmallIsRefusedAndNeverRead() throws Exception {
    Board outside = board("  reflector: \"foil=area 250 px, 2 px, 260 px, 10 px\"\n");
    assertTrue(
        assertThrows(
                IllegalArgumentException.class,
                () -> SurfaceWords.checkReflector(outside, WIDTH, HEIGHT))
            .getMessage()
            .contains("not in the picture"));
    Board small = board("  reflector: \"foil=area 2 px, 2 px, 3 px, 4 px\"\n");
    assertTrue(
        assertThrows(
                IllegalArgumentException.class,
                () -> SurfaceWords.checkReflector(small, WIDTH, HEIGHT))
            .getMessage()
            .contains("covers 6 pixels; at least 9"));
    BoardSurfaces kept =
        SurfaceWords.withReflectedMeasured(small, scene(18, 0.4, 1)).care().surfaces();
    assertEquals(23, kept.reflectedCelsius());
    assertEquals("supposed, since foil could not be read", kept.reflectedFrom());
  }

  @Test
  void aReflectorThatIsNoAreaIsRefusedWithWhatItMustBe() {
    ConfigException refused =
        assertThrows(
            ConfigException.class, () -> board("  reflector: \"foil=point 3 px, 3 px\"\n"));
    assertTrue(refused.getMessage().contains("the area of the foil"), refused.getMessage());
  }
}
