package railglow.architecture;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The rooms of the house and the only arrows between them. */
class RoomsTest {
  static final Map<String, List<String>> MAY_USE = mayUse();

  private static Map<String, List<String>> mayUse() {
    Map<String, List<String>> rooms = new TreeMap<>();
    rooms.put("units", List.of());
    rooms.put("time", List.of());
    rooms.put("scpi", List.of("units"));
    rooms.put("link", List.of("time"));
    rooms.put("thermal", List.of("units"));
    rooms.put("pulse", List.of("units"));
    rooms.put("observed", List.of("units", "thermal"));
    rooms.put("board", List.of("units", "thermal"));
    rooms.put("safety", List.of("units", "time", "pulse"));
    rooms.put("supply", List.of("link", "scpi", "safety", "observed", "units", "time"));
    rooms.put("camera", List.of("link", "observed", "thermal", "units", "time"));
    rooms.put(
        "journal",
        List.of(
            "units", "time", "scpi", "link", "thermal", "pulse", "observed", "board", "safety"));
    rooms.put(
        "run",
        List.of(
            "units",
            "time",
            "scpi",
            "link",
            "thermal",
            "pulse",
            "observed",
            "board",
            "safety",
            "supply",
            "camera",
            "journal"));
    rooms.put(
        "report", List.of("journal", "observed", "board", "thermal", "units", "pulse", "safety"));
    rooms.put("casebook", List.of("journal", "board", "units"));
    List<String> live = new ArrayList<>(rooms.get("run"));
    live.addAll(List.of("run", "report"));
    rooms.put("live", live);
    rooms.put("sim", List.of("scpi", "link", "thermal", "units", "time"));
    List<String> top = new ArrayList<>(rooms.keySet());
    rooms.put("config", top.stream().filter(room -> !room.equals("sim")).toList());
    top.add("config");
    rooms.put("cli", top);
    return rooms;
  }

  private static final JavaClasses PRODUCTION =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("railglow");

  static List<String> rooms() {
    return List.copyOf(MAY_USE.keySet());
  }

  @ParameterizedTest
  @MethodSource("rooms")
  void aRoomUsesOnlyTheRoomsItMay(String room) {
    List<String> allowed = new ArrayList<>(MAY_USE.get(room));
    allowed.add(room);
    String[] packages =
        allowed.stream().map(name -> "railglow." + name + "..").toArray(String[]::new);
    DescribedPredicate<JavaClass> outside =
        DescribedPredicate.describe(
            "not of this program", c -> !c.getName().startsWith("railglow."));
    ArchRule rule =
        classes()
            .that()
            .resideInAPackage("railglow." + room + "..")
            .should()
            .onlyDependOnClassesThat(resideInAnyPackage(packages).or(outside))
            .as(room + " may use only " + MAY_USE.get(room));
    rule.check(PRODUCTION);
  }

  @Test
  void everyClassIsInARoomOfTheTable() {
    for (JavaClass javaClass : PRODUCTION) {
      String[] parts = javaClass.getPackageName().split("\\.");
      assertTrue(
          parts.length >= 2 && MAY_USE.containsKey(parts[1]),
          javaClass.getName() + " is in no room of the table");
    }
  }
}
