package railglow.report.draw;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Random;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The platform's own reader is the judge. */
class PngTest {
  @ParameterizedTest
  @CsvSource({"1,1", "1,40", "40,1", "333,217"})
  void everyPixelOfNoiseThatNothingPacksIsReadBackByAnotherReader(int width, int height)
      throws IOException {
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Random random = new Random(20261126);
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        image.setRGB(x, y, random.nextInt());
      }
    }
    assertReadBack(image);
  }

  @Test
  void aPictureOfAnotherKindIsReadBackToo() throws IOException {
    BufferedImage image = new BufferedImage(20, 10, BufferedImage.TYPE_INT_ARGB);
    image.setRGB(3, 4, 0x80FF2010);
    assertReadBack(image);
  }

  @Test
  void blocksOfEqualPixelsTakeLittleRoom() {
    BufferedImage image = new BufferedImage(600, 600, BufferedImage.TYPE_INT_RGB);
    Random random = new Random(7);
    for (int y = 0; y < 600; y += 6) {
      for (int x = 0; x < 600; x += 6) {
        int colour = random.nextInt();
        for (int i = 0; i < 36; i++) {
          image.setRGB(x + i % 6, y + i / 6, colour);
        }
      }
    }
    int blocks = 100 * 100 * 3;
    assertEquals(blocks, Png.of(image).length, 2 * blocks);
  }

  private static void assertReadBack(BufferedImage image) throws IOException {
    BufferedImage read = ImageIO.read(new ByteArrayInputStream(Png.of(image)));
    assertEquals(image.getWidth(), read.getWidth());
    assertEquals(image.getHeight(), read.getHeight());
    for (int y = 0; y < image.getHeight(); y++) {
      for (int x = 0; x < image.getWidth(); x++) {
        assertEquals(image.getRGB(x, y), read.getRGB(x, y), "pixel " + x + ", " + y);
      }
    }
  }
}
