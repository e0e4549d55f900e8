package railglow.supply;

/** How it is said that an output is not proven off, with the one thing to do. Pure. */
final class NotProvenOff {
  private NotProvenOff() {}

  /**
   * @param what is not proven, as far as the reason
   * @param doubt why, with or without a full stop
   */
  static String sentence(String what, String doubt) {
    String reason = doubt.endsWith(".") ? doubt.substring(0, doubt.length() - 1) : doubt;
    return what + ": " + reason + ". Switch the supply off by hand, or pull the leads, NOW";
  }
}
