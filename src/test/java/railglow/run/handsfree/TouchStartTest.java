package railglow.run.handsfree;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import railglow.run.handsfree.TouchStart.Event;

class TouchStartTest {
  private static final long TENTH = 100_000_000L;

  @Test
  void aTouchIsFeltThenSteadyOnce() {
    assertEquals(
        List.of(Event.FELT, Event.STEADY),
        events(new TouchStart(true), "air settling settling steady steady steady"));
  }

  @Test
  void aProbeStillHeldFromTheLastTouchBeginsNothingUntilItWasLifted() {
    assertEquals(
        List.of(Event.LIFTED, Event.FELT, Event.STEADY),
        events(new TouchStart(false), "settling steady steady lifted air settling steady"));
  }

  @Test
  void aContactThatNeverSettlesIsToldAfterThreeSecondsAndAgainAfterFive() {
    List<Event> events = events(new TouchStart(true), "bouncing ".repeat(95));
    assertEquals(List.of(Event.FELT, Event.NOT_SETTLING, Event.NOT_SETTLING), events);
  }

  @Test
  void aBounceIsNoLift() {
    assertEquals(
        List.of(Event.FELT, Event.STEADY, Event.LIFTED),
        events(new TouchStart(true), "settling bouncing settling steady bouncing lifted air"));
  }

  private static List<Event> events(TouchStart start, String states) {
    List<Event> events = new ArrayList<>();
    long nanos = 0;
    for (String word : states.strip().split(" ")) {
      nanos += TENTH;
      ContactState state =
          switch (word) {
            case "air" -> ContactState.IN_AIR;
            case "settling" -> ContactState.CONTACT_SETTLING;
            case "steady" -> ContactState.STEADY;
            case "bouncing" -> ContactState.BOUNCING;
            default -> ContactState.LIFTED;
          };
      start.take(new Contact(state, nanos, 6.8, 6.7, 6.9, TENTH)).ifPresent(events::add);
    }
    return events;
  }
}
