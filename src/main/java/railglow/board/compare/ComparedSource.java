package railglow.board.compare;

/**
 * A heat source of one run and what became of it in the other.
 *
 * @param presence in which runs it is
 * @param first index in the first run; -1 when it is not there
 * @param second index in the second run; -1 when it is not there
 * @param x place in board millimetres, or pixels when nothing is registered
 * @param y likewise; rows downwards in pixels
 * @param firstPerWatt swing or settled rise per watt in the first run, K/W; the most it can be when
 *     it is not there
 * @param secondPerWatt likewise in the second run
 * @param difference second minus first, K/W; NaN when a power is not known
 * @param differenceSigma its standard deviation; NaN likewise
 * @param p two-sided probability of such a difference by chance; NaN when it can't be said
 * @param absenceIsSure whether the run without it would have shown it
 */
public record ComparedSource(
    Presence presence,
    int first,
    int second,
    double x,
    double y,
    double firstPerWatt,
    double secondPerWatt,
    double difference,
    double differenceSigma,
    double p,
    boolean absenceIsSure) {
  /** In which of two runs a source is. */
  public enum Presence {
    BOTH,
    /** Called in the first only, but the second's picture is as warm there. */
    UNCALLED_IN_SECOND,
    /** Called in the second only, but the first's picture is as warm there. */
    UNCALLED_IN_FIRST,
    FIRST_ONLY,
    SECOND_ONLY;

    /** Whether both runs show it, called or not. */
    public boolean isInBoth() {
      return this == BOTH || this == UNCALLED_IN_FIRST || this == UNCALLED_IN_SECOND;
    }
  }

  /** The same source where the other run's picture is as warm, though nothing was called there. */
  ComparedSource seenByThePicture() {
    return new ComparedSource(
        switch (presence) {
          case FIRST_ONLY -> Presence.UNCALLED_IN_SECOND;
          case SECOND_ONLY -> Presence.UNCALLED_IN_FIRST;
          default -> presence;
        },
        first,
        second,
        x,
        y,
        firstPerWatt,
        secondPerWatt,
        Double.NaN,
        Double.NaN,
        Double.NaN,
        false);
  }
}
