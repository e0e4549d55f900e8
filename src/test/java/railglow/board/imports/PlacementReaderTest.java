package railglow.board.imports;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import railglow.board.Side;

class PlacementReaderTest {
  private static final PlacementFormat MM =
      PlacementFormat.RECOGNISED.withUnit(LengthUnit.MILLIMETRE);

  private static Placement read(String text) {
    return PlacementReader.read("p.csv", text.getBytes(StandardCharsets.UTF_8), MM);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\'',
      value = {
        "C1,1,x,0,top                 | 2 | 6  | is not a length",
        "C1,1,2,q,top                 | 2 | 8  | is not an angle",
        "C1,1,2,0,left                | 2 | 10 | is not a side",
        "C1,1,2                       | 2 | 7  | ends before its column 'Rot'",
        "C1,1,2,0,top,more            | 2 | 14 | more cells",
        "C1,1km,2,0,top               | 2 | 4  | 'km' is no unit",
        "C1,99999,2,0,top             | 2 | 4  | is the unit right",
        "\"C1,1,2,0,top               | 2 | 1  | never closed",
        ",1,2,0,top                   | 2 | 1  | no reference",
      })
  void aBrokenRowIsNamedWithLineAndColumn(String row, int line, int column, String message) {
    PlacementException problem =
        assertThrows(PlacementException.class, () -> read("Ref,X,Y,Rot,Side\n" + row + "\n"));
    assertTrue(problem.getMessage().contains(message), problem.getMessage());
    assertEquals(line, problem.line());
    assertEquals(column, problem.column());
    assertTrue(problem.getMessage().startsWith("p.csv:" + line + ":" + column + ": "));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "Ref,X,Side                   | no header line",
        "nothing here                 | no header line",
        "Ref,X(mil),Y(mil)            | the file says its unit is mil",
      })
  void aFileThatIsNoSuchTableIsRefused(String header, String message) {
    PlacementException problem =
        assertThrows(PlacementException.class, () -> read(header + "\nC1,1,2\n"));
    assertTrue(problem.getMessage().contains(message), problem.getMessage());
  }

  @Property(tries = 400, seed = "1")
  void anyBytesGiveAPlacementOrAPlaceToLookAt(@ForAll byte[] bytes) {
    valueOrPlace(bytes);
  }

  @Property(tries = 400, seed = "2")
  void anyDamageToATableGivesAPlacementOrAPlaceToLookAt(
      @ForAll("tables") List<PlacedPart> parts, @ForAll("edits") List<Edit> edits) {
    StringBuilder text = new StringBuilder(csv(parts, ','));
    for (Edit edit : edits) {
      int at = edit.at % (text.length() + 1);
      if (edit.remove && at < text.length()) {
        text.deleteCharAt(at);
      } else {
        text.insert(at, edit.character);
      }
    }
    valueOrPlace(text.toString().getBytes(StandardCharsets.UTF_8));
  }

  private static void valueOrPlace(byte[] bytes) {
    try {
      for (PlacedPart part : PlacementReader.read("p", bytes, MM).parts()) {
        assertTrue(Double.isFinite(part.xMillimetres()) && Double.isFinite(part.yMillimetres()));
        assertTrue(part.rotationDegrees() >= 0 && part.rotationDegrees() < 360);
      }
    } catch (PlacementException e) {
      assertTrue(e.line() >= 1 && e.column() >= 1, e.getMessage());
    }
  }

  @Property(tries = 300, seed = "3")
  void whatIsWrittenIsReadBack(
      @ForAll("tables") List<PlacedPart> parts, @ForAll("delimiters") char delimiter) {
    List<PlacedPart> expected = new ArrayList<>();
    for (int i = 0; i < parts.size(); i++) {
      expected.add(withLine(parts.get(i), i + 2));
    }
    assertEquals(expected, read(csv(parts, delimiter)).parts());
  }

  private static PlacedPart withLine(PlacedPart part, int line) {
    return new PlacedPart(
        part.reference(),
        part.value(),
        part.packageName(),
        part.xMillimetres(),
        part.yMillimetres(),
        part.rotationDegrees(),
        part.side(),
        line);
  }

  private static String csv(List<PlacedPart> parts, char delimiter) {
    StringBuilder text =
        new StringBuilder("Ref,Val,Package,PosX,PosY,Rot,Side\r\n".replace(',', delimiter));
    for (PlacedPart part : parts) {
      List<String> cells =
          List.of(
              quoted(part.reference()),
              quoted(part.value()),
              quoted(part.packageName()),
              String.format(Locale.ROOT, "%.3f", part.xMillimetres()),
              String.format(Locale.ROOT, "%.3f", part.yMillimetres()),
              String.format(Locale.ROOT, "%.1f", part.rotationDegrees()),
              part.side() == Side.TOP ? "T" : "bottom");
      text.append(String.join(String.valueOf(delimiter), cells)).append("\r\n");
    }
    return text.toString();
  }

  private static String quoted(String text) {
    return '"' + text.replace("\"", "\"\"") + '"';
  }

  record Edit(int at, boolean remove, char character) {}

  @Provide
  Arbitrary<List<Edit>> edits() {
    return Combinators.combine(
            Arbitraries.integers().between(0, 100_000),
            Arbitraries.of(true, false),
            Arbitraries.of(',', '"', '\n', '\t', ';', '#', '-', '9', 'e', '\u00b5', '\u0000'))
        .as(Edit::new)
        .list()
        .ofMaxSize(6);
  }

  @Provide
  Arbitrary<Character> delimiters() {
    return Arbitraries.of(',', ';', '\t');
  }

  @Provide
  Arbitrary<List<PlacedPart>> tables() {
    // One positive X on the top keeps the rule for negated bottom parts out of this check.
    PlacedPart anchor = new PlacedPart("ANCHOR", "", "", 1, 1, 0, Side.TOP, 0);
    Arbitrary<String> words =
        Arbitraries.strings().withChars("abC19 .,;\"\u00b5/-").ofMaxLength(12).map(String::strip);
    return Combinators.combine(
            Arbitraries.integers().between(1, 9999).map(n -> "C" + n),
            words,
            words,
            Arbitraries.integers().between(0, 900_000).map(n -> n / 1000.0),
            Arbitraries.integers().between(-900_000, 900_000).map(n -> n / 1000.0),
            Arbitraries.integers().between(0, 719).map(n -> n / 2.0),
            Arbitraries.of(Side.values()))
        .as((ref, value, pack, x, y, r, side) -> new PlacedPart(ref, value, pack, x, y, r, side, 0))
        .list()
        .ofMaxSize(8)
        .uniqueElements(PlacedPart::reference)
        .map(
            parts -> {
              List<PlacedPart> all = new ArrayList<>(parts);
              all.add(0, anchor);
              return all;
            });
  }
}
