package railglow.journal;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A journal as it was found on the disk.
 *
 * @param entries every whole entry, in the order of the file
 * @param damages lines that were left out; empty for a sound journal
 * @param unfinishedBytes bytes after the last whole line: a line that was being written
 */
public record Journal(
    RunHeader header, List<Entry> entries, List<Damage> damages, long unfinishedBytes) {
  public Journal {
    entries = List.copyOf(entries);
    damages = List.copyOf(damages);
  }

  /** The closing entry; empty when the run did not finish its journal. */
  public Optional<Entry.Closed> closed() {
    return of(Entry.Closed.class).reduce((first, last) -> last);
  }

  public boolean finished() {
    return closed().isPresent();
  }

  /** The entries of one kind, in order. */
  public <T extends Entry> Stream<T> of(Class<T> kind) {
    return entries.stream().filter(kind::isInstance).map(kind::cast);
  }

  /** Seconds after the start of the run. */
  public double seconds(long nanos) {
    return (nanos - header.startNanos()) / 1e9;
  }

  /** One sentence: how the journal ends. */
  public String ending() {
    if (finished()) {
      return "finished";
    }
    String after =
        entries.isEmpty()
            ? "after its header"
            : String.format(
                java.util.Locale.ROOT,
                "after %d entries, %.3f s after the start",
                entries.size(),
                seconds(entries.get(entries.size() - 1).nanos()));
    String rest =
        unfinishedBytes == 0
            ? ""
            : "; " + unfinishedBytes + " bytes of an unfinished line follow and were left out";
    return "not finished: the journal ends " + after + " without a closing entry" + rest;
  }
}
