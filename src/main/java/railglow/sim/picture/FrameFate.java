package railglow.sim.picture;

/** What becomes of one frame on its way to the wire. */
public enum FrameFate {
  SENT,
  /** Sent with extra latency. */
  LATE,
  /** Counted but never sent. */
  DROPPED,
  /** The image before it is sent in its place. */
  REPEATED,
  /** The shutter was shut: counted but never sent. */
  SHUTTERED
}
