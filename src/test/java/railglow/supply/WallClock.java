package railglow.supply;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * A small library that, loaded into a process, sets the wall clock it sees back by an hour as soon
 * as a file exists. The machine's own clock is left alone.
 */
final class WallClock {
  private static final Path COMPILER = Path.of("/usr/bin/gcc");
  private static final Path SOURCE = Path.of("src/test/c/wallclock.c");

  private WallClock() {}

  static boolean canBeMoved() {
    return Files.isExecutable(COMPILER);
  }

  static Path library(Path folder) throws IOException, InterruptedException {
    Path made = folder.resolve("wallclock.so");
    Process compiler =
        new ProcessBuilder(
                COMPILER.toString(),
                "-shared",
                "-fPIC",
                "-O1",
                "-o",
                made.toString(),
                SOURCE.toString(),
                "-ldl")
            .inheritIO()
            .start();
    if (compiler.waitFor() != 0) {
      throw new IOException("gcc can't compile " + SOURCE);
    }
    return made;
  }
}
