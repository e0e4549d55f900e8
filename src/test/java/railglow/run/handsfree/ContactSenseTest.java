package railglow.run.handsfree;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;

/** Invented readings, every 80 ms unless said otherwise. */
class ContactSenseTest {
  private static final double LEAD = 0.12;
  private static final ContactBounds BOUNDS = ContactBounds.usual(0.005, 0.002, LEAD);
  private static final double LEVEL = 0.05;
  private static final double LIMIT = 0.02;
  private final ContactSense sense = new ContactSense(BOUNDS);
  private long nanos = 5_000_000_000L;

  @Test
  void aProbeInTheAirShowsTheLevelAndNoCurrent() {
    for (int i = 0; i < 50; i++) {
      assertEquals(ContactState.IN_AIR, next(LEVEL, 0.0003).state());
    }
  }

  @Test
  void bothVoltsNearNoughtMeansWhatTheCurrentSays() {
    assertEquals(ContactState.IN_AIR, next(0.0005, 0.0002).state());
    Contact contact = next(0.0028, LIMIT);
    assertEquals(ContactState.CONTACT_SETTLING, contact.state());
    assertEquals(0.02, contact.ohms(), 1e-9);
  }

  @Test
  void aHeldProbeBecomesSteadyAfterItsStretchAndNotBefore() {
    touch(6.8);
    int readings = 1;
    while (touch(6.8).state() != ContactState.STEADY) {
      readings++;
      assertTrue(readings < 20, "never steady");
    }
    double seconds = readings * 0.08;
    assertTrue(seconds >= BOUNDS.steadySeconds() - 0.081, "steady after " + seconds + " s");
    assertEquals(6.8, touch(6.8).ohms(), 1e-6);
  }

  @Test
  void oneLateReadingAloneIsNoSteadyContact() {
    touch(6.8);
    nanos += 2_000_000_000L;
    assertEquals(ContactState.CONTACT_SETTLING, touch(6.8).state());
  }

  @Test
  void theLeadsAreTakenOffAndTheRailIsShownAloneWhereSensedAtTheBoard() {
    ContactSense fourWire = new ContactSense(ContactBounds.usual(0.005, 0.002, 0));
    assertEquals(2.5, fourWire.take(1, 0.025, 0.01).ohms(), 1e-9);
    assertEquals(2.5 - LEAD, sense.take(1, 0.025, 0.01).ohms(), 1e-9);
  }

  @Test
  void aLiftIsSaidOnceWhenNothingFlowedForItsTimeThenItIsAir() {
    steady(6.8);
    List<ContactState> states = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      states.add(next(LEVEL, 0).state());
    }
    assertEquals(ContactState.BOUNCING, states.get(0));
    assertEquals(1, states.stream().filter(s -> s == ContactState.LIFTED).count());
    assertEquals(ContactState.IN_AIR, states.get(7));
  }

  @Test
  void aContactThatComesAndGoesIsBouncingAndSaysThatItWasLost() {
    Contact last = touch(6.8);
    for (int i = 0; i < 12; i++) {
      last = i % 2 == 0 ? next(LEVEL, 0) : touch(6.8);
    }
    assertEquals(ContactState.BOUNCING, last.state());
    assertEquals(Double.POSITIVE_INFINITY, last.highestOhms());
    assertEquals(6.8, last.lowestOhms(), 1e-6);
  }

  @Test
  void aSwingingResistanceNeverSettlesAndItsSwingIsTold() {
    Contact last = null;
    for (int i = 0; i < 60; i++) {
      last = touch(i % 3 == 0 ? 2 : 6);
      assertFalse(last.state() == ContactState.STEADY);
    }
    assertEquals(ContactState.BOUNCING, last.state());
    assertEquals(2, last.lowestOhms(), 1e-6);
    assertEquals(6, last.highestOhms(), 1e-6);
    assertTrue(last.touchedSeconds() > 4);
  }

  @Test
  void aBouncingProbeThatIsThenHeldBecomesSteady() {
    for (int i = 0; i < 10; i++) {
      next(LEVEL, i % 2 == 0 ? 0.007 : 0);
    }
    Contact last = touch(6.8);
    while (last.state() != ContactState.STEADY) {
      last = touch(6.8);
    }
    assertEquals(6.8, last.lowestOhms(), 1e-6);
    assertEquals(6.8, last.highestOhms(), 1e-6, "of the stretch held, not of the bounce before it");
  }

  @Test
  void theReachIsSaidInOhms() {
    assertEquals(0.05 / 0.003 - LEAD, BOUNDS.reachOhms(LEVEL), 1e-9);
  }

  @Property(tries = 200, seed = "1")
  void anyHeldRailWithinReachBecomesSteadyUnderTheMetersNoise(
      @ForAll @DoubleRange(min = 0.01, max = 9) double ohms,
      @ForAll @IntRange(max = 999) int seed) {
    Random random = new Random(seed);
    ContactSense noisy = new ContactSense(BOUNDS);
    ContactState last = ContactState.IN_AIR;
    for (int i = 0; i < 40; i++) {
      double amperes = Math.min(LIMIT, LEVEL / (ohms + LEAD));
      double volts = amperes * (ohms + LEAD);
      last =
          noisy
              .take(
                  i * 90_000_000L,
                  volts + 4e-4 * random.nextGaussian(),
                  amperes + 1.5e-4 * random.nextGaussian())
              .state();
    }
    assertEquals(ContactState.STEADY, last);
  }

  @Property(tries = 300, seed = "1")
  void whateverIsReadAnOpenEndIsNeverSteadyAndLongAirIsAir(
      @ForAll List<@DoubleRange(min = -1, max = 1) @Scale(4) Double> volts,
      @ForAll List<@DoubleRange(min = -0.05, max = 0.05) @Scale(4) Double> amperes) {
    ContactSense any = new ContactSense(BOUNDS);
    long at = 0;
    for (int i = 0; i < Math.min(volts.size(), amperes.size()); i++) {
      at += 70_000_000L;
      Contact contact = any.take(at, volts.get(i), amperes.get(i));
      boolean open = Math.abs(amperes.get(i)) <= BOUNDS.openAmperes();
      assertFalse(open && contact.state() == ContactState.STEADY);
      assertFalse(!open && !contact.state().isTouching());
    }
    for (int i = 0; i < 20; i++) {
      at += 70_000_000L;
      any.take(at, LEVEL, 0);
    }
    assertEquals(ContactState.IN_AIR, any.state());
  }

  private void steady(double ohms) {
    for (int i = 0; i < 15; i++) {
      touch(ohms);
    }
    assertEquals(ContactState.STEADY, sense.state());
  }

  private Contact touch(double ohms) {
    double amperes = Math.min(LIMIT, LEVEL / (ohms + LEAD));
    return next(amperes * (ohms + LEAD), amperes);
  }

  private Contact next(double volts, double amperes) {
    nanos += 80_000_000L;
    return sense.take(nanos, volts, amperes);
  }
}
