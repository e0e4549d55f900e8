package railglow.camera;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;
import org.junit.jupiter.api.Test;
import railglow.thermal.CountSamples;

class TiffSourceTest extends FrameSourceContract {
  @Override
  FrameSource thatGives(List<CountSamples> images) throws IOException {
    Path file = folder.resolve("frames.tiff");
    write(file, images.stream().map(TiffSourceTest::picture).toList());
    return RecordedSource.atOnce(
        FrameSources.openFile(
            file.toString(),
            camera(RawLayout.packed(WIDTH, HEIGHT, SampleType.U16, Endian.LITTLE))),
        index -> index);
  }

  @Test
  void pagesOfDifferentSizesAreRefusedWhenReached() throws IOException {
    Path file = folder.resolve("mixed.tiff");
    write(file, List.of(grey(5, 3), grey(4, 3)));
    try (TiffFrames frames = TiffFrames.open(file, Orientation.AS_STORED)) {
      IOException e = assertThrows(IOException.class, () -> frames.read(1, frames.newSamples()));
      assertTrue(e.getMessage().contains("changes size at page 1"), e.getMessage());
    }
  }

  @Test
  void aColourPictureIsRefused() throws IOException {
    Path file = folder.resolve("colour.tiff");
    write(file, List.of(new BufferedImage(5, 3, BufferedImage.TYPE_INT_RGB)));
    IOException e =
        assertThrows(IOException.class, () -> TiffFrames.open(file, Orientation.AS_STORED));
    assertTrue(e.getMessage().contains("3 channels"), e.getMessage());
  }

  @Test
  void whatIsNoTiffIsSaid() throws IOException {
    Path file = Files.writeString(folder.resolve("x.tif"), "nothing of the kind");
    IOException e =
        assertThrows(IOException.class, () -> TiffFrames.open(file, Orientation.AS_STORED));
    assertTrue(e.getMessage().contains("is not a TIFF file of frames"), e.getMessage());
  }

  private static BufferedImage picture(CountSamples image) {
    BufferedImage picture = grey(image.width(), image.height());
    for (int i = 0; i < image.width() * image.height(); i++) {
      picture
          .getRaster()
          .setSample(i % image.width(), i / image.width(), 0, (int) image.valueAt(i));
    }
    return picture;
  }

  private static BufferedImage grey(int width, int height) {
    return new BufferedImage(width, height, BufferedImage.TYPE_USHORT_GRAY);
  }

  private static void write(Path file, List<BufferedImage> pages) throws IOException {
    ImageWriter writer = ImageIO.getImageWritersByFormatName("tiff").next();
    try (ImageOutputStream output = ImageIO.createImageOutputStream(file.toFile())) {
      writer.setOutput(output);
      writer.prepareWriteSequence(null);
      for (BufferedImage page : pages) {
        writer.writeToSequence(new IIOImage(page, null, null), null);
      }
      writer.endWriteSequence();
    }
    writer.dispose();
  }
}
