package railglow.board.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Chip sizes: EIA inch codes and IEC 60115 metric codes (the code is the size in 0.1 mm). */
class PackageOutlineTest {
  @ParameterizedTest
  @CsvSource({
    "0805, 2.0, 1.25",
    "R0603, 1.6, 0.8",
    "C_0402, 1.0, 0.5",
    "R_0603_1608Metric, 1.6, 0.8",
    "C_0201_0603Metric, 0.6, 0.3",
    "1005_C, 1.0, 0.5",
    "LED_0805, 2.0, 1.25",
    "SOT-23, 2.4, 2.9",
    "SOT-23-5, 2.8, 2.9",
    "SOT-223-3_TabPin2, 7.0, 6.5",
    "SOIC-8, 6.0, 4.98",
    "SOIC-8_3.9x4.9mm_P1.27mm, 5.9, 4.9",
    "LQFP-100_14x14mm_P0.5mm, 16, 16",
    "QFN-16-1EP_3x3mm_P0.5mm, 3, 3",
    "BGA-256_17.0x17.0mm, 17, 17",
    "CP_Radial_D10.0mm_P5.00mm, 10, 10",
    "CP_Elec_8x10, 8, 8",
    "PinHeader_1x06_P2.54mm_Vertical, 2.54, 15.24",
    "D_SMA, 5.2, 2.6",
    "TO-252-2, 9.9, 6.6",
    "Crystal_SMD_3225-4Pin_3.2x2.5mm, 3.2, 2.5"
  })
  void commonNamesHaveTheirNominalSizes(String name, double width, double height) {
    PackageOutline outline = PackageOutline.of(name).orElseThrow();
    assertEquals(width, outline.widthMillimetres(), 1e-9);
    assertEquals(height, outline.heightMillimetres(), 1e-9);
  }

  @Test
  void aNameThatSaysNothingGivesNothing() {
    assertEquals(Optional.empty(), PackageOutline.of(""));
    assertEquals(Optional.empty(), PackageOutline.of("TERM-2"));
    assertEquals(Optional.empty(), PackageOutline.of("9999"));
  }

  @Property(tries = 300, seed = "1")
  void anyNameGivesASizeAboveZeroOrNothing(@ForAll String name) {
    PackageOutline.of(name)
        .ifPresent(size -> assertTrue(size.widthMillimetres() > 0 && size.heightMillimetres() > 0));
  }
}
