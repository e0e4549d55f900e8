package railglow.link;

import java.io.IOException;

class TcpLinkTest extends LinkFaults {
  @Override
  TestWire connect(ScriptedInstrument other) throws IOException {
    return new TcpWire(other);
  }
}
