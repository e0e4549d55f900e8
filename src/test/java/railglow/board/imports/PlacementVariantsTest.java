package railglow.board.imports;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import railglow.board.Side;
import railglow.board.imports.PlacementFormat.BottomX;
import railglow.board.imports.PlacementFormat.RotationSense;

/**
 * The header forms seen in placement files of drawing programs and assemblers. The rows with C1 and
 * J8 are those KiCad 6.0.11 writes for its demo board StickHub (kicad-demos).
 */
class PlacementVariantsTest {
  private static Placement read(String text, PlacementFormat format, Charset charset) {
    return PlacementReader.read("p.csv", text.getBytes(charset), format);
  }

  private static Placement read(String text, PlacementFormat format) {
    return read(text, format, StandardCharsets.UTF_8);
  }

  private static PlacedPart part(Placement placement, String reference) {
    return placement.parts().stream()
        .filter(part -> part.reference().equals(reference))
        .findFirst()
        .orElseThrow();
  }

  private static void assertAt(PlacedPart part, double x, double y, double rotation, Side side) {
    assertEquals(x, part.xMillimetres(), 1e-9);
    assertEquals(y, part.yMillimetres(), 1e-9);
    assertEquals(rotation, part.rotationDegrees(), 1e-9);
    assertEquals(side, part.side());
  }

  private static final String QUOTED =
      """
      Ref,Val,Package,PosX,PosY,Rot,Side
      "C1","1uF 10V","1005_C",-156.022970,-94.994796,45.000000,bottom
      "J8","100\u00b5F","X",146.150000,-90.750000,-90.000000,top
      """;

  @Test
  void quotedCommaFormWithNegatedBottomX() {
    Placement placement = read(QUOTED, PlacementFormat.RECOGNISED.withUnit(LengthUnit.MILLIMETRE));
    assertAt(part(placement, "C1"), 156.022970, -94.994796, 45, Side.BOTTOM);
    assertAt(part(placement, "J8"), 146.15, -90.75, 270, Side.TOP);
    assertEquals("100\u00b5F", part(placement, "J8").value());
    assertTrue(placement.notes().get(0).contains("negative X"), placement.notes().toString());
  }

  @Test
  void bottomXStaysWhenTheBoardFileSaysSo() {
    PlacementFormat format =
        PlacementFormat.RECOGNISED.withUnit(LengthUnit.MILLIMETRE).withBottomX(BottomX.AS_TOP);
    assertEquals(-156.022970, part(read(QUOTED, format), "C1").xMillimetres(), 1e-9);
  }

  @Test
  void bottomXStaysWhenTopPartsAreAtNegativeXToo() {
    String centred = QUOTED.replace("146.15", "-12.5");
    Placement placement = read(centred, PlacementFormat.RECOGNISED.withUnit(LengthUnit.MILLIMETRE));
    assertEquals(-156.022970, part(placement, "C1").xMillimetres(), 1e-9);
    assertEquals(0, placement.notes().size());
  }

  @Test
  void anOldByteEncodingIsReadToo() {
    Placement placement =
        read(
            QUOTED,
            PlacementFormat.RECOGNISED.withUnit(LengthUnit.MILLIMETRE),
            StandardCharsets.ISO_8859_1);
    assertEquals("100\u00b5F", part(placement, "J8").value());
  }

  @Test
  void reportFormWithBlanksAndItsOwnUnitLine() {
    String text =
        """
        ### Module positions - created on Mon ###
        ### Printed by some program
        ## Unit = mm, Angle = deg.
        ## Side : All
        # Ref     Val          Package       PosX       PosY       Rot  Side
        C1        1uF_10V      1005_C     -156.0230  -94.9948   45.0000  bottom
        J8        USB_A        X           146.1500  -90.7500  -90.0000  top
        ## End
        """;
    Placement placement = read(text, PlacementFormat.RECOGNISED);
    assertEquals(2, placement.parts().size());
    assertAt(part(placement, "C1"), 156.0230, -94.9948, 45, Side.BOTTOM);
    assertEquals("1uF_10V", part(placement, "C1").value());
  }

  @Test
  void tabFormInUtf16WithUnitsInTheCells() {
    String text =
        "Designator\tFootprint\tMid X\tMid Y\tRef X\tRef Y\tPad X\tPad Y\tLayer\tRotation\tComment\n"
            + "\"R1\"\t\"R0603\"\t\"12.7mm\"\t\"500mil\"\t0mm\t0mm\t0mm\t0mm\t\"T\"\t\"90\"\t\"10k\"\n"
            + "\"U2\"\t\"SOIC-8\"\t\"25.4mm\"\t\"1in\"\t0mm\t0mm\t0mm\t0mm\t\"B\"\t\"0\"\t\"\"\n";
    for (String form : new String[] {"UTF-16", "UTF-16LE", "UTF-16BE"}) {
      Placement placement = read(text, PlacementFormat.RECOGNISED, Charset.forName(form));
      assertAt(part(placement, "R1"), 12.7, 12.7, 90, Side.TOP);
      assertAt(part(placement, "U2"), 25.4, 25.4, 0, Side.BOTTOM);
      assertEquals("10k", part(placement, "R1").value());
      assertEquals("R0603", part(placement, "R1").packageName());
    }
  }

  @Test
  void headerWithUnitsInBracketsBelowATitle() {
    String text =
        """
        Some program Pick and Place Locations

        Date: 01/02/26
        Units used: mm
        "Designator","Comment","Layer","Footprint","Center-X(mm)","Center-Y(mm)","Rotation","Description"
        "C37","10uF, 25V","TopLayer","0805","78.0000","31.0000","90","said \"\"leaky\"\"\"
        "C38","1uF","BottomLayer","0603","10","20","0",""
        """;
    Placement placement = read(text, PlacementFormat.RECOGNISED);
    assertAt(part(placement, "C37"), 78, 31, 90, Side.TOP);
    assertEquals("10uF, 25V", part(placement, "C37").value());
    assertEquals(Side.BOTTOM, part(placement, "C38").side());
  }

  @Test
  void thousandthsOfAnInchWithNumberedSidesAndClockwiseAngles() {
    String text = "RefDes,X,Y,R,S\nC1,1000,500,90,1\nC2,2000,500,45,2\n";
    Placement placement =
        read(
            text,
            PlacementFormat.RECOGNISED
                .withUnit(LengthUnit.MIL)
                .withRotation(RotationSense.CLOCKWISE));
    assertAt(part(placement, "C1"), 25.4, 12.7, 270, Side.TOP);
    assertAt(part(placement, "C2"), 50.8, 12.7, 315, Side.BOTTOM);
  }

  @Test
  void semicolonsWithDecimalCommas() {
    String text = "Ref;PosX;PosY;Rot;Side\nC1;1,5;2,25;0;top\n";
    Placement placement = read(text, PlacementFormat.RECOGNISED.withUnit(LengthUnit.INCH));
    assertAt(part(placement, "C1"), 38.1, 57.15, 0, Side.TOP);
  }

  @Test
  void headersOfOnesOwnAreMappedByTheBoardFile() {
    String text = "Bauteil,Hoehe,Breite,Lage,X\nC1,7,5,unten,99\n".replace("unten", "B");
    PlacementColumns columns =
        new PlacementColumns(
            Optional.of("Bauteil"),
            Optional.empty(),
            Optional.empty(),
            Optional.of("Breite"),
            Optional.of("Hoehe"),
            Optional.empty(),
            Optional.of("Lage"));
    Placement placement =
        read(text, PlacementFormat.RECOGNISED.withUnit(LengthUnit.MILLIMETRE).withColumns(columns));
    assertAt(part(placement, "C1"), 5, 7, 0, Side.BOTTOM);
  }

  @Test
  void theBoardsCornerIsMovedToTheOrigin() {
    PlacementFormat format =
        new PlacementFormat(
            PlacementColumns.RECOGNISED,
            Optional.of(LengthUnit.MILLIMETRE),
            RotationSense.COUNTER_CLOCKWISE,
            BottomX.DETECT,
            140,
            -100);
    assertAt(part(read(QUOTED, format), "J8"), 6.15, 9.25, 270, Side.TOP);
    assertAt(part(read(QUOTED, format), "C1"), 16.022970, 5.005204, 45, Side.BOTTOM);
  }

  @Test
  void aReferenceUsedTwiceStaysTwoParts() {
    Placement placement =
        read("Ref,X,Y\nH,1,1\nH,2,2\n", PlacementFormat.RECOGNISED.withUnit(LengthUnit.MIL));
    assertEquals("H(2)", placement.parts().get(1).reference());
    assertTrue(placement.notes().toString().contains("H is there 2 times"));
  }
}
