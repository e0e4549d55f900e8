package railglow.cli;

import java.nio.charset.StandardCharsets;
import picocli.CommandLine;

/** Entry point: finds the command, runs it, and ends the process with its exit code. */
public final class Main {
  private static final byte[] NO_MEMORY =
      ("railglow: no memory is left; give it more with -Xmx. If a supply was being driven, off was"
              + " sent,\n  but the OUTPUT IS NOT PROVEN OFF: switch the supply off by hand, or pull the"
              + " leads, NOW.\n")
          .getBytes(StandardCharsets.US_ASCII);

  private Main() {}

  public static void main(String[] args) {
    int exitCode;
    try {
      exitCode =
          CompanionEntry.isMeant(args) ? CompanionEntry.run(args) : run(Terminal.ofProcess(), args);
    } catch (OutOfMemoryError e) {
      endWithoutMemory();
      return;
    }
    System.exit(exitCode);
  }

  /** Takes no memory; what other threads hold is never given back to this one. */
  private static void endWithoutMemory() {
    try {
      System.err.write(NO_MEMORY, 0, NO_MEMORY.length);
      System.err.flush();
    } finally {
      Runtime.getRuntime().halt(ExitCode.NOT_PROVEN_OFF);
    }
  }

  /** Runs a command without ending the process. */
  static int run(Terminal terminal, String... args) {
    CommandLine commands = new CommandLine(new Railglow(), new CommandFactory(terminal));
    Commands.add(commands, args);
    commands.setCaseInsensitiveEnumValuesAllowed(true);
    commands.setUsageHelpWidth(96);
    commands.setOut(terminal.answers());
    commands.setErr(terminal.complaints());
    commands.setColorScheme(
        CommandLine.Help.defaultColorScheme(
            terminal.isInteractive() ? CommandLine.Help.Ansi.AUTO : CommandLine.Help.Ansi.OFF));
    commands.setParameterExceptionHandler(
        (e, given) -> {
          terminal.complain("railglow: " + e.getMessage());
          terminal.complain("see 'railglow " + name(e.getCommandLine()) + "--help'");
          return ExitCode.BAD_USE;
        });
    commands.setExecutionExceptionHandler((e, command, parsed) -> Complaints.handle(terminal, e));
    return commands.execute(args);
  }

  private static String name(CommandLine command) {
    return command.getParent() == null ? "" : command.getCommandName() + " ";
  }
}
