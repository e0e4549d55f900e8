package railglow.supply;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import railglow.cli.Main;

/** The program beside a thread that says what the wall clock reads once a file has appeared. */
final class ClockWitnessMain {
  private ClockWitnessMain() {}

  /**
   * @param args the file, then the program's own arguments
   */
  public static void main(String[] args) {
    Path when = Path.of(args[0]);
    Thread witness = new Thread(() -> bearWitness(when), "witness");
    witness.setDaemon(true);
    witness.start();
    String[] own = new String[args.length - 1];
    System.arraycopy(args, 1, own, 0, own.length);
    Main.main(own);
  }

  private static void bearWitness(Path when) {
    while (!Files.exists(when)) {
      try {
        Thread.sleep(20);
      } catch (InterruptedException e) {
        return;
      }
    }
    System.out.println("the wall clock reads " + Instant.now());
  }
}
