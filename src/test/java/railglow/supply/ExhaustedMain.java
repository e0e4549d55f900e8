package railglow.supply;

import java.nio.file.Files;
import java.nio.file.Path;
import railglow.cli.Main;

/**
 * The program with something in it that takes all memory there is, down to the last few bytes, and
 * gives none back. It begins when a file appears.
 */
final class ExhaustedMain {
  private static final int LEAST_PIECES = 4;

  private ExhaustedMain() {}

  /**
   * @param args the file, then the program's own arguments
   */
  public static void main(String[] args) throws Exception {
    Path when = Path.of(args[0]);
    Thread hog = new Thread(() -> takeEverything(when), "hog");
    hog.setDaemon(true);
    hog.start();
    String[] own = new String[args.length - 1];
    System.arraycopy(args, 1, own, 0, own.length);
    Main.main(own);
  }

  private static void takeEverything(Path when) {
    while (!Files.exists(when)) {
      pause();
    }
    Object[] taken = null;
    int pieces = 1 << 18;
    while (true) {
      try {
        Object[] more = new Object[pieces];
        more[0] = taken;
        taken = more;
      } catch (OutOfMemoryError e) {
        if (pieces == LEAST_PIECES) {
          pause();
        }
        pieces = Math.max(LEAST_PIECES, pieces / 2);
      }
    }
  }

  private static void pause() {
    try {
      Thread.sleep(5);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
