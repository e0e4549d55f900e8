package railglow.casebook;

import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import java.util.Optional;
import railglow.journal.Checksums;
import railglow.journal.JournalEnds;
import railglow.journal.RunFolder;

/**
 * Drops the frames of runs whose reduced planes are kept. Only ever done when asked: a run without
 * frames can be read and reported, but not replayed. Stateless.
 */
public final class Retention {
  private static final List<String> NEEDED =
      List.of("in-phase", "quadrature", "significance", "background");

  private Retention() {}

  /** Why the frames of a run must stay; empty when they may go. */
  public static Optional<String> reasonToKeep(RunFolder run) throws IOException {
    if (!Files.isRegularFile(run.frames())) {
      return Optional.of("it has no frames");
    }
    if (JournalEnds.read(run.journal()).closed().isEmpty()) {
      return Optional.of("it did not finish, so only its frames can say what it found");
    }
    if (JournalEnds.read(run.journal()).header().isLog()) {
      return Optional.empty(); // what was followed in them is in the journal
    }
    if (!Files.isRegularFile(run.findings())) {
      return Optional.of("it has no findings yet: replay it first");
    }
    for (String plane : NEEDED) {
      if (!Files.isRegularFile(run.plane(plane))) {
        return Optional.of("its plane " + plane + " is not there: replay it first");
      }
    }
    return Optional.empty();
  }

  /**
   * Drops the frames and leaves a note with their checksum.
   *
   * @param rule why, in words, for the note
   * @return the bytes that were freed
   * @throws IllegalArgumentException when {@link #reasonToKeep} has one
   */
  public static long dropFrames(RunFolder run, String rule) throws IOException {
    Optional<String> reason = reasonToKeep(run);
    if (reason.isPresent()) {
      throw new IllegalArgumentException(reason.get());
    }
    long bytes = Files.size(run.frames());
    Checksums.noteDroppedFrames(run, rule);
    Files.delete(run.frames());
    return bytes;
  }
}
