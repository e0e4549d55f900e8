package railglow.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class InjectionLimitsTest {
  @ParameterizedTest
  @CsvSource({
    "3.3, NaN, 2.64",
    "3.3, 1.0, 1.0",
    "3.3, 3.0, 3.0",
    "NaN, NaN, 1.0",
    "NaN, 0.5, 0.5",
    "NaN, 5.0, 1.0",
    "1.1, NaN, 0.88"
  })
  void theMostThatMayBeInjected(double nominal, double highest, double allowed) {
    Bound bound = InjectionLimits.ofRail("X", nominal, highest).maxVolts();

    assertEquals(allowed, bound.value(), 1e-12);
    assertTrue(bound.origin().contains("rail X"), bound.origin());
  }

  @Test
  void aBoardFileThatAllowsTheNominalContradictsItselfAndBothAreNamed() {
    IllegalArgumentException e =
        assertThrows(IllegalArgumentException.class, () -> InjectionLimits.ofRail("3V3", 3.3, 3.3));

    assertEquals(
        "rail 3V3 allows an injection of 3.3 V, but its nominal voltage is 3.3 V: the injection"
            + " must stay below the nominal",
        e.getMessage());
  }
}
