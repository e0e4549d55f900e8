package railglow.thermal;

import java.util.Locale;

/** Prints what looks after every cycle cost at the last bound, and where the first bounds lie. */
public final class LooksStudy {
  private LooksStudy() {}

  public static void main(String[] args) {
    System.out.println(
        "| error per test | cap | spent late | first bound | at half | last | cost |");
    System.out.println("|---|---|---|---|---|---|---|");
    for (double error : new double[] {1e-3, 1e-6, 1e-9}) {
      double single = NormalScore.ofUpperTail(error);
      for (int cap : new int[] {30, 300}) {
        for (double late : new double[] {1, LookBounds.LATE_SHARE}) {
          LookBounds bounds = LookBounds.of(4, cap, error, late);
          System.out.printf(
              Locale.ROOT,
              "| %.0e | %d | %.2f | %.2f | %.2f | %.3f | %.1f %% |%n",
              error,
              cap,
              late,
              bounds.at(4),
              bounds.at(cap / 2),
              bounds.at(cap),
              100 * (bounds.at(cap) / single - 1));
        }
      }
    }
  }
}
