package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class CandidatesTest {
  private static final int W = 30;
  private static final int H = 20;
  private final ScoreField field = new ScoreField(W, H);
  private final Candidates candidates = new Candidates(W, H);

  @Test
  void theFlanksOfWhatWasClaimedAreNoPeaks() {
    // a wide hill at (8, 8), and a low one of its own at (24, 12)
    hill(8, 8, 20, 1);
    hill(24, 12, 9, 2);
    Candidate first = candidates.strongest(field);
    assertEquals(8, first.column());
    assertEquals(8, first.row());
    candidates.claim(8, 8, 2);
    Candidate second = candidates.strongest(field);
    assertEquals(24, second.column());
    assertEquals(12, second.row());
    assertEquals(9, second.score());
    candidates.claim(24, 12, 2);
    assertNull(candidates.strongest(field), "flanks only, down to below 0");
  }

  @Test
  void ofEqualPeaksTheFirstIsTaken() {
    Arrays.fill(field.scores(), 1);
    field.scores()[5 * W + 7] = 4;
    field.scores()[9 * W + 3] = 4;
    assertEquals(7, candidates.strongest(field).column());
  }

  @Test
  void withoutAnyScoreThereIsNone() {
    Arrays.fill(field.scores(), Float.NEGATIVE_INFINITY);
    assertNull(candidates.strongest(field));
  }

  private void hill(int column, int row, float height, float slope) {
    for (int i = 0; i < W * H; i++) {
      float here = height - slope * (float) Math.hypot(i % W - column, i / W - row);
      field.scores()[i] = column == 8 ? here : Math.max(here, field.scores()[i]);
    }
  }
}
