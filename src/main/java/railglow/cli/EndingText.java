package railglow.cli;

import java.util.Locale;
import railglow.safety.Stop;
import railglow.safety.StopCause;

/** How anything that drove a supply says its end. */
final class EndingText {
  private EndingText() {}

  /** The one thing that must not be overlooked. */
  static void notProvenOff(Terminal terminal, String doubt) {
    terminal.complain("OUTPUT NOT PROVEN OFF: " + doubt);
    terminal.complain("Switch the supply off by hand, or pull the leads, NOW.");
  }

  /** What is known of the output, as the last clause of a sentence. */
  static String output(boolean provenOff) {
    return provenOff ? "; output proven off" : "; OUTPUT NOT PROVEN OFF";
  }

  static boolean isStopped(Stop stop) {
    return stop.cause().kind() != StopCause.Kind.FINISHED;
  }

  /** The same of one touch of many: every cause that is not a limit speaks for itself. */
  static void sayOfTouch(Terminal terminal, Stop stop, String output) {
    if (stop.cause().kind() == StopCause.Kind.LIMIT) {
      say(terminal, stop, output);
    } else {
      Summary.sentence(terminal, "Ended      ", stop.evidence() + output);
    }
  }

  /** Says why it ended, with the cause by name unless it simply finished. */
  static void say(Terminal terminal, Stop stop, String output) {
    terminal.say("");
    String cause = stop.cause().name().toLowerCase(Locale.ROOT).replace('_', ' ') + ", ";
    Summary.sentence(
        terminal,
        isStopped(stop) ? "Stopped    " : "Ended      ",
        (isStopped(stop) ? cause : "") + stop.evidence() + output);
  }
}
