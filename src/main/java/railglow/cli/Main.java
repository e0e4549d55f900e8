package railglow.cli;

import picocli.CommandLine;

/** Entry point: finds the command, runs it, and ends the process with its exit code. */
public final class Main {
  private Main() {}

  public static void main(String[] args) {
    System.exit(
        CompanionEntry.isMeant(args) ? CompanionEntry.run(args) : run(Terminal.ofProcess(), args));
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
