package railglow.board;

/**
 * What a heat source's place would truly settle at under steady power, behind what its surface
 * shows.
 *
 * @param sourceIndex which heat source of the run, from 0
 * @param riseKelvin above 0 for a place that warms
 * @param sigmaKelvin its standard deviation: of the rise seen, the emissivity and what is reflected
 * @param surface what the camera sees there, such as "ceramic body of C37"
 * @param emissivity in the camera's band, 0 to 1
 * @param emissivitySigma its standard deviation
 * @param reflectedCelsius temperature of what the surface mirrors
 * @param reflectedSigmaKelvin how well that is known
 * @param reflectedFrom where it is known from: "supposed", "by the board file", "entered",
 *     "measured at foil"
 * @param bareMetal whether the surface shows so little that tape or a tilt is wanted
 */
public record TrueRise(
    int sourceIndex,
    double riseKelvin,
    double sigmaKelvin,
    String surface,
    double emissivity,
    double emissivitySigma,
    double reflectedCelsius,
    double reflectedSigmaKelvin,
    String reflectedFrom,
    boolean bareMetal) {}
