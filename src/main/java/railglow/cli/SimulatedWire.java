package railglow.cli;

import java.util.Locale;
import picocli.CommandLine.Option;
import railglow.sim.wire.SupplySettings;
import railglow.sim.wire.SupplySettings.StatusFamily;
import railglow.sim.wire.WireHabits;

/** Which supply the simulated bench has, and how it behaves on its wire. */
final class SimulatedWire {
  /** Where regulation is shown. */
  enum Register {
    OPERATION,
    QUESTIONABLE
  }

  /** What ends messages and answers. */
  enum End {
    LF,
    CR,
    CRLF
  }

  @Option(
      names = "--regulation-in",
      paramLabel = "REGISTER",
      description =
          "where the supply shows constant voltage and current: operation or questionable"
              + " (default: operation)")
  private Register register = Register.OPERATION;

  @Option(
      names = "--channels",
      paramLabel = "N",
      description = "1 or 2 outputs; the board hangs on the first (default: 1)")
  private int channels = 1;

  @Option(
      names = "--line-end",
      paramLabel = "END",
      description = "what ends messages and answers: lf, cr or crlf (default: lf)")
  private End end = End.LF;

  @Option(names = "--echo", description = "the supply sends back what it gets")
  private boolean echo;

  @Option(
      names = "--slow-line",
      paramLabel = "BAUD",
      description = "as slow as a serial line of so many bits a second, e.g. 9600")
  private int baud;

  @Option(
      names = "--deaf-for",
      paramLabel = "SECONDS",
      converter = Quantities.Seconds.class,
      description = "the supply loses what comes sooner than this after the message before")
  private double deafSeconds;

  SupplySettings applied(SupplySettings usual) throws UserMistake {
    if (channels < 1 || channels > 2) {
      throw new UserMistake("--channels is " + channels + "; a simulated supply has 1 or 2");
    }
    if (baud < 0 || baud > 0 && baud < 300) {
      throw new UserMistake("--slow-line is " + baud + "; it must be 300 or more");
    }
    WireHabits wire = usual.wire().withEcho(echo).withDeafSeconds(deafSeconds);
    wire =
        switch (end) {
          case LF -> wire;
          case CR -> wire.withEnds('\r', "\r");
          case CRLF -> wire.withEnds('\n', "\r\n");
        };
    StatusFamily family =
        StatusFamily.valueOf("REGULATION_IN_" + register.name().toUpperCase(Locale.ROOT));
    return usual
        .withWire(baud > 0 ? wire.withBaud(baud) : wire)
        .withFamily(family)
        .withChannels(channels);
  }
}
