package railglow.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import railglow.board.Board;
import railglow.board.Suspect;
import railglow.board.SuspectRanking;
import railglow.config.BoardFile;
import railglow.pulse.PulseSequence;
import railglow.thermal.Look;

class WarmPathTest {
  @Test
  void thePartAtFaultComesBeforeThePathThoughThatIsWarmer() throws Exception {
    Board board = BoardFile.read(Path.of("docs/examples/hx12/board.yaml")).board();
    BenchScenario bench = BenchScenarios.named("warm-path").orElseThrow();
    PulseSequence pulses =
        new PulseSequence("t", "t", 1.2, 0.5, 2, 4, 12, false, 2, 1, 0.05, 70, 30);
    Look look = new BenchRun(bench, pulses).toTheEnd();
    List<Suspect> suspects = SuspectRanking.rank(board, "3V3", look.sources());
    assertEquals("C39", suspects.get(0).part(), suspects.toString());
  }
}
