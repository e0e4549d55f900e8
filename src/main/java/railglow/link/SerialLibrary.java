package railglow.link;

import com.fazecast.jSerialComm.SerialPort;
import com.sun.jna.Library;
import com.sun.jna.Native;
import com.sun.jna.Platform;
import java.util.Arrays;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Loads the serial library. On Unix that makes the process ignore seven signals for good, among
 * them the one that says that the terminal was closed, which has to stop a run; they are put back
 * as they were (decision 0123). Thread-safe.
 */
final class SerialLibrary {
  private static final Logger LOG = LoggerFactory.getLogger(SerialLibrary.class);

  /** The ordinary ones, by any Unix. */
  private static final int LAST_SIGNAL = 31;

  /** No system describes what a signal does in as many. */
  private static final int MOST_BYTES = 512;

  private static boolean loaded;

  private SerialLibrary() {}

  /** Does nothing after the first time. */
  static synchronized void load() {
    if (loaded) {
      return;
    }
    Optional<SystemCalls> calls = Platform.isWindows() ? Optional.empty() : systemCalls();
    byte[][] before = calls.map(SerialLibrary::signals).orElse(null);
    // any call of the library loads it
    LOG.debug("serial library {}", SerialPort.getVersion());
    calls.ifPresent(system -> putBack(system, before));
    loaded = true;
  }

  /** POSIX sigaction; null for what is not wanted. */
  interface SystemCalls extends Library {
    int sigaction(int signal, byte[] now, byte[] before);
  }

  private static Optional<SystemCalls> systemCalls() {
    try {
      return Optional.of(Native.load(Platform.C_LIBRARY_NAME, SystemCalls.class));
    } catch (LinkageError e) {
      LOG.warn(
          "with a serial line a closed terminal will not stop this program: what the serial library"
              + " does to signals can't be undone here ({})",
          e.toString());
      return Optional.empty();
    }
  }

  private static byte[][] signals(SystemCalls system) {
    byte[][] all = new byte[LAST_SIGNAL + 1][MOST_BYTES];
    for (int signal = 1; signal <= LAST_SIGNAL; signal++) {
      if (system.sigaction(signal, null, all[signal]) != 0) {
        all[signal] = null;
      }
    }
    return all;
  }

  private static void putBack(SystemCalls system, byte[][] before) {
    byte[][] after = signals(system);
    for (int signal = 1; signal <= LAST_SIGNAL; signal++) {
      if (before[signal] != null && !Arrays.equals(before[signal], after[signal])) {
        // the system refuses it for the two that nothing can ignore
        system.sigaction(signal, before[signal], null);
      }
    }
  }
}
