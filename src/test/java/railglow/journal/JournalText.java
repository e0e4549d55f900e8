package railglow.journal;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Writes whole journals at once, for tests that need thousands of them. */
public final class JournalText {
  private JournalText() {}

  public static void write(Path file, RunHeader header, List<Entry> entries) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    bytes.write(JournalLine.of(0, header));
    for (int i = 0; i < entries.size(); i++) {
      bytes.write(JournalLine.of(i + 1, entries.get(i)));
    }
    Files.write(file, bytes.toByteArray());
  }
}
