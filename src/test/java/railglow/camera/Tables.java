package railglow.camera;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/** A table on its way into {@code target/camera/}, from where docs/camera.md takes it. */
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
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
