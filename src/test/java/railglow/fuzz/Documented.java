package railglow.fuzz;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** Holds a parser to its documentation: a value, or an error it names, in little time. */
public final class Documented {
  /** Of the processor's time: other work on the machine does not count. */
  private static final long MOST_NANOS = 5_000_000_000L;

  private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

  /** Something that parses. */
  public interface Attempt {
    void run() throws Exception;
  }

  private Documented() {}

  /** Fails unless the attempt ends well or with one of these errors, and a message, in time. */
  public static void only(Attempt attempt, Class<?>... errors) {
    long start = THREADS.getCurrentThreadCpuTime();
    try {
      attempt.run();
    } catch (Exception e) {
      if (Stream.of(errors).noneMatch(error -> error.isInstance(e))) {
        throw new AssertionError("an error that is not documented: " + e, e);
      }
      if (e.getMessage() == null || e.getMessage().isBlank()) {
        throw new AssertionError("an error that says nothing: " + e, e);
      }
    }
    long took = THREADS.getCurrentThreadCpuTime() - start;
    if (took > MOST_NANOS) {
      throw new AssertionError("took " + took / 1_000_000 + " ms");
    }
  }

  /** Puts bytes into a file of the given name, in a folder that goes with the process. */
  public static Path file(String name, byte[] bytes) {
    try {
      return Files.write(Folder.PATH.resolve(name), bytes);
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  /** The contents of files in the project, as seeds. */
  public static Stream<byte[]> contents(String folder, String glob) {
    try (var files = Files.newDirectoryStream(Path.of(folder), glob)) {
      List<byte[]> all = new java.util.ArrayList<>();
      for (Path file : files) {
        all.add(Files.readAllBytes(file));
      }
      if (all.isEmpty()) {
        throw new AssertionError("there is no " + glob + " in " + folder);
      }
      return all.stream();
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  /** The first whole lines of a text, so that a long file makes a seed that is quick to read. */
  public static byte[] firstLines(byte[] text, int count) {
    int end = 0;
    for (int lines = 0; end < text.length && lines < count; end++) {
      lines += text[end] == '\n' ? 1 : 0;
    }
    return java.util.Arrays.copyOf(text, end);
  }

  /** Made once, when the first file is. */
  private static final class Folder {
    private static final Path PATH = make();

    private static Path make() {
      try {
        Path memory = Path.of("/dev/shm");
        Path folder =
            Files.isWritable(memory)
                ? Files.createTempDirectory(memory, "fuzz")
                : Files.createTempDirectory("fuzz");
        folder.toFile().deleteOnExit();
        return folder;
      } catch (IOException e) {
        throw new AssertionError(e);
      }
    }
  }
}
