package railglow.run;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import railglow.observed.OutputState;
import railglow.safety.Stop;
import railglow.safety.StopCause;

class RunEndingTest {
  @ParameterizedTest
  @CsvSource({
    "PROGRAMME_FINISHED, PROVEN_OFF, 0",
    "SURE_ENOUGH, PROVEN_OFF, 0",
    "OPERATOR_REQUEST, PROVEN_OFF, 130",
    "CURRENT_ABOVE_LIMIT, PROVEN_OFF, 4",
    "REGISTRATION_LOST, PROVEN_OFF, 4",
    "SURE_ENOUGH, UNKNOWN, 5",
    "OPERATOR_REQUEST, UNKNOWN, 5",
    "LINK_LOST, ON, 5"
  })
  void anOutputThatIsNotProvenOffOutweighsEveryCause(
      StopCause cause, OutputState output, int exitCode) {
    assertEquals(exitCode, new RunEnding(new Stop(cause, 0, "test"), output, "").exitCode());
  }
}
