package railglow.cli;

import railglow.journal.Entry;
import railglow.run.RunProgress;
import railglow.run.RunWatcher;
import railglow.safety.StopLatch;

/** Says which cycles of a held probe do not count, and why; not the one that the end cuts off. */
final class CyclesTold implements RunWatcher {
  private final Terminal terminal;
  private final TouchScreen screen;
  private final StopLatch latch;

  CyclesTold(Terminal terminal, TouchScreen screen, StopLatch latch) {
    this.terminal = terminal;
    this.screen = screen;
    this.latch = latch;
  }

  @Override
  public void onCycle(Entry.Cycle cycle) {
    if (!cycle.accepted() && !latch.isSet()) {
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
