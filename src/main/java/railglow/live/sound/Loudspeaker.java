package railglow.live.sound;

/** Something that makes samples heard. Used by one thread. */
public interface Loudspeaker extends AutoCloseable {
  /**
   * Plays and waits until it was heard.
   *
   * @param samples at {@link Synthesis#RATE}, one channel
   * @throws SilentException when there is none or it has failed
   */
  void play(short[] samples) throws SilentException;

  @Override
  void close();

  /** Nothing can be heard. */
  final class SilentException extends Exception {
    private static final long serialVersionUID = 1;

    public SilentException(String message, Throwable cause) {
      super(message, cause);
    }
  }
}
