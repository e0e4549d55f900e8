package railglow.camera;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import railglow.thermal.CountSamples;
import railglow.thermal.FloatSamples;

class NpySourceTest extends FrameSourceContract {
  @Override
  FrameSource thatGives(List<CountSamples> images) throws IOException {
    ByteBuffer data =
        ByteBuffer.allocate(images.size() * 2 * WIDTH * HEIGHT).order(ByteOrder.LITTLE_ENDIAN);
    images.forEach(
        image -> {
          for (short count : image.counts()) {
            data.putShort(count);
          }
        });
    Path file = file("<u2", "(" + images.size() + ", 3, 5)", data.array());
    return RecordedSource.atOnce(
        FrameSources.openFile(
            file.toString(),
            camera(RawLayout.packed(WIDTH, HEIGHT, SampleType.U16, Endian.LITTLE))),
        index -> index);
  }

  @Test
  void floatsInEitherByteOrderAreRead() throws IOException {
    for (ByteOrder order : List.of(ByteOrder.LITTLE_ENDIAN, ByteOrder.BIG_ENDIAN)) {
      byte[] data = ByteBuffer.allocate(8).order(order).putFloat(21.5f).putFloat(-3).array();
      Path file = file((order == ByteOrder.BIG_ENDIAN ? ">" : "<") + "f4", "(1, 2)", data);
      try (RawFileFrames frames =
          RawFileFrames.openNpy(file, Orientation.AS_STORED, CountScale.unknown())) {
        FloatSamples image = (FloatSamples) frames.newSamples();
        frames.read(0, image);
        assertEquals(1, frames.count());
        assertEquals(21.5f, image.valueAt(0));
        assertEquals(-3f, image.valueAt(1));
      }
    }
  }

  @Test
  void whatCantBeUsedIsSaid() throws IOException {
    assertTrue(refusal("<f8", "(1, 1, 1)", 8).endsWith("save it as uint16 or float32"));
    assertTrue(refusal("<u2", "(4,)", 8).contains("wanted is (frames, rows, columns)"));
    assertTrue(refusal("<u2", "(2, 2, 2)", 8).contains("is cut short"));
    assertTrue(refusal("<u2", "(1, 0, 2)", 8).contains("all at least 1"));
    assertTrue(refusal("<u2", "(9999999, 99999, 99999)", 8).contains("can't be used"));
    Path text = Files.writeString(folder.resolve("x.npy"), "frames");
    IOException e =
        assertThrows(
            IOException.class,
            () -> RawFileFrames.openNpy(text, Orientation.AS_STORED, CountScale.unknown()));
    assertTrue(e.getMessage().endsWith("does not begin like an NPY file"), e.getMessage());
  }

  @Test
  void aSizeOtherThanTheDescriptorsIsRefused() throws IOException {
    Path file = file("<u2", "(1, 2, 2)", new byte[8]);
    CameraDescriptor camera =
        camera(RawLayout.packed(WIDTH, HEIGHT, SampleType.U16, Endian.LITTLE));
    IOException e =
        assertThrows(IOException.class, () -> FrameSources.openFile(file.toString(), camera));
    assertTrue(e.getMessage().contains("2 x 2"), e.getMessage());
    assertTrue(e.getMessage().contains("5 x 3"), e.getMessage());
  }

  @Property(tries = 500, seed = "41")
  void anyBytesGiveAHeaderOrAReason(@ForAll byte[] junk, @ForAll boolean likely) throws Exception {
    byte[] bytes = likely ? head("<u2", new String(junk, StandardCharsets.ISO_8859_1)) : junk;
    try {
      NpyHeader header = NpyHeader.read(new ByteArrayInputStream(bytes));
      assertTrue(header.frames() >= 1 && header.rows() >= 1 && header.columns() >= 1);
    } catch (IOException e) {
      assertTrue(e.getMessage().startsWith("it"), e.getMessage());
    }
  }

  private String refusal(String type, String shape, int dataBytes) throws IOException {
    Path file = file(type, shape, new byte[dataBytes]);
    return assertThrows(
            IOException.class,
            () -> RawFileFrames.openNpy(file, Orientation.AS_STORED, CountScale.unknown()))
        .getMessage();
  }

  private Path file(String type, String shape, byte[] data) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    bytes.write(head(type, shape));
    bytes.write(data);
    return Files.write(folder.resolve("frames.npy"), bytes.toByteArray());
  }

  /** As NumPy's format description has it: magic, version 1.0, length, a Python dictionary. */
  private static byte[] head(String type, String shape) {
    String text = "{'descr': '" + type + "', 'fortran_order': False, 'shape': " + shape + ", }";
    String padded = text + " ".repeat(63 - (10 + text.length()) % 64) + "\n";
    byte[] dictionary = padded.getBytes(StandardCharsets.ISO_8859_1);
    return ByteBuffer.allocate(10 + dictionary.length)
        .order(ByteOrder.LITTLE_ENDIAN)
        .put((byte) 0x93)
        .put("NUMPY".getBytes(StandardCharsets.US_ASCII))
        .put((byte) 1)
        .put((byte) 0)
        .putShort((short) dictionary.length)
        .put(dictionary)
        .array();
  }
}
