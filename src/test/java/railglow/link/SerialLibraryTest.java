package railglow.link;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import railglow.process.ChildJava;

class SerialLibraryTest {
  @TempDir Path folder;

  @Test
  @EnabledOnOs(OS.LINUX)
  void aProcessWithASerialLineIgnoresNoSignalThatItDidNotIgnoreBefore() throws Exception {
    Process child =
        ChildJava.of(List.of(), SignalsAfterSerial.class, folder.resolve("no-such-port").toString())
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    String said = new String(child.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    child.waitFor(20, TimeUnit.SECONDS);

    List<String> ignored = said.lines().toList();
    assertEquals(2, ignored.size(), said);
    assertEquals(ignored.get(0), ignored.get(1));
  }
}
