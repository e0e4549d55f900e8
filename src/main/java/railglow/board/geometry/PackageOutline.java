package railglow.board.geometry;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The size of a part's body with its leads, before rotation, from a package name.
 *
 * <p>Nominal sizes as common in the trade; a board file can state better ones.
 *
 * @param widthMillimetres along the row of a two-terminal part's pads
 */
public record PackageOutline(double widthMillimetres, double heightMillimetres) {
  // Chip sizes by their inch codes; the metric codes say the size in tenths of a millimetre.
  private static final Map<String, PackageOutline> CHIPS =
      Map.ofEntries(
          chip("01005", 0.4, 0.2),
          chip("0201", 0.6, 0.3),
          chip("0402", 1.0, 0.5),
          chip("0603", 1.6, 0.8),
          chip("0805", 2.0, 1.25),
          chip("1206", 3.2, 1.6),
          chip("1210", 3.2, 2.5),
          chip("1806", 4.5, 1.6),
          chip("1812", 4.5, 3.2),
          chip("2010", 5.0, 2.5),
          chip("2220", 5.7, 5.0),
          chip("2512", 6.3, 3.2));

  // Metric codes that are no inch codes, and so can't be mistaken.
  private static final Map<String, PackageOutline> METRIC_CHIPS =
      Map.ofEntries(
          chip("1005", 1.0, 0.5),
          chip("1608", 1.6, 0.8),
          chip("2012", 2.0, 1.25),
          chip("3216", 3.2, 1.6),
          chip("3225", 3.2, 2.5),
          chip("4516", 4.5, 1.6),
          chip("4532", 4.5, 3.2),
          chip("5025", 5.0, 2.5),
          chip("5750", 5.7, 5.0),
          chip("6332", 6.3, 3.2));

  private static final Map<String, PackageOutline> NAMED =
      Map.ofEntries(
          chip("SOT23", 2.4, 2.9),
          chip("SOT233", 2.4, 2.9),
          chip("SOT235", 2.8, 2.9),
          chip("SOT236", 2.8, 2.9),
          chip("SOT238", 2.8, 2.9),
          chip("TSOT236", 2.8, 2.9),
          chip("SOT323", 2.1, 2.0),
          chip("SOT353", 2.1, 2.0),
          chip("SOT363", 2.1, 2.0),
          chip("SC70", 2.1, 2.0),
          chip("SOT223", 7.0, 6.5),
          chip("SOT89", 4.2, 4.5),
          chip("TO252", 9.9, 6.6),
          chip("DPAK", 9.9, 6.6),
          chip("TO263", 15.0, 10.2),
          chip("D2PAK", 15.0, 10.2),
          chip("SMA", 5.2, 2.6),
          chip("DO214AC", 5.2, 2.6),
          chip("SMB", 5.4, 3.6),
          chip("DO214AA", 5.4, 3.6),
          chip("SMC", 7.9, 5.9),
          chip("DO214AB", 7.9, 5.9),
          chip("SOD123", 3.7, 1.6),
          chip("SOD323", 2.6, 1.3),
          chip("SOD523", 1.6, 0.8),
          chip("MELF", 5.0, 2.2),
          chip("MINIMELF", 3.5, 1.5));

  private static final Pattern SIZE =
      Pattern.compile("(?<![0-9.])(\\d{1,2}(?:\\.\\d+)?)X(\\d{1,2}(?:\\.\\d+)?)(?:MM)?(?![0-9.])");
  private static final Pattern FOUR_DIGITS = Pattern.compile("(?<![0-9.])(\\d{4,5})(?![0-9])");
  private static final Pattern METRIC = Pattern.compile("(\\d{4,5})METRIC");
  private static final Pattern ROUND = Pattern.compile("(?:RADIAL|_D|ELEC_)(\\d{1,2}(?:\\.\\d+)?)");
  private static final Pattern HEADER = Pattern.compile("(\\d)X(\\d{1,2})_P(\\d+(?:\\.\\d+)?)");
  private static final Pattern GULL =
      Pattern.compile("(HTSSOP|TSSOP|SSOP|MSOP|VSSOP|SOIC|SOP|SO)-?(\\d{1,2})");

  private static Map.Entry<String, PackageOutline> chip(String name, double width, double height) {
    return Map.entry(name, new PackageOutline(width, height));
  }

  /** The outline a package name stands for; empty when the name says nothing about size. */
  public static Optional<PackageOutline> of(String packageName) {
    String name = packageName.strip().toUpperCase(Locale.ROOT);
    Matcher metric = METRIC.matcher(name);
    if (metric.find()) {
      return Optional.ofNullable(metricChip(metric.group(1)));
    }
    Matcher round = ROUND.matcher(name);
    if (round.find()) {
      double diameter = Double.parseDouble(round.group(1));
      return Optional.of(new PackageOutline(diameter, diameter));
    }
    Matcher header = HEADER.matcher(name);
    if (header.find()) {
      double pitch = Double.parseDouble(header.group(3));
      return positive(
          Integer.parseInt(header.group(1)) * pitch, Integer.parseInt(header.group(2)) * pitch);
    }
    Optional<PackageOutline> known = known(name);
    if (known.isPresent()) {
      return known;
    }
    Optional<PackageOutline> stated = stated(name);
    return stated.isPresent() ? stated : gull(name).or(() -> chipCode(name));
  }

  private static PackageOutline metricChip(String code) {
    for (PackageOutline outline : CHIPS.values()) {
      String own =
          String.format(
              Locale.ROOT,
              "%02d%02d",
              (int) (outline.widthMillimetres * 10 + 1e-9),
              (int) (outline.heightMillimetres * 10 + 1e-9));
      if (own.equals(code)) {
        return outline;
      }
    }
    return METRIC_CHIPS.get(code);
  }

  private static Optional<PackageOutline> known(String name) {
    String bare = name.replaceAll("[^A-Z0-9]", "");
    PackageOutline best = NAMED.get(bare);
    if (best != null) {
      return Optional.of(best);
    }
    for (String token : name.split("[_ :/]")) {
      PackageOutline outline = NAMED.get(token.replaceAll("[^A-Z0-9]", ""));
      if (outline == null) {
        // The number of pins may follow.
        outline = NAMED.get(token.replaceAll("-\\d+$", "").replaceAll("[^A-Z0-9]", ""));
      }
      if (outline != null) {
        return Optional.of(outline);
      }
    }
    return Optional.empty();
  }

  /**
   * A size in the name, such as LQFP-100_14x14mm; flat packs stand one millimetre wider on leads.
   */
  private static Optional<PackageOutline> stated(String name) {
    Matcher size = SIZE.matcher(name);
    if (!size.find()) {
      return Optional.empty();
    }
    double width = Double.parseDouble(size.group(1));
    double height = Double.parseDouble(size.group(2));
    boolean flatPack = name.contains("QFP");
    boolean twoRows = GULL.matcher(name).find();
    double leads = 2.0;
    return positive(width + (flatPack || twoRows ? leads : 0), height + (flatPack ? leads : 0));
  }

  private static Optional<PackageOutline> gull(String name) {
    Matcher gull = GULL.matcher(name);
    if (!gull.find()) {
      return Optional.empty();
    }
    int pins = Integer.parseInt(gull.group(2));
    return switch (gull.group(1)) {
      case "SOIC", "SOP", "SO" -> positive(pins > 16 ? 10.3 : 6.0, pins / 2 * 1.27 - 0.1);
      case "MSOP", "VSSOP" -> positive(4.9, 3.0);
      default -> positive(6.4, pins / 2 * 0.65 + 0.4);
    };
  }

  private static Optional<PackageOutline> chipCode(String name) {
    Matcher code = FOUR_DIGITS.matcher(name);
    while (code.find()) {
      PackageOutline inch = CHIPS.get(code.group(1));
      PackageOutline found = inch != null ? inch : METRIC_CHIPS.get(code.group(1));
      if (found != null) {
        return Optional.of(found);
      }
    }
    return Optional.empty();
  }

  private static Optional<PackageOutline> positive(double width, double height) {
    return width > 0 && height > 0
        ? Optional.of(new PackageOutline(width, height))
        : Optional.empty();
  }
}
