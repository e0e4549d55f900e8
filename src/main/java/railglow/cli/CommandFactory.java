package railglow.cli;

import picocli.CommandLine;

/** Makes commands that want the terminal in their constructor, and everything else as usual. */
final class CommandFactory implements CommandLine.IFactory {
  private final Terminal terminal;

  CommandFactory(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public <K> K create(Class<K> type) throws Exception {
    try {
      return type.cast(type.getDeclaredConstructor(Terminal.class).newInstance(terminal));
    } catch (NoSuchMethodException e) {
      return CommandLine.defaultFactory().create(type);
    }
  }
}
