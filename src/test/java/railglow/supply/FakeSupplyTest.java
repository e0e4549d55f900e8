package railglow.supply;

import railglow.supply.FakeSupply.Fate;

/** The fake the keeper is tested with keeps the contract too. */
class FakeSupplyTest extends SupplyConformance {
  private final FakeSupply supply = new FakeSupply(Descriptors.simulated(), clock, 2);

  @Override
  Supply supply() {
    return supply;
  }

  @Override
  void silence() {
    supply.interference = exchange -> Fate.LOST_AFTER;
  }

  @Override
  void speakAgain() {
    supply.interference = exchange -> Fate.NORMAL;
  }

  @Override
  boolean isTrulyOn() {
    return supply.isTrulyOn();
  }
}
