package railglow.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;
import railglow.units.Unit;

class ConfigFileTest {
  private static final Path PATH = Path.of("bench.yaml");

  private enum Colour {
    LIGHT_GREEN,
    RED
  }

  private static ConfigFile file(String text) throws ConfigException {
    return ConfigFile.parse(PATH, text);
  }

  private static List<String> problems(ConfigFile file) {
    return assertThrows(ConfigException.class, file::finish).problems().stream()
        .map(ConfigProblem::toString)
        .toList();
  }

  @Test
  void goodValuesComeInTheUnprefixedUnit() throws ConfigException {
    ConfigFile file = file("level: 1200 mV\ncolour: light-green\nsure: yes\nn: 3\nlist: [a, b]\n");
    assertEquals(1.2, file.root().quantity("level", Unit.VOLT, 0, 5), 1e-12);
    assertEquals(Colour.LIGHT_GREEN, file.root().choice("colour", Colour.class));
    assertTrue(file.root().flag("sure", false));
    assertEquals(3, file.root().integer("n", 1, 5));
    assertEquals(List.of("a", "b"), file.root().texts("list"));
    file.finish();
  }

  @Test
  void aNumberOutsideItsRangeNamesFileLineValueAndRange() throws ConfigException {
    ConfigFile file = file("name: x\nlevel: 7 V\n");
    file.root().text("name");
    file.root().quantity("level", Unit.VOLT, 0, 5);
    assertEquals(List.of("bench.yaml:2: 'level' is 7 V; allowed is 0 V to 5 V"), problems(file));
  }

  @Test
  void everyProblemIsListedInTheOrderOfTheLines() throws ConfigException {
    ConfigFile file = file("level: 7\ncurent: 1 A\ninner:\n  n: 9\n  odd: 1\n");
    file.root().optionalQuantity("current", Unit.AMPERE, 0, 1);
    file.root().quantity("level", Unit.VOLT, 0, 5);
    file.root().section("inner").integer("n", 1, 5);
    assertEquals(
        List.of(
            "bench.yaml:1: 'level' can't be used: '7' has no unit; write it like '1.5 V', '20 mV'",
            "bench.yaml:2: 'curent' is not a key known here; did you mean 'current'?",
            "bench.yaml:4: 'inner.n' is 9; allowed is 1 to 5",
            "bench.yaml:5: 'inner.odd' is not a key known here; known are n"),
        problems(file));
  }

  @Test
  void aMissingSectionIsOneProblemNotMany() throws ConfigException {
    ConfigFile file = file("a: b\n");
    file.root().text("a");
    file.root().section("inner").integer("n", 1, 5);
    assertEquals(List.of("bench.yaml:1: 'inner' is missing; give a section"), problems(file));
  }

  @Test
  void duplicateKeysSecondDocumentsAndAliasBombsAreRefused() throws ConfigException {
    ConfigFile twice = file("a: 1\na: 2\n");
    twice.root().text("a");
    assertEquals("bench.yaml:2: 'a' is given twice", problems(twice).get(0));
    assertThrows(ConfigException.class, () -> file("a: 1\n---\nb: 2\n"));
    assertThrows(ConfigException.class, () -> file("- a\n- b\n"));
    assertThrows(ConfigException.class, () -> file(""));
  }

  @Test
  void aMissingFileIsSaidInOneSentence() {
    ConfigException e =
        assertThrows(ConfigException.class, () -> ConfigFile.read(Path.of("no/such.yaml")));
    assertEquals("no/such.yaml: does not exist", e.getMessage());
  }

  @Property(tries = 2000, seed = "1")
  void anyTextGivesAFileOrAConfigException(@ForAll @StringLength(max = 60) String text) {
    try {
      ConfigFile file = file(text);
      file.root().keys().forEach(key -> file.root().optionalQuantity(key, Unit.VOLT, 0, 1));
      file.finish();
    } catch (ConfigException e) {
      assertTrue(!e.problems().isEmpty());
    }
  }
}
