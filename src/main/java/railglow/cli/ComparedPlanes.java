package railglow.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import railglow.board.Board;
import railglow.board.Part;
import railglow.board.compare.ComparedSource;
import railglow.board.compare.PlaneComparison;
import railglow.board.compare.PulseKind;
import railglow.board.geometry.BoardPosition;
import railglow.board.geometry.MovedCamera;
import railglow.board.geometry.PixelPosition;
import railglow.board.geometry.Registration;
import railglow.board.geometry.RegistrationException;
import railglow.journal.Findings;
import railglow.journal.NpyFile;
import railglow.journal.RunFolder;
import railglow.journal.RunHeader;
import railglow.pulse.PulseOrder;
import railglow.thermal.Plane;
import railglow.units.Probability;

/** Two runs' planes side by side: whether the camera moved, and where they differ per watt. */
final class ComparedPlanes {
  private static final int REACH_PIXELS = 16;
  private static final double MOVED_PIXELS = 0.5;

  /** Without a stated noise, that of a decent camera; only decides what counts as texture. */
  private static final double USUAL_NOISE = 0.05;

  /**
   * One run as it was kept.
   *
   * @param board the board file kept with it
   */
  record Kept(RunFolder folder, RunHeader header, Findings findings, Optional<Board> board) {
    Optional<Registration> registration() {
      return board.flatMap(Board::registration);
    }

    private Optional<Plane> plane(String name) throws IOException {
      return Files.exists(folder.plane(name))
          ? Optional.of(NpyFile.read(folder.plane(name)))
          : Optional.empty();
    }
  }

  private ComparedPlanes() {}

  /**
   * The second run's registration: its own, or where both runs share one and the pictures say that
   * the camera was moved, one made from the thermal picture.
   *
   * @param lines gets a note on what was done or why it could not be
   */
  static Optional<Registration> secondRegistration(Kept first, Kept second, List<String> lines)
      throws IOException {
    Optional<Registration> shared = first.registration();
    Optional<Plane> before = first.plane("background");
    Optional<Plane> after = second.plane("background");
    boolean same =
        shared.isPresent()
            && second
                .registration()
                .map(r -> r.points().equals(shared.get().points()))
                .orElse(false);
    if (!same || before.isEmpty() || after.isEmpty()) {
      return second.registration();
    }
    double stated = first.header().camera().noiseKelvin();
    double noise = Double.isNaN(stated) ? USUAL_NOISE : stated;
    try {
      MovedCamera moved =
          MovedCamera.of(shared.get(), before.get(), after.get(), noise, REACH_PIXELS);
      if (moved.movedPixels() < MOVED_PIXELS) {
        return second.registration();
      }
      Summary.wrap(
          lines,
          "Note       ",
          String.format(
              Locale.ROOT,
              "the camera moved by %.1f px between the runs; the second was tied to the board again by"
                  + " %d places of its thermal picture, which fit to %.2f px rms.",
              moved.movedPixels(),
              moved.patches(),
              moved.residualPixels()));
      return Optional.of(moved.registration());
    } catch (RegistrationException e) {
      Summary.wrap(
          lines,
          "Note       ",
          "whether the camera moved between the runs can't be said: "
              + e.getMessage()
              + ". It is taken to have stayed.");
      return second.registration();
    }
  }

  /** Where the pictures differ per watt. */
  static List<String> differences(Kept first, Kept second, Optional<Registration> registration)
      throws IOException {
    List<String> lines = new ArrayList<>();
    String hindrance = hindrance(first, second, registration);
    if (!hindrance.isEmpty()) {
      return said("not compared: " + hindrance);
    }
    PlaneComparison comparison =
        PlaneComparison.of(
            side(first, first.registration(), registration),
            side(second, registration, first.registration()));
    String unit = first.findings().unit() + "/W";
    if (comparison.places().isEmpty()) {
      return said(
          String.format(
              Locale.ROOT,
              "per watt the pictures differ nowhere; a difference of %.3g %s would have been seen.",
              comparison.smallestKelvinPerWatt(),
              unit));
    }
    for (PlaneComparison.Place place : comparison.places()) {
      Summary.wrap(
          lines,
          lines.isEmpty() ? "Pictures   " : "           ",
          String.format(
              Locale.ROOT,
              "at %s the second is %s by %.3g +- %.2g %s, ON minus OFF; probability of such a difference anywhere by"
                  + " chance: %s.",
              where(second, place),
              place.difference() > 0 ? "warmer" : "cooler",
              Math.abs(place.difference()),
              place.sigma(),
              unit,
              Probability.inWords(place.p())));
    }
    return lines;
  }

  static PulseKind pulses(RunHeader header) {
    return new PulseKind(
        header.sequence().periodSeconds(), header.sequence().order() == PulseOrder.CODED);
  }

  /** One run's plane, tied to the board where both are. */
  private static PlaneComparison.Side side(
      Kept run, Optional<Registration> own, Optional<Registration> other) throws IOException {
    return new PlaneComparison.Side(
        run.plane("in-phase").orElseThrow(),
        run.findings().onWatts(),
        other.isPresent() ? own : Optional.empty());
  }

  /** Why the pictures can't be compared; empty when they can. */
  private static String hindrance(Kept first, Kept second, Optional<Registration> registration)
      throws IOException {
    Optional<Plane> a = first.plane("in-phase");
    Optional<Plane> b = second.plane("in-phase");
    if (a.isEmpty() || b.isEmpty()) {
      return "a run keeps no in-phase plane.";
    }
    if (!pulses(first.header()).isLike(pulses(second.header()))) {
      return "the runs pulsed differently.";
    }
    if (!(first.findings().onWatts() > 0 && second.findings().onWatts() > 0)) {
      return "the power of a run is not known.";
    }
    boolean tied = first.registration().isPresent() && registration.isPresent();
    boolean alike = a.get().width() == b.get().width() && a.get().height() == b.get().height();
    return tied || alike ? "" : "the pictures are of different sizes and not registered.";
  }

  /**
   * Whether both pictures are about as warm at a source's place; false where they can't be
   * compared.
   */
  static boolean asWarm(
      Kept first, Kept second, Optional<Registration> registration, ComparedSource source)
      throws IOException {
    if (!hindrance(first, second, registration).isEmpty()) {
      return false;
    }
    PlaneComparison.Side other = side(second, registration, first.registration());
    double column = source.x();
    double row = source.y();
    if (other.registration().isPresent()) {
      PixelPosition seen = other.registration().get().toPixel(source.x(), source.y());
      column = seen.column();
      row = seen.row();
    }
    return PlaneComparison.asWarm(
        side(first, first.registration(), registration), other, column, row);
  }

  private static List<String> said(String sentence) {
    List<String> lines = new ArrayList<>();
    Summary.wrap(lines, "Pictures   ", sentence);
    return lines;
  }

  private static String where(Kept run, PlaneComparison.Place place) {
    if (place.board().isEmpty()) {
      return String.format(Locale.ROOT, "column %.0f, row %.0f", place.column(), place.row());
    }
    BoardPosition at = place.board().get();
    String part =
        run.board().orElseThrow().parts().stream()
            .filter(p -> Board.outline(p).contains(at.xMillimetres(), at.yMillimetres()))
            .map(Part::reference)
            .findFirst()
            .map(reference -> reference + " ")
            .orElse("");
    return String.format(
        Locale.ROOT, "%s(x %.1f mm, y %.1f mm)", part, at.xMillimetres(), at.yMillimetres());
  }
}
