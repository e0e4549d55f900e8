package railglow.cli;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import railglow.live.LivePage;
import railglow.live.LiveReading;
import railglow.live.LiveStage;
import railglow.live.LiveTouches;
import railglow.live.sound.Sound;
import railglow.observed.Frame;
import railglow.observed.OutputState;
import railglow.run.RunEnding;
import railglow.run.RunProgress;
import railglow.run.RunWatcher;
import railglow.run.handsfree.SensingNews;
import railglow.run.handsfree.TouchComparison;
import railglow.run.handsfree.TouchResult;
import railglow.thermal.Look;

/**
 * What a hands-free session shows on its live page: one page through all touches. Does nothing
 * where no page is wanted. Called from several threads.
 */
final class TouchScreen implements RunWatcher, AutoCloseable {
  /** No page is wanted. */
  static final TouchScreen NONE = new TouchScreen(Optional.empty());

  private final Optional<LivePage> page;
  private volatile String point = "";
  private volatile int number;
  private volatile LiveStage stage = LiveStage.NONE;
  private volatile boolean waitsForPulses;

  TouchScreen(Optional<LivePage> page) {
    this.page = page;
  }

  /** The probe is in the air; the next point is this one. */
  void listening(int touch, String label) {
    next(touch, label);
    stage(LiveStage.LISTENING, "");
  }

  /** The probe is still held from the last touch; the next point is this one. */
  void next(int touch, String label) {
    number = touch;
    point = "touch " + touch + ", " + label;
  }

  /** The next point was named anew, by a key. */
  void renamed(String label) {
    if (stage == LiveStage.LISTENING) {
      listening(number, label);
    }
  }

  void stage(LiveStage newStage, String more) {
    stage = newStage;
    page.ifPresent(p -> p.onStage(newStage, point, more));
  }

  void sensing(SensingNews news) {
    show(
        p ->
            p.onReading(
                new LiveReading(news.nanos(), news.output(), news.volts(), news.amperes())));
  }

  /** Nothing is to be heard of the supply until the next run or wait begins. */
  void between(OutputState output) {
    show(p -> p.onBetween(output));
  }

  /** A run begins at the point. */
  void begun() {
    waitsForPulses = true;
    show(LivePage::onBegun);
  }

  void sound(Sound sound) {
    show(p -> p.onSound(sound));
  }

  void machineIsSilent() {
    show(LivePage::onSilentMachine);
  }

  void touches(TouchComparison comparison) {
    List<LiveTouches.Row> rows =
        comparison.touches().stream().map(touch -> row(comparison, touch)).toList();
    List<String> conclusions =
        rows.size() < 2
            ? List.of()
            : comparison.conclusions().stream()
                .map(line -> line.replaceFirst(" {2,}", ": "))
                .toList();
    show(p -> p.onTouches(new LiveTouches(rows, conclusions)));
  }

  private static LiveTouches.Row row(TouchComparison comparison, TouchResult touch) {
    return new LiveTouches.Row(
        touch.number() + " " + touch.label(),
        comparison.found(touch),
        comparison.power(touch),
        comparison.contact(touch));
  }

  /**
   * The session is over.
   *
   * @param inOrder whether nothing but its own end ended it
   */
  void ended(RunEnding ending, boolean inOrder) {
    if (inOrder) {
      point = "";
      stage(LiveStage.SESSION_ENDED, "");
    }
    show(p -> p.onEnded(ending));
  }

  private void show(Consumer<LivePage> what) {
    page.ifPresent(what);
  }

  @Override
  public void onProgress(RunProgress progress) {
    if (waitsForPulses) {
      waitsForPulses = false;
      stage(LiveStage.RUNNING, "");
    }
    show(p -> p.onProgress(progress));
  }

  @Override
  public void onMessage(String sentence) {
    show(p -> p.onMessage(sentence));
  }

  @Override
  public void onFrame(Frame frame) {
    show(p -> p.onFrame(frame));
  }

  @Override
  public void onLook(Look look) {
    show(p -> p.onLook(look));
  }

  /** A run of the session has ended; the session has not. */
  @Override
  public void onEnded(RunEnding ending) {
    between(ending.output());
  }

  @Override
  public void close() {
    show(LivePage::close);
  }
}
