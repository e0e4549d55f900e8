package railglow.cli;

import railglow.journal.Entry;
import railglow.run.RunProgress;
import railglow.run.RunWatcher;

/** Says which cycles of a held probe do not count, and why. */
final class CyclesTold implements RunWatcher {
  private final Terminal terminal;
  private final TouchScreen screen;

  CyclesTold(Terminal terminal, TouchScreen screen) {
    this.terminal = terminal;
    this.screen = screen;
  }

  @Override
  public void onCycle(Entry.Cycle cycle) {
    if (!cycle.accepted()) {
      String sentence = "cycle " + (cycle.cycle() + 1) + " does not count: " + cycle.reason();
      terminal.say("Rejected   " + sentence);
      screen.onMessage(sentence);
    }
  }

  @Override
  public void onProgress(RunProgress progress) {}

  @Override
  public void onMessage(String sentence) {}
}
