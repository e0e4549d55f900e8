package railglow.units;

/** The units a user may write beside a number. The symbol is what is parsed and printed. */
public enum Unit {
  VOLT("V", true),
  AMPERE("A", true),
  OHM("ohm", true),
  WATT("W", true),
  JOULE("J", true),
  SECOND("s", true),
  HERTZ("Hz", true),
  /** A temperature difference. */
  KELVIN("K", true),
  /** An absolute temperature in degrees Celsius; takes no prefix. */
  CELSIUS("degC", false),
  METRE("m", true),
  KELVIN_PER_WATT("K/W", false),
  PIXEL("px", false),
  COUNT("counts", false),
  PERCENT("%", false);

  private final String symbol;
  private final boolean prefixed;

  Unit(String symbol, boolean prefixed) {
    this.symbol = symbol;
    this.prefixed = prefixed;
  }

  public String symbol() {
    return symbol;
  }

  /** Whether an SI prefix (u, m, k, M) may stand before the symbol. */
  public boolean takesPrefix() {
    return prefixed;
  }
}
