package railglow.link;

import java.nio.file.Path;
import org.junit.jupiter.api.io.TempDir;
import railglow.time.SystemClock;

class SerialLinkTest extends LinkFaults {
  @TempDir Path folder;

  @Override
  TestWire connect(ScriptedInstrument other) throws Exception {
    return new PtyWire(
        other,
        folder,
        device -> Ports.serial(SerialLine.usual(device, 115_200), SystemClock.INSTANCE));
  }
}
