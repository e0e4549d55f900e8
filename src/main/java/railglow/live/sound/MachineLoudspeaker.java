package railglow.live.sound;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.SourceDataLine;

/** The machine's own loudspeaker, opened when first needed. */
public final class MachineLoudspeaker implements Loudspeaker {
  private static final AudioFormat FORMAT = new AudioFormat(Synthesis.RATE, 16, 1, true, false);
  private SourceDataLine line;

  @Override
  public void play(short[] samples) throws SilentException {
    try {
      if (line == null) {
        line = AudioSystem.getSourceDataLine(FORMAT);
        line.open(FORMAT);
        line.start();
      }
      ByteBuffer bytes = ByteBuffer.allocate(2 * samples.length).order(ByteOrder.LITTLE_ENDIAN);
      bytes.asShortBuffer().put(samples);
      line.write(bytes.array(), 0, bytes.capacity());
      line.drain();
    } catch (LineUnavailableException | RuntimeException | LinkageError e) {
      close();
      throw new SilentException("this machine plays no sound: " + e.getMessage(), e);
    }
  }

  @Override
  public void close() {
    if (line != null) {
      line.close();
      line = null;
    }
  }
}
