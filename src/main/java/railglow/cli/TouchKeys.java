package railglow.cli;

import railglow.run.handsfree.TouchNames;

/** What the keys of a hands-free session do. Called on the keys' thread. */
final class TouchKeys implements Keys.Pressed {
  private final Terminal terminal;
  private final TouchScreen screen;
  private final TouchStops stops;
  private final TouchNames names;

  TouchKeys(Terminal terminal, TouchScreen screen, TouchStops stops, TouchNames names) {
    this.terminal = terminal;
    this.screen = screen;
    this.stops = stops;
    this.names = names;
  }

  @Override
  public void press() {
    stops.press();
  }

  @Override
  public void end() {
    stops.end("the end of the input");
  }

  @Override
  public void name(int number) {
    names.choose(number);
    sayNext();
  }

  @Override
  public void name(String word) {
    try {
      names.choose(word);
      sayNext();
    } catch (IllegalArgumentException e) {
      terminal.complain(e.getMessage());
    }
  }

  private void sayNext() {
    terminal.say("Next       " + names.next());
    screen.renamed(names.next());
  }
}
