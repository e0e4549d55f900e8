package railglow.config;

import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import railglow.safety.Envelope;
import railglow.units.Unit;

/** Reads a bench file: one supply, one camera, the leads, and the limits of the place. */
public final class BenchFile {
  /** How well leads are usually known, and what clips vary by; common practice, no source. */
  private static final double LEAD_ERROR_SHARE = 0.1;

  private static final double CLIP_OHMS = 0.02;

  private BenchFile() {}

  /**
   * @throws ConfigException listing everything that is wrong with the file
   */
  public static Bench read(Path path) throws ConfigException {
    ConfigFile file = ConfigFile.read(path).as(FileKind.BENCH);
    Bench bench = from(file.root(), path);
    file.finish();
    return bench;
  }

  private static Bench from(ConfigSection root, Path path) {
    ConfigSection supply = root.section("supply");
    ConfigSection camera = root.section("camera");
    ConfigSection leads = root.section("leads");
    ConfigSection limits = root.section("limits");
    String name = root.text("name");
    Set<String> accepted = new TreeSet<>(root.texts("accepts-missing"));
    double leadOhms = leads.quantity("resistance", Unit.OHM, 0, 10);
    double leadAmperes = rating(leads, "rating");
    double connectorAmperes = rating(leads, "connector-rating");
    return new Bench(
        name,
        sibling(path, supply.text("descriptor")),
        supply.text("address"),
        supply.optionalInteger("channel", 1, 16).orElse(1),
        sibling(path, camera.text("descriptor")),
        camera.text("address"),
        leadOhms,
        leads
            .optionalQuantity("resistance-error", Unit.OHM, 0, 10)
            .orElse(Math.hypot(LEAD_ERROR_SHARE * leadOhms, CLIP_OHMS)),
        leads.flag("sensed-at-board", false),
        leadAmperes,
        connectorAmperes,
        envelope(limits, "bench file, " + name)
            .withMaxAmperes(leadAmperes, "the leads' rating, bench " + name)
            .withMaxAmperes(connectorAmperes, "the clip's or connector's rating, bench " + name),
        accepted,
        root.flag("companion", true));
  }

  private static double rating(ConfigSection leads, String key) {
    return leads.optionalQuantity(key, Unit.AMPERE, 0.01, 100).orElse(Double.POSITIVE_INFINITY);
  }

  private static Envelope envelope(ConfigSection limits, String origin) {
    Envelope envelope =
        Envelope.OPEN
            .withMaxVolts(given(limits.quantity("voltage", Unit.VOLT, 0.01, 60)), origin)
            .withMaxAmperes(given(limits.quantity("current", Unit.AMPERE, 0.001, 30)), origin)
            .withMaxWatts(given(limits.quantity("power", Unit.WATT, 0.001, 300)), origin)
            .withMaxCelsius(given(limits.quantity("hottest", Unit.CELSIUS, -20, 150)), origin)
            .withMaxReadingAgeSeconds(
                limits.optionalQuantity("reading-age", Unit.SECOND, 0.05, 5).orElse(0.5), origin)
            .withMaxFrameAgeSeconds(
                limits.optionalQuantity("frame-age", Unit.SECOND, 0.1, 30).orElse(2), origin);
    var joules = limits.optionalQuantity("energy", Unit.JOULE, 0.001, 1e6);
    return joules.isPresent() ? envelope.withMaxJoules(joules.getAsDouble(), origin) : envelope;
  }

  /** A limit that could not be read is reported; until the file is refused it counts as open. */
  private static double given(double limit) {
    return Double.isNaN(limit) ? Double.POSITIVE_INFINITY : limit;
  }

  private static Path sibling(Path benchFile, String relative) {
    return benchFile.toAbsolutePath().getParent().resolve(relative).normalize();
  }
}
