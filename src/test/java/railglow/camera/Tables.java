package railglow.camera;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/**
 * A table on its way into {@code target/camera/}, and into the document that the property {@code
 * camera.tables} names, if it does: between the lines {@code <!-- begin NAME -->} and {@code <!--
 * end NAME -->}.
 */
public final class Tables {
  private final StringBuilder text = new StringBuilder();
  private final String name;

  public Tables(String name, String... heads) {
    this.name = name;
    text.append("| ").append(String.join(" | ", heads)).append(" |\n");
    text.append("|").append("---|".repeat(heads.length)).append("\n");
  }

  /** One line; the format's arguments are the cells. */
  public void row(String format, Object... cells) {
    text.append("| ").append(String.format(Locale.ROOT, format, cells)).append(" |\n");
  }

  public void write() {
    try {
      Path folder = Files.createDirectories(Path.of("target", "camera"));
      Files.writeString(folder.resolve(name + ".md"), text);
      String document = System.getProperty("camera.tables", "");
      if (!document.isEmpty()) {
        putInto(Path.of(document));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void putInto(Path document) throws IOException {
    String before = Files.readString(document);
    String begin = "<!-- begin " + name + " -->\n";
    int from = before.indexOf(begin);
    int to = before.indexOf("<!-- end " + name + " -->");
    if (from < 0 || to < from) {
      throw new IOException(document + " has no place for the table " + name);
    }
    String after = before.substring(0, from + begin.length()) + text + before.substring(to);
    Files.writeString(document, after);
  }
}
