package railglow.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

class KeysTest {
  private final List<String> done = new ArrayList<>();
  private final Keys.Pressed pressed =
      new Keys.Pressed() {
        @Override
        public void press() {
          done.add("press");
        }

        @Override
        public void end() {
          done.add("end");
        }

        @Override
        public void name(int number) {
          done.add("number " + number);
        }

        @Override
        public void name(String word) {
          done.add("word " + word);
        }
      };

  @Test
  void linesPressNameAndEnd() throws Exception {
    String typed = "\nb\n3\n12\nbulk cap\nq\n\n";
    Keys.readLines(new ByteArrayInputStream(typed.getBytes(StandardCharsets.UTF_8)), pressed);
    assertEquals(
        List.of("press", "press", "number 3", "number 12", "word bulk cap"), done, "q ends it");
  }

  @Test
  void onATerminalAnyKeyPressesAndAKeyOfSeveralBytesOnlyOnce() throws Exception {
    List<InputStream> keys = new ArrayList<>();
    for (String key : new String[] {" ", "\u001b[A", "x", "4", "\n", "\u0004", "x"}) {
      keys.add(new ByteArrayInputStream(key.getBytes(StandardCharsets.UTF_8)));
    }
    Keys.readKeys(new SequenceInputStream(Collections.enumeration(keys)), pressed);
    assertEquals(List.of("press", "press", "press", "number 4", "press"), done, "Ctrl-D ends it");
  }

  @Test
  void keysThatComeTogetherAreAllHeard() throws Exception {
    String typed = "4\u001b[A\u001bOP\u001b[15~3\u00e4xq ";
    Keys.readKeys(new ByteArrayInputStream(typed.getBytes(StandardCharsets.UTF_8)), pressed);
    assertEquals(
        List.of("number 4", "press", "press", "press", "number 3", "press", "press"),
        done,
        "an arrow, two function keys, a letter of two bytes; q ends it");
  }
}
