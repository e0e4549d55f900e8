package railglow.cli;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.spi.Configurator;
import ch.qos.logback.classic.spi.ConfiguratorRank;
import ch.qos.logback.core.spi.ContextAwareBase;
import java.nio.file.Path;
import org.slf4j.Logger;

/**
 * Sends the log to one file: the property {@code railglow.log}, else {@code railglow.log} in the
 * folder for temporary files. In code because reading the same from XML takes a tenth of the start;
 * a {@code logback.xml} or {@code logback-test.xml} on the class path comes first.
 */
@ConfiguratorRank(ConfiguratorRank.CUSTOM_HIGH_PRIORITY)
public final class LogFile extends ContextAwareBase implements Configurator {
  @Override
  public ExecutionStatus configure(LoggerContext context) {
    ClassLoader loader = LogFile.class.getClassLoader();
    if (loader.getResource("logback-test.xml") != null
        || loader.getResource("logback.xml") != null) {
      return ExecutionStatus.INVOKE_NEXT_IF_ANY;
    }
    LogLines file = new LogLines(path());
    file.setContext(context);
    file.setName("file");
    file.start();
    context.getLogger(Logger.ROOT_LOGGER_NAME).setLevel(Level.INFO);
    context.getLogger(Logger.ROOT_LOGGER_NAME).addAppender(file);
    // says which spare font it took for which letter
    context.getLogger("org.apache.pdfbox").setLevel(Level.ERROR);
    return ExecutionStatus.DO_NOT_INVOKE_NEXT_IF_ANY;
  }

  private static Path path() {
    String temporary = System.getProperty("java.io.tmpdir") + "/railglow.log";
    return Path.of(System.getProperty("railglow.log", temporary));
  }
}
