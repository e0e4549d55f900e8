package railglow.process;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Hands-free sessions on a real terminal, whose keys come one by one. */
class TerminalKeysIT {
  @TempDir Path folder;

  @BeforeEach
  void needsATerminal() {
    assumeTrue(Files.isExecutable(Path.of("/usr/bin/script")), "no script at /usr/bin/script");
  }

  @Test
  void anyKeyStartsARunAndEndsATouchAndNoneNeedsEnter() throws Exception {
    try (RailglowProcess touch = session("touch:C9@1s..600s")) {
      touch.awaitLine("any key starts a run or ends a touch", 40);
      touch.awaitLine("^Touch 1 .*: keep still", 40);
      touch.awaitLine("cycle 1/", 40);
      touch.type("x");
      touch.awaitLine("the operator's key; output proven off", 30);
      touch.awaitLine("Waiting +for touch 2", 30);
      touch.type("4");
      touch.awaitLine("^Next +dune", 10);
      touch.type("\u001b[A"); // an arrow, as a pedal might send it
      touch.awaitLine("^Touch 2 .*: keep still", 30);
      touch.awaitLine("^Run .*dune", 30);
      touch.type(" ");
      touch.awaitLine("Waiting +for touch 3", 60);
      touch.type("q");
      touch.awaitLine("exit code 0", 40);
      touch.awaitExit(20);
      assertRestored();
    }
  }

  @Test
  void ctrlCLeavesTheTerminalAsItWas() throws Exception {
    try (RailglowProcess touch = session("touch:C9@500s..600s")) {
      touch.awaitLine("Waiting +for touch 1", 40);
      touch.type("\u0003");
      touch.awaitLine("exit code 130", 40);
      touch.awaitExit(20);
      assertRestored();
    }
  }

  @Test
  void aSessionThatIsToldToEndLeavesTheTerminalAsItWas() throws Exception {
    assertRestoredAfter("TERM", 130);
  }

  @Test
  void aSessionThatIsKilledLeavesTheTerminalAsItWas() throws Exception {
    assertRestoredAfter("KILL", 137);
  }

  private void assertRestoredAfter(String signal, int exitCode) throws Exception {
    try (RailglowProcess touch = session("touch:C9@500s..600s")) {
      touch.awaitLine("Waiting +for touch 1", 40);
      String pid = Files.readString(folder.resolve("pid")).strip();
      new ProcessBuilder("kill", "-" + signal, pid).start().waitFor();
      touch.awaitLine("exit code " + exitCode, 40);
      touch.awaitExit(20);
      assertRestored();
    }
  }

  private RailglowProcess session(String hand) throws Exception {
    return RailglowProcess.startOnTerminal(
        folder, "touch", "--simulated", "--silent", "--hand", hand, "--touches", "5");
  }

  private void assertRestored() throws Exception {
    String before = Files.readString(folder.resolve("before"));
    assertTrue(before.contains(":"), before);
    assertEquals(before, Files.readString(folder.resolve("after")));
  }
}
