package railglow.report.draw;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class ColourMapTest {
  /** sRGB primaries in CIELAB under D65, as commonly tabulated from IEC 61966-2-1 and CIE 15. */
  @Test
  void labOfKnownColours() {
    assertEquals(100, Lab.lightness(0xFFFFFF), 0.01);
    assertEquals(0, Lab.lightness(0x000000), 0.01);
    assertEquals(53.24, Lab.lightness(0xFF0000), 0.02);
    assertEquals(87.73, Lab.lightness(0x00FF00), 0.02);
    assertEquals(32.30, Lab.lightness(0x0000FF), 0.02);
    // L*C*h of sRGB red: 53.24, 104.55, 40.00 degrees
    int red = Lab.rgb(53.24, 104.5, 40.0);
    assertTrue((red >> 16 & 0xFF) >= 254 && (red >> 8 & 0xFF) <= 4 && (red & 0xFF) <= 4);
    assertEquals(0x777777, Lab.rgb(50.03, 0, 0));
  }

  @Test
  void lightnessRisesInEqualStepsSoAGreyPrintKeepsTheOrder() {
    for (ColourMap map :
        new ColourMap[] {ColourMap.DIFFERENCE, ColourMap.TEMPERATURE, ColourMap.DELAY}) {
      double first = Lab.lightness(map.rgb(0));
      double last = Lab.lightness(map.rgb(1));
      for (int i = 0; i <= 254; i++) {
        double even = first + (last - first) * i / 254;
        assertEquals(even, Lab.lightness(map.rgb(i / 254.0)), 0.6, "step " + i);
      }
      assertTrue(last - first > 60, "from dark to light");
    }
  }

  @Test
  void zeroIsANeutralGrey() {
    int zero = ColourMap.DIFFERENCE.rgb(0.5);
    assertEquals(zero & 0xFF, zero >> 8 & 0xFF);
    assertEquals(zero & 0xFF, zero >> 16 & 0xFF);
  }

  @Test
  void signsAreToldApartWithoutRedAndGreen() {
    int below = ColourMap.DIFFERENCE.rgb(0.25);
    int above = ColourMap.DIFFERENCE.rgb(0.75);
    assertTrue((below & 0xFF) > (below >> 16 & 0xFF) + 60, "below zero is blue");
    assertTrue((above >> 16 & 0xFF) > (above & 0xFF) + 60, "above zero is yellow");
    assertTrue(Lab.lightness(above) - Lab.lightness(below) > 35);
  }

  @Test
  void whatHasNoValueHasAColourOfItsOwn() {
    int none = ColourMap.DIFFERENCE.rgb(Double.NaN);
    for (int i = 0; i <= 254; i++) {
      assertNotEquals(none, ColourMap.DIFFERENCE.rgb(i / 254.0));
      assertNotEquals(none, ColourMap.TEMPERATURE.rgb(i / 254.0));
    }
  }
}
