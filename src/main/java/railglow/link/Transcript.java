package railglow.link;

/**
 * Told what went over a link, on the thread that owns it. Must return at once and never throw; the
 * arrays are the caller's and must not be kept.
 */
public interface Transcript {
  /** Keeps nothing. */
  Transcript NONE =
      new Transcript() {
        @Override
        public void sent(long nowNanos, byte[] bytes, int length) {}

        @Override
        public void received(long nowNanos, byte[] bytes, int length) {}

        @Override
        public void note(long nowNanos, String text) {}
      };

  void sent(long nowNanos, byte[] bytes, int length);

  void received(long nowNanos, byte[] bytes, int length);

  /** Openings, time-outs and the like. */
  void note(long nowNanos, String text);
}
