package railglow.cli;

import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.classic.spi.ThrowableProxyUtil;
import ch.qos.logback.core.AppenderBase;
import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;

/**
 * Appends what is logged to a file, a line each, as it comes. The file is opened with the first
 * line: most runs have none, and a layout read from a pattern takes a fourteenth of a hunt's start
 * (decision 0110).
 */
final class LogLines extends AppenderBase<ILoggingEvent> {
  private final Path file;
  private BufferedWriter lines;
  private DateTimeFormatter time;

  LogLines(Path file) {
    this.file = file;
  }

  @Override
  protected void append(ILoggingEvent event) {
    try {
      if (lines == null) {
        open();
      }
      lines.write(line(event));
      if (event.getThrowableProxy() != null) {
        lines.write(ThrowableProxyUtil.asString(event.getThrowableProxy()));
      }
      lines.flush();
    } catch (IOException e) {
      addError("the log can't be written: " + file, e);
    }
  }

  private void open() throws IOException {
    time = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss,SSS").withZone(ZoneId.systemDefault());
    Path folder = file.toAbsolutePath().getParent();
    if (folder != null) {
      Files.createDirectories(folder);
    }
    lines = Files.newBufferedWriter(file, StandardOpenOption.CREATE, StandardOpenOption.APPEND);
  }

  private String line(ILoggingEvent event) {
    String logger = event.getLoggerName();
    return time.format(Instant.ofEpochMilli(event.getTimeStamp()))
        + " "
        + event.getLevel()
        + " ["
        + event.getThreadName()
        + "] "
        + logger.substring(logger.lastIndexOf('.') + 1)
        + ": "
        + event.getFormattedMessage()
        + System.lineSeparator();
  }

  @Override
  public void stop() {
    super.stop();
    if (lines != null) {
      try {
        lines.close();
      } catch (IOException e) {
        addError("the log can't be closed: " + file, e);
      }
      lines = null;
    }
  }
}
