package railglow.link;

class MemoryLinkTest extends LinkFaults {
  @Override
  TestWire connect(ScriptedInstrument other) {
    return new MemoryWire(other, new BytePort.Traits(true, false, false));
  }
}
