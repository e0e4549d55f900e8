package railglow.live;

import java.io.IOException;
import java.net.Inet4Address;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import railglow.observed.Frame;
import railglow.observed.OutputState;
import railglow.run.RunProgress;
import railglow.safety.Envelope;
import railglow.thermal.CountSamples;
import railglow.thermal.HeatSource;
import railglow.thermal.InventedSource;
import railglow.thermal.Look;
import railglow.thermal.Plane;
import railglow.time.SystemClock;
import railglow.units.Interval;

/** What a run tells its watchers, made up: pulses of 2 s and one source that becomes certain. */
final class PretendedRun {
  static final int WIDTH = 256;
  static final int HEIGHT = 192;

  private PretendedRun() {}

  static LiveFacts facts() {
    return facts(0.5);
  }

  static LiveFacts facts(double soundVolume) {
    Envelope limits =
        Envelope.OPEN
            .withMaxVolts(2.64, "board file, rail 3V3")
            .withMaxAmperes(0.5, "sequence")
            .withMaxCelsius(70, "bench file");
    return new LiveFacts(
        "HX-12", "3V3", "low-ohm hunt, 1 V", 0.05, limits, -273.15, 0.01, soundVolume);
  }

  /** A page of this run on any port of this machine. */
  static LivePage page(Consumer<String> stops) throws IOException {
    return page(LiveDoor.ofThisMachine(0), stops);
  }

  static LivePage page(LiveDoor door, Consumer<String> stops) throws IOException {
    return LivePage.start(facts(), door, SystemClock.INSTANCE, stops);
  }

  /** An address of this machine that others can reach; empty when it has none. */
  static Optional<Inet4Address> elsewhere() throws IOException {
    return NetworkInterface.networkInterfaces()
        .filter(PretendedRun::isUp)
        .flatMap(NetworkInterface::inetAddresses)
        .filter(address -> address instanceof Inet4Address && !address.isLoopbackAddress())
        .map(Inet4Address.class::cast)
        .findFirst();
  }

  private static boolean isUp(NetworkInterface network) {
    try {
      return network.isUp();
    } catch (SocketException e) {
      return false;
    }
  }

  static RunProgress progress(double seconds, OutputState output, HeatSource best) {
    boolean on = output == OutputState.ON;
    return new RunProgress(
        SystemClock.INSTANCE.nanos(),
        (int) (seconds / 2),
        150,
        seconds,
        303,
        output,
        on ? 1.0 : 0.0,
        on ? 0.145 : 0.0,
        24.5,
        0.3,
        best,
        "K");
  }

  static HeatSource source(double p) {
    return InventedSource.at(164, 114)
        .variance(0.01)
        .rises(0.42, new Interval(0.4, 0.44))
        .channels(0.15, 0.2)
        .timeConstant(0.5)
        .p(p)
        .source();
  }

  /** A warm spot at (164, 114). */
  static Look look(int cycles, List<HeatSource> sources) {
    Plane plane = new Plane(WIDTH, HEIGHT);
    for (int row = 0; row < HEIGHT; row++) {
      for (int column = 0; column < WIDTH; column++) {
        double square = Math.pow(column - 164, 2) + Math.pow(row - 114, 2);
        plane.set(column, row, (float) (0.2 * Math.exp(-square / 18)));
      }
    }
    return new Look(cycles, sources, source(0.2), 0.01, plane, plane, plane, tau -> null);
  }

  static Frame frame(long number, int low, int high) {
    CountSamples samples = new CountSamples(WIDTH, HEIGHT);
    for (int i = 0; i < samples.counts().length; i++) {
      samples.counts()[i] = (short) (low + (high - low) * (i % WIDTH) / (WIDTH - 1));
    }
    Frame frame = new Frame(samples);
    frame.begin(number, number * 40_000_000L);
    return frame;
  }
}
