package railglow.run.reduction;

/**
 * After which cycles a reduction looks. The last look is made with every choice. It depends on
 * earlier ones only where it calls something itself, and then by their bounds only, and by those
 * only until one of them has called (decisions 0035, 0088 and 0117).
 */
public enum LooksMade {
  /** After every cycle, for someone waits. */
  ALL,

  /** Those that call a source first, and the bounds of those before: all that may count. */
  UNTIL_CALLED,

  /**
   * At doubled numbers of cycles, until one of them calls: these are enough for a last look that
   * calls nothing, and after one that has called. Else {@link Reduction#lacksLooks} says so.
   */
  NOW_AND_THEN
}
