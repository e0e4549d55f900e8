package railglow.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

class JournalNumbersTest {
  private static Entry.Hottest roundTrip(Entry.Hottest entry) throws IOException {
    byte[] line = JournalLine.of(7, entry);
    byte[] withoutEnd = java.util.Arrays.copyOf(line, line.length - 1);
    var object = JournalLine.object(withoutEnd);
    object.remove(java.util.List.of("n", "crc"));
    return (Entry.Hottest) JournalJson.MAPPER.treeToValue(object, Entry.class);
  }

  @Property(tries = 2000, seed = "1")
  void everyDoubleComesBackBitForBit(@ForAll long bits, @ForAll int column) throws IOException {
    double value = Double.longBitsToDouble(bits);
    Entry.Hottest back = roundTrip(new Entry.Hottest(bits, value, -value, column, 0));
    assertEquals(Double.doubleToLongBits(value), Double.doubleToLongBits(back.celsius()));
    assertEquals(Double.doubleToLongBits(-value), Double.doubleToLongBits(back.riseKelvin()));
    assertEquals(bits, back.nanos());
    assertEquals(column, back.column());
  }

  @Property(tries = 500, seed = "2")
  void anyTextComesBack(@ForAll String text) throws IOException {
    String valid = new String(text.getBytes("UTF-8"), "UTF-8");
    byte[] line = JournalLine.of(7, new Entry.Note(1, valid));
    var object = JournalLine.object(java.util.Arrays.copyOf(line, line.length - 1));
    assertEquals(valid, object.path("text").asText());
  }

  @Property(tries = 1000, seed = "3")
  void anyBytesAreALineOrARefusal(@ForAll byte[] bytes) {
    try {
      assertTrue(JournalLine.object(bytes).isObject());
    } catch (JournalException e) {
      assertTrue(e.getMessage().startsWith("the "), e.getMessage());
    }
  }
}
