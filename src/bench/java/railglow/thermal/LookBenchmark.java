package railglow.thermal;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Kernels of the detection: a look, one filter, one frame into a quarter. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(value = 2, jvmArgs = {"-Xmx256m", "-XX:+UseSerialGC"})
public class LookBenchmark {
  @Param({"256x192", "640x512"})
  public String size;

  private Detector quiet;
  private Detector warm;
  private MatchedFilter filter;
  private QuarterAccumulator quarters;
  private CountSamples frame;
  private float[] plane;
  private float[] filtered;
  private int frames;

  @Setup
  public void prepare() {
    int width = Integer.parseInt(size.split("x")[0]);
    int height = Integer.parseInt(size.split("x")[1]);
    quiet = detector(width, height, 0);
    warm = detector(width, height, 0.05);
    filter = new MatchedFilter(width, height, 6);
    quarters = new QuarterAccumulator(width, height, 0.01);
    frame = new CountSamples(width, height);
    plane = new WhiteCycles(width, height, 1, 3).next().q1().values();
    filtered = new float[plane.length];
  }

  private static Detector detector(int width, int height, double kelvin) {
    WhiteCycles cycles = new WhiteCycles(width, height, 0.014, 1);
    if (kelvin > 0) {
      cycles.with(new WhiteCycles.Source(100, 80, 2, kelvin, 0), 0, 2);
    }
    Detector detector =
        new Detector(DetectionSettings.usual(2, 0, 0.05, 4, 30), width, height);
    for (int k = 0; k < 12; k++) {
      detector.addCycle(cycles.next());
    }
    return detector;
  }

  @Benchmark
  public Look lookAtNothing() {
    return quiet.look();
  }

  @Benchmark
  public Look lookWithASource() {
    return warm.look();
  }

  @Benchmark
  public float[] filterOfSixPixels() {
    filter.apply(plane, filtered);
    return filtered;
  }

  @Benchmark
  public int frameIntoAQuarter() {
    if (++frames % 30 == 0) {
      quarters.reset();
    }
    quarters.add(1, frame);
    return frames;
  }
}
