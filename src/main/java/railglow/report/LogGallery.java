package railglow.report;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
import railglow.board.places.PlacePixels;
import railglow.journal.Entry;
import railglow.journal.JournalException;
import railglow.report.draw.ColourMap;
import railglow.report.draw.ColourScale;
import railglow.report.draw.Pen;
import railglow.report.draw.PlaneView;
import railglow.report.draw.Png;
import railglow.report.draw.Shape;
import railglow.report.draw.Sketch;

/**
 * Frames of a log for its page, all on one colour scale: some over its whole length, to be looked
 * through, and a few stills at its marks. Not thread-safe.
 */
final class LogGallery {
  private static final int MOST_FRAMES = 48;
  private static final int LEAST_FRAMES = 8;
  private static final int MOST_PIXELS = 6_000_000;
  private static final int MOST_STILLS = 8;
  private final List<FrameShots.Shot> frames = new ArrayList<>();
  private final List<Still> stills = new ArrayList<>();
  private final RunContents run;
  private final ColourScale colours;
  private final double millimetresPerPixel;

  /** A frame with its title. */
  record Still(String title, FrameShots.Shot shot) {}

  private record Wanted(int index, String title) {}

  private LogGallery(RunContents run, double millimetresPerPixel, Texts texts, double[] at)
      throws IOException {
    this.run = run;
    this.millimetresPerPixel = millimetresPerPixel;
    try (FrameShots shots = FrameShots.open(run.folder(), run.journal())) {
      TreeSet<Integer> chosen = new TreeSet<>(shots.spread(frameCount()));
      List<Wanted> still = new ArrayList<>();
      for (double seconds : at) {
        addStill(shots, still, seconds, texts.get("log.asked"));
      }
      for (Entry.Marker marker : run.journal().of(Entry.Marker.class).toList()) {
        addStill(shots, still, run.journal().seconds(marker.nanos()), marker.text());
      }
      if (still.isEmpty() && shots.count() > 0) {
        addStill(shots, still, shots.seconds(0), texts.get("log.first"));
        run.journal()
            .of(Entry.Hottest.class)
            .reduce((a, b) -> heat(b) > heat(a) ? b : a)
            .ifPresent(
                hottest ->
                    addStill(
                        shots,
                        still,
                        run.journal().seconds(hottest.nanos()),
                        texts.get("log.hottest")));
        addStill(shots, still, shots.seconds(shots.count() - 1), texts.get("log.last"));
      }
      still.forEach(wanted -> chosen.add(wanted.index()));
      Map<Integer, FrameShots.Shot> read = new HashMap<>();
      for (int index : chosen) {
        FrameShots.Shot shot = shots.read(index);
        if (shot != null) {
          frames.add(shot);
          read.put(index, shot);
        }
      }
      for (Wanted wanted : still) {
        if (read.containsKey(wanted.index())) {
          stills.add(new Still(wanted.title(), read.get(wanted.index())));
        }
      }
    }
    if (frames.isEmpty()) {
      throw new JournalException("frames.rgf: no frame of it can be shown");
    }
    this.colours = scale();
  }

  /**
   * Reads the frames.
   *
   * @param at further times to show, in seconds after the start
   * @throws JournalException when there are no frames, or none can be read
   */
  static LogGallery of(RunContents run, double millimetresPerPixel, Texts texts, double... at)
      throws IOException {
    return new LogGallery(run, millimetresPerPixel, texts, at);
  }

  private static double heat(Entry.Hottest hottest) {
    return Double.isNaN(hottest.riseKelvin()) ? hottest.celsius() : hottest.riseKelvin();
  }

  private static void addStill(FrameShots shots, List<Wanted> still, double seconds, String title) {
    int index = shots.nearest(seconds);
    if (index >= 0 && still.size() < MOST_STILLS) {
      still.add(new Wanted(index, title));
    }
  }

  private int frameCount() {
    var camera = run.journal().header().camera();
    int fits = MOST_PIXELS / (camera.width() * camera.height());
    return Math.max(LEAST_FRAMES, Math.min(MOST_FRAMES, fits));
  }

  private ColourScale scale() {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (FrameShots.Shot shot : frames) {
      ColourScale own = ColourScale.ofRange(shot.plane(), "");
      low = Math.min(low, own.low());
      high = Math.max(high, own.high());
    }
    return new ColourScale(ColourMap.TEMPERATURE, low, high, Figures.backgroundUnit(run));
  }

  List<Still> stills() {
    return stills;
  }

  /** A frame with its scale and the outlines of the places. */
  Sketch sketch(FrameShots.Shot shot, List<PlacePixels> places) {
    PlaneView view = PlaneView.whole(shot.plane(), colours, 1024, 900);
    for (PlacePixels place : places) {
      outline(view, place);
    }
    view.scaleBar(millimetresPerPixel);
    return view.sketch();
  }

  /** The frame that the page shows first. */
  Sketch first(List<PlacePixels> places) {
    return sketch(frames.get(0), places);
  }

  /** The frame round a place's pixels, and its name. */
  private static void outline(PlaneView view, PlacePixels place) {
    int[] runs = place.runs();
    double left = Double.POSITIVE_INFINITY;
    double right = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < runs.length; i += 3) {
      left = Math.min(left, runs[i + 1] - 0.5);
      right = Math.max(right, runs[i + 2] + 0.5);
    }
    double top = runs[0] - 0.5;
    double bottom = runs[runs.length - 3] + 0.5;
    view.outline(
        new double[] {left, right, right, left},
        new double[] {top, top, bottom, bottom},
        Pen.line(Sketch.INK, 3.5),
        Pen.line(Sketch.WHITE, 1.5));
    double labelY = view.y(top) - 5;
    view.sketch()
        .label(
            view.x((left + right) / 2),
            labelY < view.area().getMinY() + 16 ? view.y(bottom) + 16 : labelY,
            place.name(),
            15,
            Shape.Anchor.MIDDLE);
  }

  /** The frames for the page's script: a list of times, numbers and pictures, as JSON. */
  String json() throws IOException {
    StringBuilder out = new StringBuilder("[");
    for (FrameShots.Shot shot : frames) {
      BufferedImage picture = colours.picture(shot.plane());
      out.append(out.length() == 1 ? "" : ",")
          .append(
              String.format(
                  Locale.ROOT, "{\"t\":%.3f,\"n\":%d,\"src\":\"", shot.seconds(), shot.number()))
          .append("data:image/png;base64,")
          .append(Base64.getEncoder().encodeToString(Png.of(indexed(picture))))
          .append("\"}");
    }
    return out.append(']').toString();
  }

  /** At most 256 colours are in a picture of one map, so one byte a pixel is enough. */
  private BufferedImage indexed(BufferedImage picture) {
    int[] palette = new int[256];
    for (int i = 0; i < 255; i++) {
      palette[i] = colours.map().rgb(i / 254.0);
    }
    palette[255] = colours.map().rgb(Double.NaN);
    var model =
        new java.awt.image.IndexColorModel(
            8, 256, palette, 0, false, -1, java.awt.image.DataBuffer.TYPE_BYTE);
    var places = new HashMap<Integer, Integer>();
    for (int i = 255; i >= 0; i--) {
      places.put(palette[i] & 0xFFFFFF, i);
    }
    BufferedImage indexed =
        new BufferedImage(
            picture.getWidth(), picture.getHeight(), BufferedImage.TYPE_BYTE_INDEXED, model);
    for (int y = 0; y < picture.getHeight(); y++) {
      for (int x = 0; x < picture.getWidth(); x++) {
        indexed
            .getRaster()
            .setSample(x, y, 0, places.getOrDefault(picture.getRGB(x, y) & 0xFFFFFF, 255));
      }
    }
    return indexed;
  }
}
