package railglow.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Rules that would otherwise be wishes. */
class HouseRulesTest {
  private static final int MAX_LINES = 320;
  private static final JavaClasses PRODUCTION =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("railglow");

  @Test
  void onlyTheTimeRoomReadsAClockOrSleeps() {
    noClasses()
        .that()
        .resideOutsideOfPackage("railglow.time..")
        .should()
        .callMethod(System.class, "nanoTime")
        .orShould()
        .callMethod(System.class, "currentTimeMillis")
        .orShould()
        .callMethod(Thread.class, "sleep", long.class)
        .orShould()
        .callMethod(java.time.Instant.class, "now")
        .orShould()
        .callMethod(java.time.LocalDateTime.class, "now")
        .check(PRODUCTION);
  }

  @Test
  void onlyTheCommandLineWritesToTheTerminalOrEndsTheProcess() {
    noClasses()
        .that()
        .resideOutsideOfPackage("railglow.cli..")
        .should()
        .accessField(System.class, "out")
        .orShould()
        .accessField(System.class, "err")
        .orShould()
        .callMethod(System.class, "exit", int.class)
        .orShould()
        .callMethod(Throwable.class, "printStackTrace")
        .check(PRODUCTION);
  }

  @Test
  void randomNumbersAlwaysHaveASeed() {
    noClasses()
        .should()
        .callConstructor(java.util.Random.class)
        .orShould()
        .callMethod(Math.class, "random")
        .orShould()
        .callConstructor(java.util.SplittableRandom.class)
        .check(PRODUCTION);
  }

  @Test
  void classesAreNamedAfterWhatTheyOwn() {
    noClasses()
        .should()
        .haveSimpleNameEndingWith("Manager")
        .orShould()
        .haveSimpleNameEndingWith("Helper")
        .orShould()
        .haveSimpleNameEndingWith("Util")
        .orShould()
        .haveSimpleNameEndingWith("Utils")
        .orShould()
        .haveSimpleNameEndingWith("Engine")
        .check(PRODUCTION);
  }

  @Test
  void noFileHoldsMoreThanOneIdeaCanFill() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("src"))) {
      List<String> tooLong =
          files
              .filter(file -> file.toString().endsWith(".java"))
              .filter(file -> lines(file) > MAX_LINES)
              .map(file -> file + " has " + lines(file) + " lines")
              .toList();
      assertEquals(List.of(), tooLong);
    }
  }

  @Test
  void everyPropertyHasASeedSoThatABuildCanBeRepeated() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("src/test"))) {
      List<Path> without =
          files
              .filter(file -> file.toString().endsWith(".java"))
              .filter(HouseRulesTest::hasPropertyWithoutSeed)
              .toList();
      assertEquals(List.of(), without);
    }
  }

  private static boolean hasPropertyWithoutSeed(Path file) {
    try (Stream<String> lines = Files.lines(file)) {
      return lines.anyMatch(
          line -> line.strip().startsWith("@Prop" + "erty") && !line.contains("seed"));
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static long lines(Path file) {
    try (Stream<String> lines = Files.lines(file)) {
      return lines.count();
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }
}
