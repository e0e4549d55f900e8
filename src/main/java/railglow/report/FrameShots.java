package railglow.report;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import railglow.journal.CameraFacts;
import railglow.journal.Entry;
import railglow.journal.FrameStoreReader;
import railglow.journal.Journal;
import railglow.journal.RunFolder;
import railglow.observed.Frame;
import railglow.thermal.Plane;

/**
 * Single frames out of a run's record, by time or number. The time of a frame is its mid-exposure
 * as the journal has it, or its arrival less the camera's latency where it has none. Not
 * thread-safe.
 */
final class FrameShots implements AutoCloseable {
  private final FrameStoreReader reader;
  private final List<FrameStoreReader.Stamp> stamps;
  private final Map<Long, Long> midNanos = new HashMap<>();
  private final Journal journal;

  /**
   * One frame.
   *
   * @param seconds after the start
   * @param plane in degrees Celsius, kelvin or counts, as the camera has a scale
   */
  record Shot(long number, double seconds, Plane plane) {}

  private FrameShots(
      FrameStoreReader reader, List<FrameStoreReader.Stamp> stamps, Journal journal) {
    this.reader = reader;
    this.stamps = stamps;
    this.journal = journal;
    journal.of(Entry.Followed.class).forEach(e -> midNanos.put(e.frame(), e.nanos()));
  }

  /**
   * Opens a run's frames.
   *
   * @throws railglow.journal.JournalException when there are none or they can't be read
   */
  static FrameShots open(RunFolder folder, Journal journal) throws IOException {
    FrameStoreReader reader = FrameStoreReader.open(folder.frames());
    try {
      return new FrameShots(reader, reader.stamps(), journal);
    } catch (IOException | RuntimeException e) {
      reader.close();
      throw e;
    }
  }

  int count() {
    return stamps.size();
  }

  long number(int index) {
    return stamps.get(index).number();
  }

  double seconds(int index) {
    FrameStoreReader.Stamp stamp = stamps.get(index);
    CameraFacts camera = journal.header().camera();
    long latency = Math.round(camera.latencySeconds() * 1e9);
    return journal.seconds(midNanos.getOrDefault(stamp.number(), stamp.arrivalNanos() - latency));
  }

  /** The frame nearest to a time; -1 without frames. */
  int nearest(double seconds) {
    int best = -1;
    double distance = Double.POSITIVE_INFINITY;
    for (int i = 0; i < stamps.size(); i++) {
      double here = Math.abs(seconds(i) - seconds);
      if (here < distance) {
        distance = here;
        best = i;
      }
    }
    return best;
  }

  /** The frame of a number; -1 when it is not there. */
  int numbered(long number) {
    for (int i = 0; i < stamps.size(); i++) {
      if (stamps.get(i).number() == number) {
        return i;
      }
    }
    return -1;
  }

  /** About so many frames over the whole run, those that are quick to read; ascending. */
  List<Integer> spread(int wanted) {
    List<Integer> quick = new ArrayList<>();
    for (int i = 0; i < stamps.size(); i++) {
      if (stamps.get(i).independent()) {
        quick.add(i);
      }
    }
    if (quick.size() < wanted / 2) {
      quick.clear();
      for (int i = 0; i < stamps.size(); i++) {
        quick.add(i);
      }
    }
    TreeMap<Integer, Integer> chosen = new TreeMap<>();
    for (int k = 0; k < wanted && !quick.isEmpty(); k++) {
      int at = (int) Math.round(k * (quick.size() - 1.0) / Math.max(1, wanted - 1));
      chosen.put(quick.get(at), at);
    }
    return new ArrayList<>(chosen.keySet());
  }

  /** Null when the frame, or one it leans on, is damaged. */
  Shot read(int index) throws IOException {
    Frame frame = new Frame(reader.newSamples());
    if (!reader.read(stamps, index, frame)) {
      return null;
    }
    CameraFacts camera = journal.header().camera();
    double scale = Double.isNaN(camera.kelvinPerCount()) ? 1 : camera.kelvinPerCount();
    double zero = Double.isNaN(camera.celsiusAtZero()) ? 0 : camera.celsiusAtZero();
    Plane plane = new Plane(reader.width(), reader.height());
    float[] values = plane.values();
    for (int i = 0; i < values.length; i++) {
      values[i] = (float) (zero + scale * frame.samples().valueAt(i));
    }
    return new Shot(frame.number(), seconds(index), plane);
  }

  @Override
  public void close() throws IOException {
    reader.close();
  }
}
