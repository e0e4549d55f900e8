package railglow.board;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import railglow.board.geometry.BoardPosition;
import railglow.board.geometry.Outline;
import railglow.thermal.HeatSource;

/**
 * From heat sources to the parts that can explain them. Pure and deterministic.
 *
 * <p>A part is a suspect when the 99 % ellipse of the source's position touches its outline. Those
 * with a pad on the injected rail, or behind an inductor, ferrite, fuse or sense resistor of it,
 * come first, ordered by the share of the position's error that lies on them times how often such a
 * part fails (common practice, no source). Of several sources those whose heat comes first go
 * before those that were merely warmed, then those with more heat per power.
 */
public final class SuspectRanking {
  /** Radius of the 99 % ellipse of a two-dimensional normal distribution: sqrt(-2 ln 0.01). */
  public static final double TOUCH_SIGMAS = Math.sqrt(-2 * StrictMath.log(0.01));

  /** How far a part may sit from its drawn place; common practice of assembly, no source. */
  static final double PLACEMENT_SIGMA_MILLIMETRES = 0.1;

  private static final double NEAR_MILLIMETRES = 3.0;
  private static final int MOST_PER_SOURCE = 5;

  private SuspectRanking() {}

  /**
   * @param railName the injected rail; empty when none was named
   * @param sources strongest first, which is by heat per power: all got the same power
   * @param facts what is known of their heat
   * @return each part once; nothing when the board has no registration
   */
  public static Ranking of(
      Board board, String railName, List<HeatSource> sources, HeatFacts facts) {
    if (board.registration().isEmpty()) {
      return Ranking.NOTHING;
    }
    List<HeatPath> paths = HeatPaths.of(board, railName, sources, facts.shapes());
    List<HeatFacts.Place> places = facts.places(board, sources);
    List<Candidate> all = new ArrayList<>();
    for (int i = 0; i < sources.size(); i++) {
      List<Candidate> own =
          candidates(
              board, railName, position(board, sources.get(i)), i, places.get(i), at(paths, i));
      for (int place = 0; place < Math.min(own.size(), MOST_PER_SOURCE); place++) {
        all.add(own.get(place).at(place));
      }
    }
    all.sort(
        Comparator.comparingInt(Candidate::place)
            .thenComparing(candidate -> candidate.tier().ordinal())
            .thenComparing(Candidate::late)
            .thenComparingInt(Candidate::source));
    List<Suspect> suspects = new ArrayList<>();
    Set<String> named = new TreeSet<>();
    for (Candidate candidate : all) {
      if (named.add(candidate.part().reference())) {
        suspects.add(candidate.suspect(suspects.size() + 1, board, railName));
      }
    }
    return new Ranking(suspects, withLead(paths, all));
  }

  private static Optional<HeatPath> at(List<HeatPath> paths, int source) {
    return paths.stream().filter(path -> path.sourceIndex() == source).findFirst();
  }

  /** The path that leads, if one does, is marked. */
  private static List<HeatPath> withLead(List<HeatPath> paths, List<Candidate> all) {
    if (paths.isEmpty()) {
      return paths;
    }
    int leading = leading(paths.get(0).sourceIndex(), all);
    return paths.stream()
        .map(path -> path.sourceIndex() == leading ? path.leading() : path)
        .toList();
  }

  /**
   * The strongest path leads where no part explains the heat better: where the first candidate lies
   * at a path itself, or only near a weaker source, or is not on the rail.
   *
   * @param strongest source of the strongest path
   * @param all the candidates in their final order
   * @return the source of the path that leads; -1 where none does
   */
  private static int leading(int strongest, List<Candidate> all) {
    if (all.isEmpty()) {
      return strongest == 0 ? 0 : -1;
    }
    Candidate first = all.get(0);
    return switch (first.tier()) {
      case LIKELY, OTHER_SIDE, MAYBE_PATH -> -1;
      case NEAR -> first.source() < strongest ? -1 : strongest;
      case AT_PATH -> first.source();
      case OFF_RAIL -> strongest;
    };
  }

  /** Where a source is on the board, with the errors of its position and of the registration. */
  public static BoardPosition position(Board board, HeatSource source) {
    return board
        .registration()
        .orElseThrow()
        .toBoard(
            source.column(),
            source.row(),
            source.columnVariance(),
            source.rowVariance(),
            source.covariance());
  }

  private static List<Candidate> candidates(
      Board board,
      String railName,
      BoardPosition at,
      int source,
      HeatFacts.Place heat,
      Optional<HeatPath> path) {
    BoardPosition position = at.withAdded(PLACEMENT_SIGMA_MILLIMETRES);
    boolean netsKnown = !railName.isEmpty() && !board.padsOn(railName).isEmpty();
    RailReach reach = RailReach.of(board, railName);
    String surface = SurfaceWords.caution(board, position.xMillimetres(), position.yMillimetres());
    List<Candidate> found = new ArrayList<>();
    for (Part part : board.parts()) {
      Outline outline = Board.outline(part);
      double millimetres =
          outline.distanceMillimetres(position.xMillimetres(), position.yMillimetres());
      double sigmas = outline.distanceSigmas(position);
      boolean touched = sigmas <= TOUCH_SIGMAS;
      boolean onRail = netsKnown && board.isOn(part, railName);
      String via = netsKnown && !onRail ? reach.feeds(part) : null;
      boolean reached = onRail || via != null;
      if (!touched && !(millimetres <= NEAR_MILLIMETRES && (reached || !netsKnown))) {
        continue;
      }
      Candidate.Tier tier = tier(board, part, touched, reached, netsKnown);
      if (path.isPresent() && tier != Candidate.Tier.OFF_RAIL) {
        tier = Candidate.Tier.AT_PATH;
      }
      double share = touched ? outline.shareOf(position) : 0;
      double fromMiddle =
          Math.hypot(
              part.xMillimetres() - position.xMillimetres(),
              part.yMillimetres() - position.yMillimetres());
      found.add(
          new Candidate(
              source,
              part,
              tier,
              millimetres,
              sigmas,
              share,
              fromMiddle,
              outline.area(position.xMillimetres(), position.yMillimetres()),
              onRail,
              via == null ? "" : via,
              netsKnown,
              surface,
              path.map(one -> "; " + one.reason()).orElse(""),
              heat.late(),
              heat.words(),
              0));
    }
    found.sort(
        Comparator.comparing(Candidate::tier)
            .thenComparing(Comparator.comparingDouble(Candidate::weight).reversed())
            .thenComparingDouble(Candidate::millimetres)
            .thenComparing(candidate -> candidate.part().reference()));
    return found;
  }

  private static Candidate.Tier tier(
      Board board, Part part, boolean touched, boolean reached, boolean netsKnown) {
    if (!touched) {
      return Candidate.Tier.NEAR;
    }
    if (netsKnown && !reached) {
      return Candidate.Tier.OFF_RAIL;
    }
    if (part.side() != board.viewed()) {
      return Candidate.Tier.OTHER_SIDE;
    }
    return PartKind.of(part.reference()).oftenPath()
        ? Candidate.Tier.MAYBE_PATH
        : Candidate.Tier.LIKELY;
  }
}
