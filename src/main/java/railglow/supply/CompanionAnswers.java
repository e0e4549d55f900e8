package railglow.supply;

import java.io.IOException;
import java.io.OutputStream;
import java.util.function.IntConsumer;

/**
 * The companion's bytes to its controller. A controller that can't hear them any more is the reason
 * for a companion to be there, so that is no error. Thread-safe.
 */
final class CompanionAnswers implements IntConsumer {
  private final OutputStream out;
  private boolean deaf;

  CompanionAnswers(OutputStream out) {
    this.out = out;
  }

  @Override
  public synchronized void accept(int code) {
    if (!deaf) {
      try {
        out.write(code);
        out.flush();
      } catch (IOException e) {
        deaf = true;
      }
    }
  }
}
