package railglow.board.imports;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.CharRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import railglow.board.imports.Pad.Access;

/** Columns as KiCad's exporter writes them (pcbnew/exporters/export_d356.cpp). */
class NetlistReaderTest {
  private static final String HEAD = "P  CODE 00\nP  UNITS CUST 0\nP  arrayDim   N\n";
  private static final String SMD =
      "3273V3              C37   -1          A01X+030709Y+011890X0236Y0492R090S2";
  private static final String DRILLED =
      "317GND              J1    -2    D0567PA00X+003346Y-024819X0945Y0000R090S0";
  private static final String VIA =
      "317GND              VIA         D0118PA00X+003346Y+024819X0236Y0000R000S3";
  private static final String BOTTOM =
      "327S/LONG/NAME#2    U12345-A1  M      A04X-030709Y+011890X0236Y0492R000S1";

  private static Netlist read(String text) {
    return NetlistReader.read("n.ipc", text.getBytes(StandardCharsets.US_ASCII));
  }

  @Test
  void padsAreReadByTheirColumns() {
    Netlist netlist = read(HEAD + SMD + "\n" + DRILLED + "\r\n" + VIA + "\n999\n");
    Pad pad = netlist.pads().get(0);
    assertEquals("3V3", pad.net());
    assertEquals("C37", pad.reference());
    assertEquals("1", pad.pin());
    assertEquals(3.0709 * 25.4, pad.xMillimetres(), 1e-9);
    assertEquals(1.1890 * 25.4, pad.yMillimetres(), 1e-9);
    assertEquals(0.0236 * 25.4, pad.widthMillimetres(), 1e-9);
    assertEquals(0.0492 * 25.4, pad.heightMillimetres(), 1e-9);
    assertEquals(90, pad.rotationDegrees(), 1e-9);
    assertEquals(Access.TOP, pad.access());
    Pad drilled = netlist.pads().get(1);
    assertTrue(drilled.drilled());
    assertEquals(Access.BOTH, drilled.access());
    assertEquals(-2.4819 * 25.4, drilled.yMillimetres(), 1e-9);
    assertEquals(
        drilled.widthMillimetres(), drilled.heightMillimetres(), "size Y of 0 means round");
    assertTrue(netlist.pads().get(2).isVia());
    assertEquals(Set.of("C37", "J1"), netlist.references());
    assertEquals(2, netlist.padsOn("gnd").size());
    assertEquals(java.util.List.of(), netlist.notes());
  }

  @Test
  void theHighestAccessLayerIsTheBottomAndTheOthersAreInside() {
    String inner = BOTTOM.replace("A04", "A02").replace("A1 ", "A2 ");
    Netlist netlist = read(HEAD + SMD + "\n" + BOTTOM + "\n999\n");
    assertEquals(Access.BOTTOM, netlist.pads().get(1).access());
    netlist = read(HEAD + BOTTOM + "\n" + inner + "\n999\n");
    assertEquals(Access.NEITHER, netlist.pads().get(1).access());
  }

  @Test
  void aNetThatIsNotUniqueKeepsItsNumberSign() {
    Netlist netlist = read(HEAD + BOTTOM + "\n999\n");
    assertEquals("S/LONG/NAME#2", netlist.pads().get(0).net());
    String short2 = SMD.replace("3V3   ", "3V3#2 ");
    assertEquals("3V3#2", read(HEAD + short2 + "\n999\n").pads().get(0).net());
    assertFalse(Netlist.sameNet("3V3#2", "3V3"));
  }

  @Test
  void aLongNetKeepsItsTail() {
    assertTrue(Netlist.sameNet("R_SUPPLY_3V3_A", "/power/mcu_/regulator_supply_3v3_a"));
    assertFalse(Netlist.sameNet("SUPPLY_3V3_A", "/power/regulator_supply_3v3_a"));
    assertFalse(Netlist.sameNet("", "3V3"));
  }

  @Test
  void metricUnitsAndAliasesAreUnderstood() {
    String text =
        "P  UNITS CUST 1\nP  NNAME1  A_RATHER_LONG_NET_NAME\n"
            + SMD.replace("3V3   ", "NNAME1")
            + "\n999\n";
    Pad pad = read(text).pads().get(0);
    assertEquals("A_RATHER_LONG_NET_NAME", pad.net());
    assertEquals(30.709, pad.xMillimetres(), 1e-9);
  }

  @Test
  void anUnconnectedPadHasNoNet() {
    assertEquals("", read(HEAD + SMD.replace("3V3", "N/C") + "\n999\n").pads().get(0).net());
  }

  @Test
  void otherRecordsAreCountedAndAMissingEndIsSaid() {
    Netlist netlist = read(HEAD + SMD + "\n378GND L01 X+001\n389BOARD_EDGE X+1\n");
    assertTrue(netlist.notes().toString().contains("no end record 999"));
    assertTrue(netlist.notes().toString().contains("1 records of kind 378"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "A01X+0307o9Y+011890 | 48 | expected a digit here, found 'o'",
        "A01X?030709Y+011890 | 43 | expected a sign here, found '?'",
        "A01Z+030709Y+011890 | 42 | expected 'X' here, found 'Z'",
        "A01X+030709         | 50 | expected 'Y' here, found ' '",
      })
  void aBrokenFieldIsNamedWithItsColumn(String tail, int column, String message) {
    NetlistException problem =
        assertThrows(
            NetlistException.class, () -> read(HEAD + SMD.substring(0, 38) + tail + "\n999\n"));
    assertEquals(4, problem.line());
    assertEquals(column, problem.column());
    assertTrue(problem.getMessage().contains(message), problem.getMessage());
  }

  @Test
  void missingUnitsMissingPadsAndForeignLinesAreRefused() {
    assertTrue(
        assertThrows(NetlistException.class, () -> read(SMD + "\n999\n"))
            .getMessage()
            .contains("no units"));
    assertTrue(
        assertThrows(NetlistException.class, () -> read(HEAD + "999\n"))
            .getMessage()
            .contains("no pad"));
    NetlistException foreign =
        assertThrows(NetlistException.class, () -> read(HEAD + "hello world\n"));
    assertEquals(4, foreign.line());
    assertTrue(
        assertThrows(NetlistException.class, () -> read("P  UNITS CUST 7\n"))
            .getMessage()
            .contains("'CUST 7' are unknown"));
  }

  @Property(tries = 400, seed = "4")
  void anyTextGivesANetlistOrAPlaceToLookAt(
      @ForAll @StringLength(max = 120) @CharRange(from = ' ', to = '~') String tail,
      @ForAll @IntRange(max = 72) int keep) {
    valueOrPlace(
        (HEAD + SMD.substring(0, keep) + tail + "\n999").getBytes(StandardCharsets.ISO_8859_1));
  }

  @Property(tries = 300, seed = "5")
  void anyBytesGiveANetlistOrAPlaceToLookAt(@ForAll byte[] bytes) {
    valueOrPlace(bytes);
  }

  private static void valueOrPlace(byte[] bytes) {
    try {
      assertFalse(NetlistReader.read("n", bytes).pads().isEmpty());
    } catch (NetlistException e) {
      assertTrue(e.line() >= 1 && e.column() >= 1, e.getMessage());
    }
  }

  @Property(tries = 300, seed = "6")
  void whatIsWrittenIsReadBack(
      @ForAll @IntRange(min = -999_999, max = 999_999) int x,
      @ForAll @IntRange(min = -999_999, max = 999_999) int y,
      @ForAll @IntRange(max = 9999) int width,
      @ForAll @IntRange(min = 1, max = 9999) int height,
      @ForAll @IntRange(max = 359) int rotation,
      @ForAll @IntRange(min = 1, max = 99_999) int number) {
    String record =
        String.format(
            Locale.ROOT,
            "327%-14s   %-6s-%-4s       A01X%+07dY%+07dX%04dY%04dR%03dS0",
            "NET" + number,
            "C" + number,
            number % 10_000,
            x,
            y,
            width,
            height,
            rotation);
    Pad pad = read(HEAD + record + "\n999\n").pads().get(0);
    assertEquals(
        new Pad(
            "NET" + number,
            "C" + number,
            Integer.toString(number % 10_000),
            x * 0.00254,
            y * 0.00254,
            width * 0.00254,
            height * 0.00254,
            rotation,
            Access.TOP,
            false,
            4),
        pad);
  }
}
