package railglow.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ch.qos.logback.classic.LoggerContext;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.slf4j.Logger;

class LogLinesTest {
  private final LoggerContext context = new LoggerContext();
  @TempDir private Path folder;

  @AfterEach
  void end() {
    context.stop();
  }

  @Test
  void aLineSaysWhenHowBadOnWhichThreadByWhomAndWhat() throws IOException {
    Logger log = loggerTo(folder.resolve("deeper/railglow.log"));
    log.warn("{} of {}", 3, 4);
    List<String> lines = Files.readAllLines(folder.resolve("deeper/railglow.log"));
    assertEquals(1, lines.size());
    String thread = Thread.currentThread().getName();
    assertTrue(
        lines.get(0).matches("\\d{4}-\\d\\d-\\d\\d \\d\\d:\\d\\d:\\d\\d,\\d{3} .*"), lines.get(0));
    assertTrue(lines.get(0).endsWith(" WARN [" + thread + "] Speaker: 3 of 4"), lines.get(0));
  }

  @Test
  void whatWasThrownFollowsWithItsPlace() throws IOException {
    Path file = folder.resolve("railglow.log");
    loggerTo(file).error("it broke", new IllegalStateException("like this"));
    String text = Files.readString(file);
    assertTrue(text.contains("it broke\njava.lang.IllegalStateException: like this\n\tat "), text);
  }

  @Test
  void nothingIsOpenedBeforeTheFirstLineAndOthersLinesStay() throws IOException {
    Path file = folder.resolve("railglow.log");
    Logger log = loggerTo(file);
    assertFalse(Files.exists(file));
    Files.writeString(file, "from before\n");
    log.info("one");
    log.info("two");
    List<String> lines = Files.readAllLines(file);
    assertEquals("from before", lines.get(0));
    assertEquals(3, lines.size());
  }

  @Test
  void aFileThatCantBeWrittenStopsNobody() {
    loggerTo(folder).warn("into a folder");
    assertEquals(
        1,
        context.getStatusManager().getCopyOfStatusList().stream()
            .filter(status -> status.getMessage().startsWith("the log can't be written"))
            .count());
  }

  private Logger loggerTo(Path file) {
    LogLines lines = new LogLines(file);
    lines.setContext(context);
    lines.start();
    ch.qos.logback.classic.Logger logger = context.getLogger("some.place.Speaker");
    logger.addAppender(lines);
    return logger;
  }
}
