package railglow.board;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import railglow.board.CaseVerdict.Kind;
import railglow.board.readings.RailJudgement;
import railglow.board.readings.RailReading;
import railglow.board.readings.RailsAssessment;
import railglow.config.BoardFile;
import railglow.config.ConfigFile;

class CaseVerdictTest {
  private static Board board() throws Exception {
    return BoardFile.read(Path.of("docs/examples/hx12/board.yaml")).board();
  }

  private static RailJudgement now(double ohms) throws Exception {
    List<RailReading> readings =
        Double.isNaN(ohms) ? List.of() : List.of(RailReading.ofMeter("3V3", ohms, 0));
    return RailsAssessment.of(board(), readings, Optional.empty()).judgements().stream()
        .filter(judgement -> judgement.rail().equals("3V3"))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void aReplacedPartIsConfirmedByANormalReadingOnly() throws Exception {
    CaseVerdict done = CaseVerdict.of(Kind.REPLACE_PART, now(51), "C37", board(), List.of("run-1"));
    assertTrue(done.confirmed());
    assertEquals(
        "C37 is the fault and is to be replaced. 3V3 now reads 51 ohm, which is normal by the board"
            + " file's normal range: confirmed.",
        done.statement());
    CaseVerdict open = CaseVerdict.of(Kind.REPLACE_PART, now(6.8), "C37", board(), List.of());
    assertFalse(open.confirmed());
    assertTrue(open.statement().endsWith("not normal (leak): not confirmed yet."));
    assertFalse(
        CaseVerdict.of(Kind.REPLACE_PART, now(Double.NaN), "C37", board(), List.of()).confirmed());
  }

  @Test
  void aVerdictAgainstTheReadingsIsRefused() throws Exception {
    Board board = board();
    RailJudgement leak = now(6.8);
    RailJudgement unread = now(Double.NaN);
    assertThrows(
        IllegalArgumentException.class,
        () -> CaseVerdict.of(Kind.NO_FAULT_FOUND, leak, "", board, List.of()));
    assertThrows(
        IllegalArgumentException.class,
        () -> CaseVerdict.of(Kind.NO_FAULT_FOUND, unread, "", board, List.of()));
    assertThrows(
        IllegalArgumentException.class,
        () -> CaseVerdict.of(Kind.REPLACE_PART, leak, "", board, List.of()));
    assertThrows(
        IllegalArgumentException.class,
        () -> CaseVerdict.of(Kind.REPLACE_PART, leak, "C999", board, List.of()));
  }

  @Test
  void theFileIsReadBackAsItWasMeant() throws Exception {
    CaseVerdict verdict =
        CaseVerdict.of(Kind.NOT_ECONOMIC, now(6.8), "", board(), List.of("it's run 1", "no"));
    ConfigFile file =
        ConfigFile.parse(Path.of("verdict.yaml"), verdict.yaml("2026-01-02T03:04:05Z"));
    assertEquals("not-economic", file.root().text("verdict"));
    assertEquals(verdict.statement(), file.root().text("statement"));
    assertEquals(List.of("it's run 1", "no"), file.root().texts("evidence"));
    assertTrue(file.root().flag("confirmed", false));
    assertEquals("3V3", file.root().text("rail"));
    assertEquals("2026-01-02T03:04:05Z", file.root().text("closed"));
    file.finish();
  }
}
