package railglow.board;

import java.util.Locale;

/**
 * What a part is, by the letters of its reference. The weights are common practice of the trade, no
 * published source: they only order parts that the position can't tell apart.
 */
public enum PartKind {
  CAPACITOR("capacitor", 4, false),
  SUPPRESSOR("diode or suppressor", 3, false),
  TRANSISTOR("transistor", 2.5, false),
  CHIP("chip", 2, false),
  MODULE("module", 1.5, false),
  RESISTOR("resistor", 0.5, true),
  INDUCTOR("inductor or ferrite", 0.3, true),
  FUSE("fuse", 0.3, true),
  CONNECTOR("connector", 0.5, true),
  CRYSTAL("crystal", 0.3, false),
  OTHER("part", 1, false);

  private final String noun;
  private final double failureWeight;
  private final boolean oftenPath;

  PartKind(String noun, double failureWeight, boolean oftenPath) {
    this.noun = noun;
    this.failureWeight = failureWeight;
    this.oftenPath = oftenPath;
  }

  public String noun() {
    return noun;
  }

  /** How often such a part is the one that leaks, against others; common practice, no source. */
  public double failureWeight() {
    return failureWeight;
  }

  /** How often such a part leaks, in words that say where that comes from; empty for the usual. */
  String frequency() {
    String source = " (common practice, no source)";
    return failureWeight >= 3
        ? ", a kind that often leaks" + source
        : failureWeight < 1 ? ", a kind that seldom leaks" + source : "";
  }

  /** Whether such a part usually carries the current to the fault, and warms by that. */
  public boolean oftenPath() {
    return oftenPath;
  }

  /** The kind a reference such as C37 or FB2 stands for. */
  public static PartKind of(String reference) {
    String letters = reference.replaceAll("[^A-Za-z].*", "").toUpperCase(Locale.ROOT);
    return switch (letters) {
      case "C", "CP", "CE" -> CAPACITOR;
      case "D", "LED", "TVS", "Z", "ZD", "CR", "DS" -> SUPPRESSOR;
      case "Q", "T", "VT" -> TRANSISTOR;
      case "U", "IC", "N", "VR" -> CHIP;
      case "A", "M", "MOD" -> MODULE;
      case "R", "RN", "RV", "RP", "RT", "NTC", "PTC" -> RESISTOR;
      case "L", "FB", "FL", "E" -> INDUCTOR;
      case "F", "PF" -> FUSE;
      case "J", "P", "X", "CN", "CON", "K", "SW", "S", "JP", "TP" -> CONNECTOR;
      case "Y", "XT", "XTAL" -> CRYSTAL;
      default -> OTHER;
    };
  }
}
