package railglow.link;

/** In memory, but like a serial line: reopening does not stop what is under way. */
class MemoryLineLinkTest extends LinkFaults {
  @Override
  TestWire connect(ScriptedInstrument other) {
    return new MemoryWire(other, new BytePort.Traits(false, false, false));
  }
}
