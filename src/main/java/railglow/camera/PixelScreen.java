package railglow.camera;

import java.util.Arrays;
import railglow.thermal.CountPairs;

/**
 * Tells of whole stretches of a picture that no pixel in them can be above a bound, so that only
 * the rest need be looked at pixel by pixel. It may say "perhaps" for nothing, never "no" where
 * there is one. Where hot is dark counts are turned round, so that more is always warmer. Allocates
 * nothing per frame. Not thread-safe.
 */
public final class PixelScreen {
  /** Pixels of a stretch. */
  public static final int STRETCH = 4096;

  private static final int PAIRS = STRETCH / 2;

  /** A floor that no count is above by any bound. */
  private static final int NEVER = 1 << 24;

  private final int turn;
  private final CountPairs packer = new CountPairs(STRETCH);
  private final int[] pairs = new int[PAIRS];
  private final int[] room = new int[PAIRS];
  private final int[] zeros = new int[PAIRS];
  private int[][] evenFloors = {};
  private int[][] oddFloors = {};

  /**
   * @param hotIsDark whether a lower count is warmer
   */
  public PixelScreen(boolean hotIsDark) {
    this.turn = hotIsDark ? -1 : 0;
  }

  /**
   * Where the pixels' rises begin.
   *
   * @param counts the lead-in's mean of each pixel, 0 to 65535
   */
  void riseFrom(double[] counts) {
    int stretches = (counts.length + STRETCH - 1) / STRETCH;
    if (evenFloors.length != stretches) {
      evenFloors = new int[stretches][PAIRS];
      oddFloors = new int[stretches][PAIRS];
    }
    for (int stretch = 0; stretch < evenFloors.length; stretch++) {
      Arrays.fill(evenFloors[stretch], NEVER);
      Arrays.fill(oddFloors[stretch], NEVER);
    }
    for (int i = 0; i < counts.length; i++) {
      int[][] floors = (i & 1) == 0 ? evenFloors : oddFloors;
      double floor = turn == 0 ? Math.floor(counts[i]) : 0xFFFF - Math.ceil(counts[i]);
      floors[i / STRETCH][i % STRETCH >> 1] = (int) floor;
    }
  }

  /**
   * Whether a pixel of the stretch from a place on may have risen by more.
   *
   * @param start a multiple of {@link #STRETCH}
   * @param most rise in counts, -65537 to 65536
   */
  boolean mayRiseBeyond(short[] counts, int start, int most) {
    pack(counts, start);
    int stretch = start / STRETCH;
    leave(pairs, evenFloors[stretch], oddFloors[stretch], turn, most, room);
    return isAnyNegative(room);
  }

  /**
   * Whether a turned count of the stretch from a place on may be above a bound.
   *
   * @param start a multiple of {@link #STRETCH}
   * @param most turned count, -1 to 65535
   */
  public boolean mayBeAbove(short[] counts, int start, int most) {
    pack(counts, start);
    leave(pairs, zeros, zeros, turn, most, room);
    return isAnyNegative(room);
  }

  private void pack(short[] counts, int start) {
    packer.pack(counts, start, Math.min(STRETCH, counts.length - start), pairs);
  }

  /** What each pair has left up to the bound, negative where one is above it. Vector code. */
  private static void leave(
      int[] pairs, int[] evenFloors, int[] oddFloors, int turn, int most, int[] room) {
    for (int i = 0; i < room.length; i++) {
      int pair = pairs[i] ^ turn;
      room[i] = (most + evenFloors[i] - (pair & 0xFFFF)) | (most + oddFloors[i] - (pair >>> 16));
    }
  }

  /**
   * Folds the signs together by constant steps, which stays vector code; then looks at the rest.
   */
  private static boolean isAnyNegative(int[] room) {
    for (int i = 0; i < PAIRS / 4; i++) {
      room[i] |= room[i + PAIRS / 4] | room[i + PAIRS / 2] | room[i + 3 * PAIRS / 4];
    }
    for (int i = 0; i < PAIRS / 16; i++) {
      room[i] |= room[i + PAIRS / 16] | room[i + PAIRS / 8] | room[i + 3 * PAIRS / 16];
    }
    int signs = 0;
    for (int i = 0; i < PAIRS / 16; i++) {
      signs |= room[i];
    }
    return signs < 0;
  }
}
