package railglow.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Writes the reports that people look at into target/gallery; run with -Dtest=SceneGallery. */
@Tag("slow")
class SceneGallery {
  private static final Path ROOT = Path.of("target", "gallery");

  @Test
  void write() throws IOException {
    if (Files.exists(ROOT)) {
      try (Stream<Path> paths = Files.walk(ROOT)) {
        for (Path path : paths.sorted(Comparator.reverseOrder()).toList()) {
          Files.delete(path);
        }
      }
    }
    report(new Scene(ROOT.resolve("wide"), 256, 192).source(161.7, 92.3, 3.2, 0.42).parts(), true);
    report(
        new Scene(ROOT.resolve("one-pixel"), 256, 192).source(61, 122, 0.35, 0.31).parts(), true);
    report(
        new Scene(ROOT.resolve("two"), 256, 192)
            .source(250, 4, 1.6, 0.6)
            .source(236, 12, 1.6, 0.3)
            .parts(),
        true);
    report(new Scene(ROOT.resolve("upright"), 58, 104).source(22.3, 61.7, 1.6, 0.18), true);
    report(new Scene(ROOT.resolve("nothing"), 104, 58), true);
    report(new Scene(ROOT.resolve("cut"), 256, 192).source(161.7, 92.3, 3.2, 0.42).parts(), false);
    report(new Scene(ROOT.resolve("large"), 640, 512).source(400, 300, 2, 1.4).parts(), true);
  }

  private static void report(Scene scene, boolean finished) throws IOException {
    scene.write(finished);
    List<String> problems = RunReport.write(scene.folder(), scene.placement());
    RunReport.writePdf(
        scene.folder(),
        scene.placement(),
        new RunReport.Print(
            scene.folder().name().equals("two") ? Paper.LETTER : Paper.A4,
            java.util.Locale.ENGLISH,
            List.of(new OhmReading("3V3", 6.8, "45 ohm or more", Double.NaN)),
            ""));
    if (finished && !problems.isEmpty()) {
      throw new AssertionError(problems.toString());
    }
  }
}
