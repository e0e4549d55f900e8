package railglow.units;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class ProbabilityTest {
  @Test
  void aLineWithLittleRoomHasAsManyDigitsAsItNeeds() {
    assertEquals("below 1e-6", Probability.brief(1e-9));
    assertEquals("2e-04", Probability.brief(2e-4));
    assertEquals("0.050", Probability.brief(0.05));
  }

  @Test
  void aSentenceSaysWhatIsTooSmallToMatterInWords() {
    assertEquals("below one in a million", Probability.inWords(9e-7));
    assertEquals("1.3e-04", Probability.inWords(1.3e-4));
    assertEquals("0.0312", Probability.inWords(0.0312));
  }

  @Test
  void printHasTwoDigitsAndRealSuperscripts() {
    assertEquals("3.0 \u00d7 10\u207b\u00b9\u00b2", Probability.printed(3e-12));
    assertEquals("1.0 \u00d7 10\u207b\u2074", Probability.printed(9.99e-5));
    assertEquals("0.031", Probability.printed(0.031));
    assertEquals("0.20", Probability.printed(0.2));
    assertEquals("below 10\u207b\u00b3\u2070\u2070", Probability.printed(0));
    assertEquals("unknown", Probability.printed(Double.NaN));
  }
}
