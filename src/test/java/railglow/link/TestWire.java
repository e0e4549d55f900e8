package railglow.link;

import railglow.time.MonotonicClock;

/** One kind of wire with a {@link ScriptedInstrument} at its other end. */
interface TestWire {
  BytePort port();

  MonotonicClock clock();

  /** Sends bytes that nobody asked for, and returns when they can be read. */
  void sendUnasked(String text) throws Exception;

  /** Ends the connection from the other side, and returns when it has happened. */
  void cut() throws Exception;

  void close() throws Exception;
}
