package railglow.board.ladder;

/**
 * What a ladder says about a path.
 *
 * @param kind of path
 * @param ohms small-signal resistance from the fit, or volts over amperes of the last step; NaN
 *     when there is none
 * @param ohmsSigma its standard deviation; NaN likewise
 * @param highestSoundVolts the highest step up to which the path behaved as its kind says
 * @param sequence the shipped sequence that fits: first-look, low-ohm-hunt or gentle; empty for
 *     none
 * @param reason one sentence
 * @param advice one sentence
 */
public record LadderVerdict(
    PathKind kind,
    double ohms,
    double ohmsSigma,
    double highestSoundVolts,
    String sequence,
    String reason,
    String advice) {}
