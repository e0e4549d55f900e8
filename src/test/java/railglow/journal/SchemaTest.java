package railglow.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is written fits the published schemas, by a validator that is not ours. */
class SchemaTest {
  @TempDir Path temporary;

  private static Schema schema(String name) throws IOException {
    try (InputStream in = SchemaTest.class.getResourceAsStream("/railglow/schema/" + name)) {
      return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
          .getSchema(in, InputFormat.JSON);
    }
  }

  private static List<?> errors(Schema schema, String json) {
    return schema.validate(json, InputFormat.JSON);
  }

  @Test
  void everyLineOfAJournalFits() throws IOException {
    Schema schema = schema("journal-line.schema.json");
    RunFolder folder = new RunFolder(temporary.resolve("run"));
    try (JournalWriter writer = JournalWriter.create(folder, SampleRun.header(), 0)) {
      for (Entry entry : SampleRun.entries()) {
        writer.append(entry);
      }
    }
    for (String line : Files.readAllLines(folder.journal())) {
      assertEquals(List.of(), errors(schema, line), line);
    }
  }

  @Test
  void aLineThatIsNotOneDoesNotFit() throws IOException {
    Schema schema = schema("journal-line.schema.json");
    String line = new String(JournalLine.of(3, SampleRun.entries().get(2)), StandardCharsets.UTF_8);
    assertEquals(List.of(), errors(schema, line));
    assertFalse(
        errors(schema, line.replace("\"volts\":1.1999999999999997", "\"volts\":\"much\""))
            .isEmpty());
    assertFalse(errors(schema, line.replace("\"volts\"", "\"voltage\"")).isEmpty());
    assertFalse(
        errors(schema, line.replace("\"kind\":\"reading\"", "\"kind\":\"guess\"")).isEmpty());
  }

  @Test
  void findingsFit() throws IOException {
    Path file = temporary.resolve("findings.json");
    FindingsFile.write(file, SampleRun.findings());
    Schema schema = schema("findings.schema.json");
    String text = Files.readString(file);
    assertEquals(List.of(), errors(schema, text));
    assertFalse(errors(schema, text.replace("HEAT_FOUND", "SURELY_FOUND")).isEmpty());
  }

  @Test
  void theHeaderOfStoredFramesFits() throws IOException {
    Schema schema = schema("frames-header.schema.json");
    for (SampleType type : SampleType.values()) {
      Path file = temporary.resolve(type + ".rgf");
      FrameStoreWriter.create(file, type, 4, 3).close();
      String text = new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1);
      String line = text.substring(0, text.indexOf('\n'));
      assertEquals(List.of(), errors(schema, line), line);
      assertTrue(errors(schema, line.replace("\"codec\"", "\"packer\"")).size() > 0);
    }
  }
}
