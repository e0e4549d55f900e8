package railglow.run;

/** Told how a run stands; must return at once. Called from several threads. */
public interface RunWatcher {
  /** A few times a second. */
  void onProgress(RunProgress progress);

  /** Something the operator must read. */
  void onMessage(String sentence);
}
