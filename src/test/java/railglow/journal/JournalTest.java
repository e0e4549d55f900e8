package railglow.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railglow.observed.OutputState;
import railglow.safety.StopCause;

class JournalTest {
  @TempDir Path temporary;
  private RunFolder folder;

  @BeforeEach
  void aFolder() {
    folder = new RunFolder(temporary.resolve("2026-03-01-hx12-3V3-01"));
  }

  private byte[] written() throws IOException {
    try (JournalWriter writer = JournalWriter.create(folder, SampleRun.header(), 1000)) {
      for (Entry entry : SampleRun.entries()) {
        writer.append(entry);
      }
    }
    return Files.readAllBytes(folder.journal());
  }

  private Journal read(byte[] bytes) throws IOException {
    Path file = temporary.resolve("copy.jsonl");
    Files.write(file, bytes);
    return JournalReader.read(file);
  }

  /** Records with arrays have no equality of their own: their JSON stands for them. */
  static List<String> texts(List<Entry> entries) throws IOException {
    List<String> texts = new ArrayList<>();
    for (Entry entry : entries) {
      texts.add(new String(JournalLine.of(0, entry), StandardCharsets.UTF_8));
    }
    return texts;
  }

  @Test
  void aJournalThatWasRemovedIsNoticedAtTheNextEdge() throws IOException {
    try (JournalWriter writer = JournalWriter.create(folder, SampleRun.header(), 1000)) {
      Files.delete(folder.journal());

      Entry edge = new Entry.EdgeMade(new railglow.observed.Edge(0, true, 1, 5, 6));
      JournalException e = assertThrows(JournalException.class, () -> writer.append(edge));

      assertTrue(e.getMessage().endsWith("has been removed while it was written"), e.getMessage());
    }
  }

  @Test
  void everyEntryComesBack() throws IOException {
    written();
    Journal journal = JournalReader.read(folder);
    assertEquals(texts(SampleRun.entries()), texts(journal.entries()));
    assertEquals(SampleRun.entries().get(2), journal.entries().get(2), "a reading with its trips");
    assertTrue(journal.finished());
    assertEquals("finished", journal.ending());
    assertEquals(List.of(), journal.damages());
    RunHeader header = journal.header();
    assertEquals(SampleRun.header().started(), header.started());
    assertEquals(SampleRun.header().envelope(), header.envelope());
    assertEquals(SampleRun.header().sequence(), header.sequence());
    assertEquals(SampleRun.header().cycles(), header.cycles());
    assertEquals(SampleRun.header().camera(), header.camera());
    assertEquals(SampleRun.header().usedFiles(), header.usedFiles());
    assertTrue(
        Arrays.equals(new double[] {0, 0.5, 2}, header.detection().bodyTimeConstantsSeconds()));
  }

  @Test
  void anUnlimitedBoundComesBackAsUnlimited() throws IOException {
    written();
    assertFalse(JournalReader.read(folder).header().envelope().maxJoules().isSet());
  }

  @Test
  void numbersThatAreNoneAreWordsNotBareTokens() throws IOException {
    String text = new String(written(), StandardCharsets.UTF_8);
    assertTrue(text.contains("\"volts\":\"NaN\",\"amperes\":\"Infinity\""), text);
  }

  @Test
  void theSameRunGivesTheSameBytes() throws IOException {
    byte[] first = written();
    folder = new RunFolder(temporary.resolve("other"));
    assertEquals(
        new String(first, StandardCharsets.UTF_8), new String(written(), StandardCharsets.UTF_8));
  }

  @Test
  void cutAtAnyByteEveryWholeEntryIsReadAndTheRunSaysNotFinished() throws IOException {
    byte[] whole = written();
    List<String> expected = texts(SampleRun.entries());
    int headerEnd = indexOfLineEnd(whole, 0);
    for (int cut = 0; cut < whole.length - 1; cut++) {
      byte[] part = Arrays.copyOf(whole, cut);
      if (cut < headerEnd) {
        assertThrows(JournalException.class, () -> read(part));
        continue;
      }
      Journal journal = read(part);
      int entries = wholeEntries(whole, cut);
      assertEquals(expected.subList(0, entries), texts(journal.entries()), "cut at " + cut);
      assertFalse(journal.finished());
      assertTrue(journal.ending().startsWith("not finished"), journal.ending());
      assertEquals(List.of(), journal.damages());
      assertTrue(journal.unfinishedBytes() < 400);
    }
  }

  private static int indexOfLineEnd(byte[] bytes, int from) {
    int i = from;
    while (bytes[i] != '\n') {
      i++;
    }
    return i;
  }

  /** Entries whose text, the line end aside, lies before the cut. */
  private static int wholeEntries(byte[] bytes, int cut) {
    int lines = 0;
    for (int i = 0; i <= cut && i < bytes.length; i++) {
      if (bytes[i] == '\n') {
        lines++;
      }
    }
    return lines - 1;
  }

  @Test
  void anyChangedByteIsReportedWithItsLine() throws IOException {
    byte[] whole = written();
    int headerEnd = indexOfLineEnd(whole, 0);
    for (int at = headerEnd + 1; at < whole.length - 1; at++) {
      byte[] changed = whole.clone();
      changed[at] ^= 0x10;
      Journal journal = read(changed);
      int damaged = journal.damages().size();
      boolean lastLineLost = journal.unfinishedBytes() > 0;
      assertTrue(damaged > 0 || lastLineLost, "byte " + at + " changed unnoticed");
      assertTrue(journal.entries().size() >= SampleRun.entries().size() - 2, "byte " + at);
    }
  }

  @Test
  void aLineTakenOutIsMissed() throws IOException {
    List<String> lines =
        new ArrayList<>(new String(written(), StandardCharsets.UTF_8).lines().toList());
    lines.remove(3);
    Journal journal = read((String.join("\n", lines) + "\n").getBytes(StandardCharsets.UTF_8));
    assertEquals(1, journal.damages().size());
    assertTrue(
        journal.damages().get(0).what().contains("entries 3 to 3 are not there"),
        journal.damages().toString());
    assertEquals(SampleRun.entries().size() - 1, journal.entries().size());
  }

  @Test
  void aLineWrittenTwiceIsReadOnce() throws IOException {
    List<String> lines =
        new ArrayList<>(new String(written(), StandardCharsets.UTF_8).lines().toList());
    lines.add(3, lines.get(2));
    Journal journal = read((String.join("\n", lines) + "\n").getBytes(StandardCharsets.UTF_8));
    assertTrue(journal.damages().get(0).what().startsWith("line 4: entry 2 again"));
    assertEquals(texts(SampleRun.entries()), texts(journal.entries()));
  }

  @Test
  void aNewerFormatIsRefusedWithAClearWord() throws IOException {
    String text = new String(written(), StandardCharsets.UTF_8);
    byte[] newer =
        text.replace("\"formatVersion\":1,", "\"formatVersion\":3,")
            .getBytes(StandardCharsets.UTF_8);
    JournalException e = assertThrows(JournalException.class, () -> read(newer));
    assertTrue(e.getMessage().contains("format 2"), e.getMessage());
    assertTrue(e.getMessage().contains("use a newer Railglow"), e.getMessage());
  }

  @Test
  void aMissingJournalIsNamed() {
    JournalException e = assertThrows(JournalException.class, () -> JournalReader.read(folder));
    assertTrue(e.getMessage().contains(folder.journal().toString()), e.getMessage());
  }

  @Test
  void aJournalIsNeverWrittenOver() throws IOException {
    byte[] before = written();
    JournalException e =
        assertThrows(
            JournalException.class, () -> JournalWriter.create(folder, SampleRun.header(), 0));
    assertTrue(e.getMessage().contains("is there already"), e.getMessage());
    assertTrue(Arrays.equals(before, Files.readAllBytes(folder.journal())));
  }

  @Test
  void aRunLargerThanTheDiskIsRefusedBeforeItBegins() {
    JournalException e =
        assertThrows(
            JournalException.class,
            () -> JournalWriter.create(folder, SampleRun.header(), Long.MAX_VALUE / 2));
    assertTrue(e.getMessage().contains("MB free, but this run may write"), e.getMessage());
    assertFalse(Files.exists(folder.journal()));
  }

  @Test
  void aFolderThatIsAFileIsRefusedBeforeTheRunBegins() throws IOException {
    Files.write(folder.root(), new byte[1]);
    JournalException e =
        assertThrows(
            JournalException.class, () -> JournalWriter.create(folder, SampleRun.header(), 0));
    assertTrue(e.getMessage().contains("can't be written"), e.getMessage());
  }

  @Test
  void nothingFollowsTheClosingEntry() throws IOException {
    try (JournalWriter writer = JournalWriter.create(folder, SampleRun.header(), 0)) {
      writer.append(
          new Entry.Closed(1, StopCause.PROGRAMME_FINISHED, OutputState.PROVEN_OFF, 0, 1, 0, 0));
      assertThrows(IllegalStateException.class, () -> writer.append(new Entry.Note(2, "late")));
      assertEquals(2, writer.lines());
    }
  }

  @Test
  void everyKindOfEntryIsInTheSample() throws IOException {
    Set<Class<?>> kinds = new java.util.HashSet<>();
    SampleRun.entries().forEach(entry -> kinds.add(entry.getClass()));
    assertEquals(Set.of(Entry.class.getPermittedSubclasses()), kinds);
  }
}
