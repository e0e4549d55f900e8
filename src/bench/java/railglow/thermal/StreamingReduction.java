package railglow.thermal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import railglow.camera.CountScale;
import railglow.camera.Endian;
import railglow.camera.RawFileFrames;
import railglow.camera.RawLayout;
import railglow.camera.SampleType;

/**
 * The streaming reduction with the program's own classes, for comparison with the same work in
 * other languages: raw frames from a file to quarter means, channels, and moments over cycles.
 *
 * <p>Arguments: house, house-2 (both halves of the cycles at once, joined), plain (the loop one
 * writes first) or read (frames into an image, nothing else), FILE WIDTH HEIGHT FRAMES_PER_QUARTER
 * PASSES RESULT; read has none.
 */
public final class StreamingReduction {
  private final Path file;
  private final RawLayout layout;
  private final int framesPerQuarter;
  private final int cycles;
  private final CountSamples first;
  private final List<Part> parts = new ArrayList<>();

  private StreamingReduction(Path file, int width, int height, int framesPerQuarter)
      throws IOException {
    this.file = file;
    this.layout = RawLayout.packed(width, height, SampleType.U16, Endian.LITTLE);
    this.framesPerQuarter = framesPerQuarter;
    this.first = new CountSamples(width, height);
    try (RawFileFrames frames = frames()) {
      cycles = frames.count() / (4 * framesPerQuarter);
      frames.read(0, first);
    }
  }

  public static void main(String[] args) throws Exception {
    StreamingReduction work =
        new StreamingReduction(
            Path.of(args[1]),
            Integer.parseInt(args[2]),
            Integer.parseInt(args[3]),
            Integer.parseInt(args[4]));
    int passes = Integer.parseInt(args[5]);
    if (args[0].equals("read")) {
      for (int pass = 0; pass < passes; pass++) {
        long start = System.nanoTime();
        work.readOnly();
        say(start);
      }
      return;
    }
    int threads = args[0].equals("house-2") ? 2 : 1;
    for (int k = 0; k < threads; k++) {
      work.parts.add(args[0].equals("plain") ? work.new Plain() : work.new House());
    }
    ExecutorService workers = Executors.newFixedThreadPool(threads);
    float[][] planes = null;
    for (int pass = 0; pass < passes; pass++) {
      long start = System.nanoTime();
      planes = work.pass(workers);
      say(start);
    }
    workers.shutdown();
    ByteBuffer out =
        ByteBuffer.allocate(16 * planes[0].length).order(ByteOrder.LITTLE_ENDIAN);
    for (float[] plane : planes) {
      for (float value : plane) {
        out.putFloat(value);
      }
    }
    Files.write(Path.of(args[6]), out.array());
  }

  private static void say(long startNanos) {
    System.out.printf(Locale.ROOT, "%.3f%n", (System.nanoTime() - startNanos) / 1e6);
  }

  private void readOnly() throws IOException {
    CountSamples frame = new CountSamples(layout.width(), layout.height());
    try (RawFileFrames frames = frames()) {
      for (int k = 0; k < frames.count(); k++) {
        frames.read(k, frame);
      }
    }
  }

  private float[][] pass(ExecutorService workers) throws InterruptedException, ExecutionException {
    List<Future<ChannelMoments>> results = new ArrayList<>();
    for (int k = 0; k < parts.size(); k++) {
      Part part = parts.get(k);
      int from = cycles * k / parts.size();
      int to = cycles * (k + 1) / parts.size();
      results.add(workers.submit(() -> part.reduce(from, to)));
    }
    ChannelMoments all = results.get(0).get();
    float[][] planes = {all.meanI(), all.meanC(), all.squaresI(), all.squaresC()};
    for (int k = 1; k < results.size(); k++) {
      ChannelMoments more = results.get(k).get();
      join(planes[0], planes[2], more.meanI(), more.squaresI(), all.cycles(), more.cycles());
      join(planes[1], planes[3], more.meanC(), more.squaresC(), all.cycles(), more.cycles());
    }
    return planes;
  }

  private RawFileFrames frames() throws IOException {
    return RawFileFrames.openRaw(file, layout, CountScale.unknown());
  }

  /** What one thread works with: made once, as a run does, and as the other programs do. */
  private abstract class Part {
    final CountSamples frame = new CountSamples(layout.width(), layout.height());
    final int pixels = layout.width() * layout.height();
    private final float[] inPhase = new float[pixels];
    private final float[] quadrature = new float[pixels];

    final ChannelMoments reduce(int fromCycle, int toCycle) throws IOException {
      ChannelMoments moments = new ChannelMoments(pixels);
      try (RawFileFrames frames = frames()) {
        for (int cycle = fromCycle; cycle < toCycle; cycle++) {
          for (int k = 0; k < 4 * framesPerQuarter; k++) {
            frames.read(cycle * 4 * framesPerQuarter + k, frame);
            add(k / framesPerQuarter);
          }
          channels(means(cycle));
          moments.add(inPhase, quadrature);
        }
      }
      return moments;
    }

    private void channels(float[][] q) {
      float[] q1 = q[0];
      float[] q2 = q[1];
      float[] q3 = q[2];
      float[] q4 = q[3];
      for (int i = 0; i < pixels; i++) {
        inPhase[i] = (q2[i] + q3[i] - q1[i] - q4[i]) * 0.5f;
        quadrature[i] = (q3[i] + q4[i] - q1[i] - q2[i]) * 0.5f;
      }
    }

    /** Takes the frame into a quarter, from 0. */
    abstract void add(int quarter);

    /** Of the quarters of a cycle that ends. */
    abstract float[][] means(int cycle);
  }

  /** With the program's classes. */
  private final class House extends Part {
    private final QuarterAccumulator quarters =
        new QuarterAccumulator(layout.width(), layout.height(), 1);

    House() {
      // the first image ever added is the offset of the run: the same for every part
      quarters.add(1, first);
      quarters.reset();
    }

    @Override
    void add(int quarter) {
      quarters.add(1 + quarter, frame);
    }

    @Override
    float[][] means(int cycle) {
      QuarterMeans q = quarters.finish(cycle);
      return new float[][] {q.q1().values(), q.q2().values(), q.q3().values(), q.q4().values()};
    }
  }

  /** The loops that one writes first. */
  private final class Plain extends Part {
    private final int[][] sums = new int[4][pixels];
    private final float[][] q = new float[4][pixels];

    @Override
    void add(int quarter) {
      short[] counts = frame.counts();
      int[] sum = sums[quarter];
      for (int i = 0; i < pixels; i++) {
        sum[i] += counts[i] & 0xFFFF;
      }
    }

    @Override
    float[][] means(int cycle) {
      short[] offset = first.counts();
      for (int k = 0; k < 4; k++) {
        for (int i = 0; i < pixels; i++) {
          int above = sums[k][i] - framesPerQuarter * (offset[i] & 0xFFFF);
          q[k][i] = (float) (above / (double) framesPerQuarter);
          sums[k][i] = 0;
        }
      }
      return q;
    }
  }

  /** Chan, Golub, LeVeque, "Updating formulae", COMPSTAT 1982, eq. 2.1. */
  private static void join(
      float[] mean, float[] squares, float[] other, float[] otherSquares, int n, int m) {
    float share = m / (float) (n + m);
    float both = n * share;
    for (int i = 0; i < mean.length; i++) {
      float d = other[i] - mean[i];
      squares[i] += otherSquares[i] + d * d * both;
      mean[i] += d * share;
    }
  }
}
