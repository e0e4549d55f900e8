package railglow.run.ladder;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import railglow.board.ladder.LadderStep;
import railglow.journal.Entry;
import railglow.journal.Journal;
import railglow.observed.SupplyReading;

/** The steps of a ladder again from its journal, bit for bit those of the day. Pure. */
public final class LadderReplay {
  private LadderReplay() {}

  /** How well the supply of the day read back; the usual where the journal does not say. */
  public static ReadBack readBack(Journal journal) {
    return journal
        .of(Entry.Note.class)
        .flatMap(note -> ReadBack.ofNote(note.text()).stream())
        .findFirst()
        .orElse(ReadBack.USUAL);
  }

  /**
   * @return the finished steps, in order; empty for a journal of another kind of run
   */
  public static List<LadderStep> steps(Journal journal) {
    double settle = LadderPlan.settleSeconds(journal.header().sequence().periodSeconds());
    List<LadderStep> steps = new ArrayList<>();
    List<SupplyReading> settled = new ArrayList<>();
    long confirmedNanos = 0;
    boolean on = false;
    ReadBack readBack = readBack(journal);
    for (Entry entry : journal.entries()) {
      if (entry instanceof Entry.EdgeMade made) {
        on = made.edge().on();
        confirmedNanos = made.edge().confirmedNanos();
        settled.clear();
      } else if (entry instanceof Entry.Reading read) {
        SupplyReading reading = read.reading();
        if (on && StepReadings.counts(reading, confirmedNanos, settle)) {
          settled.add(reading);
        }
      } else if (entry instanceof Entry.Note note) {
        OptionalInt count = StepNote.readings(note.text());
        if (count.isPresent() && count.getAsInt() <= settled.size()) {
          steps.add(step(journal, readBack, settled.subList(0, count.getAsInt())));
        }
      }
    }
    return steps;
  }

  private static LadderStep step(Journal journal, ReadBack readBack, List<SupplyReading> readings) {
    StepReadings step = new StepReadings(journal.header().leadOhms(), readBack);
    readings.forEach(step::add);
    return step.step();
  }
}
