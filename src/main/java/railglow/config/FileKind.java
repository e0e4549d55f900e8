package railglow.config;

import java.util.Collection;
import java.util.List;

/**
 * What a user's file is for. No file says so itself: it is told by the keys of its top level, so
 * that a file given in the wrong place is named instead of blamed for each of its keys.
 */
enum FileKind {
  BENCH(
      "a bench's file",
      "--bench asks for a bench's: for example instruments/bench-simulated.yaml",
      List.of("supply", "camera", "leads", "limits", "accepts-missing", "companion")),
  CAMERA(
      "a camera's file",
      "'camera.descriptor' in a bench's file names a camera's: for example"
          + " instruments/camera-simulated.yaml",
      List.of("frame", "telemetry", "scale", "orientation", "rate", "latency", "time-constant")),
  SUPPLY(
      "a supply's file",
      "--supply, and 'supply.descriptor' in a bench's file, name a supply's: for example"
          + " instruments/supply-simulated.yaml",
      List.of("identity", "wire", "serial", "channels", "commands", "status", "watchdog")),
  SEQUENCE(
      "a sequence's file",
      "--sequence asks for a sequence's: for example sequences/low-ohm-hunt.yaml",
      List.of("purpose", "level", "period", "cycles-at-least", "cycles-at-most", "lead-in")),
  BOARD(
      "a board's file",
      "--board asks for a board's: for example docs/examples/hx12/board.yaml",
      List.of("size", "viewed", "rails", "placement", "netlist", "registration", "picture")),
  MEASURED(
      "a file of what was measured of a camera",
      "what was measured of a bench's camera is kept in the file of this name",
      List.of("camera", "times", "noise")),
  LAST_USED(
      "a file of what a bench was last used for",
      "what a bench was last used for is kept in the file of this name",
      List.of("board", "rail"));

  private final String what;
  private final String asked;
  private final List<String> own;

  /**
   * @param asked where such a file belongs, as the second half of a sentence
   * @param own keys of the top level that few other kinds have
   */
  FileKind(String what, String asked, List<String> own) {
    this.what = what;
    this.asked = asked;
    this.own = own;
  }

  /**
   * The kind most of the keys belong to; the wanted one unless another has more. All keys of a file
   * that can be used belong to the wanted kind, so none of those is taken for another.
   */
  static FileKind told(Collection<String> keys, FileKind wanted) {
    FileKind told = wanted;
    for (FileKind kind : values()) {
      if (kind.count(keys) > told.count(keys)) {
        told = kind;
      }
    }
    return told;
  }

  boolean owns(String key) {
    return own.contains(key);
  }

  /** What to tell a user who gave a file of this kind where another is wanted. */
  String insteadOf(FileKind wanted) {
    return "this is " + what + "; " + wanted.asked;
  }

  private long count(Collection<String> keys) {
    return keys.stream().filter(this::owns).count();
  }
}
