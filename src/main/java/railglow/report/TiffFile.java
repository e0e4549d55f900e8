package railglow.report;

import java.awt.Transparency;
import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.ComponentColorModel;
import java.awt.image.DataBuffer;
import java.awt.image.DataBufferFloat;
import java.awt.image.PixelInterleavedSampleModel;
import java.awt.image.Raster;
import java.awt.image.SampleModel;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.plugins.tiff.BaselineTIFFTagSet;
import javax.imageio.plugins.tiff.TIFFDirectory;
import javax.imageio.plugins.tiff.TIFFField;
import javax.imageio.plugins.tiff.TIFFTag;
import javax.imageio.plugins.tiff.TIFFTagSet;
import javax.imageio.stream.ImageOutputStream;
import railglow.journal.WholeFile;
import railglow.thermal.Plane;

/**
 * Planes as TIFF 6.0 with one 32-bit float sample a pixel, Deflate-compressed, every bit kept.
 * ImageDescription says what the values are and their unit; XResolution and YResolution give pixels
 * per centimetre where the scale is known. Stateless.
 */
final class TiffFile {
  private TiffFile() {}

  /**
   * Writes a plane, replacing a file of that name whole.
   *
   * @param description one line, ASCII
   * @param millimetresPerPixel NaN when not known
   */
  static void write(Path file, Plane plane, String description, double millimetresPerPixel)
      throws IOException {
    ImageWriter writer = ImageIO.getImageWritersByFormatName("tiff").next();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ImageOutputStream out = ImageIO.createImageOutputStream(bytes)) {
      writer.setOutput(out);
      ImageWriteParam parameters = writer.getDefaultWriteParam();
      parameters.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      parameters.setCompressionType("Deflate");
      BufferedImage image = image(plane);
      IIOMetadata metadata =
          writer.getDefaultImageMetadata(new ImageTypeSpecifier(image), parameters);
      writer.write(
          null,
          new IIOImage(image, null, tagged(metadata, description, millimetresPerPixel)),
          parameters);
    } finally {
      writer.dispose();
    }
    WholeFile.write(file, bytes.toByteArray());
  }

  private static BufferedImage image(Plane plane) {
    SampleModel model =
        new PixelInterleavedSampleModel(
            DataBuffer.TYPE_FLOAT, plane.width(), plane.height(), 1, plane.width(), new int[] {0});
    DataBufferFloat buffer = new DataBufferFloat(plane.values(), plane.values().length);
    ComponentColorModel colours =
        new ComponentColorModel(
            ColorSpace.getInstance(ColorSpace.CS_GRAY),
            false,
            false,
            Transparency.OPAQUE,
            DataBuffer.TYPE_FLOAT);
    return new BufferedImage(
        colours, Raster.createWritableRaster(model, buffer, null), false, null);
  }

  private static IIOMetadata tagged(
      IIOMetadata metadata, String description, double millimetresPerPixel) throws IOException {
    TIFFDirectory directory = TIFFDirectory.createFromMetadata(metadata);
    TIFFTagSet tags = BaselineTIFFTagSet.getInstance();
    String ascii = description.replaceAll("[^\\x20-\\x7E]", "?");
    directory.addTIFFField(
        new TIFFField(
            tags.getTag(BaselineTIFFTagSet.TAG_IMAGE_DESCRIPTION),
            TIFFTag.TIFF_ASCII,
            1,
            new String[] {ascii}));
    directory.addTIFFField(
        new TIFFField(
            tags.getTag(BaselineTIFFTagSet.TAG_SOFTWARE),
            TIFFTag.TIFF_ASCII,
            1,
            new String[] {"Railglow"}));
    if (millimetresPerPixel > 0) {
      long[][] pixelsPerCentimetre = {{Math.round(1e5 / (millimetresPerPixel / 10)), 100_000}};
      for (int tag :
          new int[] {BaselineTIFFTagSet.TAG_X_RESOLUTION, BaselineTIFFTagSet.TAG_Y_RESOLUTION}) {
        directory.addTIFFField(
            new TIFFField(tags.getTag(tag), TIFFTag.TIFF_RATIONAL, 1, pixelsPerCentimetre));
      }
      directory.addTIFFField(
          new TIFFField(
              tags.getTag(BaselineTIFFTagSet.TAG_RESOLUTION_UNIT),
              TIFFTag.TIFF_SHORT,
              1,
              new char[] {BaselineTIFFTagSet.RESOLUTION_UNIT_CENTIMETER}));
    }
    return directory.getAsMetadata();
  }
}
