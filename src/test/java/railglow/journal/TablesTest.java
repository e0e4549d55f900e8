package railglow.journal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TablesTest {
  @TempDir Path temporary;

  private Path file(String text) throws IOException {
    Path file = temporary.resolve("table.csv");
    Files.writeString(file, text);
    return file;
  }

  private void edgesRefused(String text, String... words) throws IOException {
    Path file = file(text);
    refused(assertThrows(JournalException.class, () -> EdgeTable.read(file)), words);
  }

  private void framesRefused(String text, String... words) throws IOException {
    Path file = file(text);
    refused(assertThrows(JournalException.class, () -> FrameTable.readNanos(file)), words);
  }

  private static void refused(JournalException e, String... words) {
    for (String word : words) {
      assertTrue(e.getMessage().contains(word), e.getMessage() + " lacks " + word);
    }
  }

  @Test
  void edgesAreReadInOrder() throws IOException {
    assertEquals(
        List.of(
            new EdgeTable.Row(0, false),
            new EdgeTable.Row(3_000_000_000L, true),
            new EdgeTable.Row(6_000_000_000L, false)),
        EdgeTable.read(file("time_s,state\n0.000,OFF\r\n3.000,ON\n\n6,OFF\n")));
  }

  @Test
  void badEdgesAreRefusedWithFileAndLine() throws IOException {
    edgesRefused("", "table.csv:1", "columns");
    edgesRefused("time_s,state\n", "table.csv:2", "no rows");
    edgesRefused("time,state\n1,ON\n", "table.csv:1", "no column time_s", "time, state");
    edgesRefused("time_s,state\n0,OFF\n1,on\n", "table.csv:3", "'on' is neither ON nor OFF");
    edgesRefused("time_s,state\n0,OFF\n1 s,ON\n", "table.csv:3", "'1 s' is not a number");
    edgesRefused("time_s,state\n0,OFF\nNaN,ON\n", "table.csv:3", "not a finite number");
    edgesRefused("time_s,state\n2,OFF\n1,ON\n", "table.csv:3", "not after");
    edgesRefused("time_s,state\n2,OFF\n3,OFF\n", "table.csv:3", "OFF already");
    edgesRefused("time_s,state\n2,OFF,x\n", "table.csv:2", "3 columns");
    edgesRefused("time_s,state\n1e12,OFF\n", "table.csv:2", "outside");
  }

  @Test
  void frameTimesAreReadInNanoseconds() throws IOException {
    assertArrayEquals(
        new long[] {0, 114_000_000, 114_000_000, 411_755_000},
        FrameTable.readNanos(
            file("frame,t_ms,last_ffc_t_ms\n0,0,-5\n1,114,-5\n2,114,-5\n3,411.755,-5\n")));
    assertArrayEquals(
        new long[] {1_500_000_000L}, FrameTable.readNanos(file("frame,t_s\n0,1.5\n")));
  }

  @Test
  void badFrameTimesAreRefusedWithFileAndLine() throws IOException {
    framesRefused("frame,time\n0,0\n", "table.csv:1", "no column t_ms or t_ms_host or t_s");
    framesRefused("frame,t_ms\n0,0\n2,1\n", "table.csv:3", "where frame 1 is due");
    framesRefused("frame,t_ms\n0,5\n1,4\n", "table.csv:3", "'4' is before");
    framesRefused("frame,t_ms\n", "table.csv:2", "no rows");
  }

  @Test
  void aTableThatIsNoTextIsRefused() throws IOException {
    Path file = temporary.resolve("bytes.csv");
    Files.write(file, new byte[] {(byte) 0xFF, (byte) 0xFE, 0, 1});
    refused(assertThrows(JournalException.class, () -> EdgeTable.read(file)), "UTF-8");
  }
}
