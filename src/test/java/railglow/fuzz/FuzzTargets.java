package railglow.fuzz;

import java.util.List;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.stream.Stream;
import railglow.board.imports.NetlistFuzz;
import railglow.board.imports.PlacementFuzz;
import railglow.board.ladder.StepsFuzz;
import railglow.board.readings.ReadingsFuzz;
import railglow.camera.RawStreamFuzz;
import railglow.camera.RecordingsFuzz;
import railglow.config.BenchFuzz;
import railglow.config.BoardFuzz;
import railglow.config.CameraDescriptorFuzz;
import railglow.config.SequenceFuzz;
import railglow.config.SupplyDescriptorFuzz;
import railglow.journal.FindingsFuzz;
import railglow.journal.FrameCodecFuzz;
import railglow.journal.FrameStoreFuzz;
import railglow.journal.JournalEntriesFuzz;
import railglow.journal.JournalFuzz;
import railglow.journal.PlaneFileFuzz;
import railglow.journal.TablesFuzz;
import railglow.link.LinkBytesFuzz;
import railglow.scpi.ScpiFuzz;
import railglow.sim.fault.FaultsFuzz;
import railglow.sim.wire.SimulatedSupplyFuzz;
import railglow.supply.CompanionTalkFuzz;
import railglow.supply.SupplyAddressFuzz;
import railglow.units.QuantityFuzz;

/** Everything that parses bytes from outside, in one list. */
final class FuzzTargets {
  /**
   * One parser.
   *
   * @param fuzz the class that fuzzes it
   * @param seeds good input to start from
   * @param check fails with an AssertionError
   */
  record Target(Class<?> fuzz, Supplier<Stream<byte[]>> seeds, Consumer<byte[]> check) {
    @Override
    public String toString() {
      return fuzz.getSimpleName();
    }
  }

  static final List<Target> ALL =
      List.of(
          new Target(ScpiFuzz.class, ScpiFuzz::seeds, ScpiFuzz::check),
          new Target(LinkBytesFuzz.class, LinkBytesFuzz::seeds, LinkBytesFuzz::check),
          new Target(QuantityFuzz.class, QuantityFuzz::seeds, QuantityFuzz::check),
          new Target(SupplyAddressFuzz.class, SupplyAddressFuzz::seeds, SupplyAddressFuzz::check),
          new Target(SequenceFuzz.class, SequenceFuzz::seeds, SequenceFuzz::check),
          new Target(
              SupplyDescriptorFuzz.class, SupplyDescriptorFuzz::seeds, SupplyDescriptorFuzz::check),
          new Target(
              CameraDescriptorFuzz.class, CameraDescriptorFuzz::seeds, CameraDescriptorFuzz::check),
          new Target(BenchFuzz.class, BenchFuzz::seeds, BenchFuzz::check),
          new Target(BoardFuzz.class, BoardFuzz::seeds, BoardFuzz::check),
          new Target(PlacementFuzz.class, PlacementFuzz::seeds, PlacementFuzz::check),
          new Target(NetlistFuzz.class, NetlistFuzz::seeds, NetlistFuzz::check),
          new Target(JournalFuzz.class, JournalFuzz::seeds, JournalFuzz::check),
          new Target(
              JournalEntriesFuzz.class, JournalEntriesFuzz::seeds, JournalEntriesFuzz::check),
          new Target(FrameCodecFuzz.class, FrameCodecFuzz::seeds, FrameCodecFuzz::check),
          new Target(FrameStoreFuzz.class, FrameStoreFuzz::seeds, FrameStoreFuzz::check),
          new Target(FindingsFuzz.class, FindingsFuzz::seeds, FindingsFuzz::check),
          new Target(PlaneFileFuzz.class, PlaneFileFuzz::seeds, PlaneFileFuzz::check),
          new Target(TablesFuzz.class, TablesFuzz::seeds, TablesFuzz::check),
          new Target(RecordingsFuzz.class, RecordingsFuzz::seeds, RecordingsFuzz::check),
          new Target(ReadingsFuzz.class, ReadingsFuzz::seeds, ReadingsFuzz::check),
          new Target(StepsFuzz.class, StepsFuzz::seeds, StepsFuzz::check),
          new Target(CompanionTalkFuzz.class, CompanionTalkFuzz::seeds, CompanionTalkFuzz::check),
          new Target(FaultsFuzz.class, FaultsFuzz::seeds, FaultsFuzz::check),
          new Target(
              SimulatedSupplyFuzz.class, SimulatedSupplyFuzz::seeds, SimulatedSupplyFuzz::check),
          new Target(RawStreamFuzz.class, RawStreamFuzz::seeds, RawStreamFuzz::check));

  private FuzzTargets() {}
}
