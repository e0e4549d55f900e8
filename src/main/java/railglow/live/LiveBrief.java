package railglow.live;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import railglow.live.sound.Sound;
import railglow.observed.OutputState;
import railglow.run.RunEnding;
import railglow.safety.StopCause;

/**
 * The little that must be seen from afar and can't wait for anything else: immutable, so that it is
 * served without a lock.
 *
 * @param output what is known of it
 * @param newsNanos when this was last known to be so
 * @param newsExpected whether something is wrong when nothing new comes
 * @param point what is measured just now, in words
 * @param stage of a hands-free session
 * @param more a sentence to the stage; may be empty
 * @param sounds the last ones that were played
 * @param soundsPlayed how many there were so far
 * @param machineSilent whether the machine itself plays no sound
 * @param ending how all ended; null before
 */
record LiveBrief(
    OutputState output,
    long newsNanos,
    boolean newsExpected,
    String point,
    LiveStage stage,
    String more,
    List<Sound> sounds,
    long soundsPlayed,
    boolean machineSilent,
    RunEnding ending) {
  private static final int KEPT_SOUNDS = 6;

  static LiveBrief first(String point, long nowNanos) {
    return new LiveBrief(
        OutputState.UNKNOWN, nowNanos, false, point, LiveStage.NONE, "", List.of(), 0, false, null);
  }

  LiveBrief with(OutputState newOutput, long nowNanos, boolean expected) {
    return new LiveBrief(
        newOutput,
        nowNanos,
        expected,
        point,
        stage,
        more,
        sounds,
        soundsPlayed,
        machineSilent,
        ending);
  }

  LiveBrief at(String newPoint, LiveStage newStage, String sentence) {
    return new LiveBrief(
        output,
        newsNanos,
        newsExpected,
        newPoint,
        newStage,
        sentence,
        sounds,
        soundsPlayed,
        machineSilent,
        ending);
  }

  LiveBrief heard(Sound sound) {
    List<Sound> last = new ArrayList<>(sounds);
    last.add(sound);
    return new LiveBrief(
        output,
        newsNanos,
        newsExpected,
        point,
        stage,
        more,
        List.copyOf(last.subList(Math.max(0, last.size() - KEPT_SOUNDS), last.size())),
        soundsPlayed + 1,
        machineSilent,
        ending);
  }

  LiveBrief onSilentMachine() {
    return new LiveBrief(
        output, newsNanos, newsExpected, point, stage, more, sounds, soundsPlayed, true, ending);
  }

  LiveBrief ended(RunEnding how) {
    boolean stopped =
        stage != LiveStage.SESSION_ENDED && how.stop().cause().kind() != StopCause.Kind.FINISHED;
    return new LiveBrief(
        how.output(),
        newsNanos,
        false,
        point,
        stopped ? LiveStage.STOPPED : stage == LiveStage.MEASURING ? LiveStage.WORKING : stage,
        stopped ? how.stop().evidence() : more,
        sounds,
        soundsPlayed,
        machineSilent,
        how);
  }

  /** As the page reads it. */
  Map<String, Object> map(long nowNanos) {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put("output", output.name());
    map.put("silentSeconds", newsExpected ? (nowNanos - newsNanos) * 1e-9 : 0);
    map.put("point", point);
    map.put("stage", stage.name());
    map.put("stageWords", stage.words());
    map.put("more", more);
    map.put("sounds", sounds.stream().map(Sound::name).toList());
    map.put("soundsPlayed", soundsPlayed);
    map.put("machineSilent", machineSilent);
    if (ending != null) {
      map.put(
          "ended",
          Map.of(
              "cause",
              ending.stop().cause().kind() == StopCause.Kind.LIMIT
                  ? ending.stop().cause().name().toLowerCase(Locale.ROOT).replace('_', ' ')
                  : "",
              "evidence",
              ending.stop().evidence(),
              "proven",
              ending.provenOff(),
              "doubt",
              ending.doubt()));
    }
    return map;
  }
}
