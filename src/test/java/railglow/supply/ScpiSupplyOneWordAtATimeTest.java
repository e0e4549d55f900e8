package railglow.supply;

/** The driver against the simulated supply, one command or query in each message. */
class ScpiSupplyOneWordAtATimeTest extends ScpiSupplyTest {
  @Override
  SupplyDescriptor descriptor() {
    return Descriptors.withoutCompound(Descriptors.simulated());
  }
}
