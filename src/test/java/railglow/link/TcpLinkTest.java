package railglow.link;

import java.io.IOException;

class TcpLinkTest extends LinkConformance {
  @Override
  TestWire connect(ScriptedInstrument other) throws IOException {
    return new TcpWire(other);
  }
}
