package railglow.board.imports;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import railglow.board.PartAssembly;
import railglow.board.Side;

/**
 * The demo boards of KiCad (Debian packages kicad and kicad-demos): placement and netlist as its
 * own exporters write them, against the positions and nets its library reads from the board.
 * Skipped where these packages are not installed.
 */
class InstalledDemoBoardsTest {
  private static final Path DEMOS = Path.of("/usr/share/kicad/demos");
  private static final Path PYTHON = Path.of("/usr/bin/python3");

  private static final String EXPORT =
      """
      import pcbnew, sys
      board = pcbnew.LoadBoard(sys.argv[1])
      exporter = pcbnew.PLACE_FILE_EXPORTER(board, True, False, False, True, True, True, False)
      open(sys.argv[2] + '/p.csv', 'w', encoding='utf-8').write(exporter.GenPositionData())
      pcbnew.IPC356D_WRITER(board).Write(sys.argv[2] + '/n.ipc')
      truth = open(sys.argv[2] + '/truth.tsv', 'w', encoding='utf-8')
      for part in board.GetFootprints():
        at = part.GetPosition()
        for pad in part.Pads():
          p = pad.GetPosition()
          row = [part.GetReference(), at.x / 1e6, -at.y / 1e6, int(part.IsFlipped()),
                 pad.GetNumber(), p.x / 1e6, -p.y / 1e6, pad.GetNetname()]
          truth.write('\\t'.join(str(cell) for cell in row) + '\\n')
      """;

  @TempDir Path folder;

  private record TruePad(
      String reference,
      double partX,
      double partY,
      boolean flipped,
      String pin,
      double x,
      double y,
      String net) {}

  private List<TruePad> export(String board) throws IOException, InterruptedException {
    Path file = DEMOS.resolve(board);
    assumeTrue(Files.exists(file), "kicad-demos is not installed: no " + file);
    assumeTrue(Files.isExecutable(PYTHON), "there is no " + PYTHON);
    Process process =
        new ProcessBuilder(PYTHON.toString(), "-c", EXPORT, file.toString(), folder.toString())
            .redirectErrorStream(true)
            .redirectOutput(folder.resolve("log.txt").toFile())
            .start();
    assertTrue(process.waitFor(60, TimeUnit.SECONDS), "the exporter did not end");
    String log = Files.readString(folder.resolve("log.txt"), StandardCharsets.ISO_8859_1);
    assumeTrue(!log.contains("No module named 'pcbnew'"), "KiCad's library is not installed");
    assertEquals(0, process.exitValue(), log);
    List<TruePad> pads = new ArrayList<>();
    for (String line : Files.readAllLines(folder.resolve("truth.tsv"))) {
      String[] cell = line.split("\t", -1);
      pads.add(
          new TruePad(
              cell[0],
              Double.parseDouble(cell[1]),
              Double.parseDouble(cell[2]),
              cell[3].equals("1"),
              cell[4],
              Double.parseDouble(cell[5]),
              Double.parseDouble(cell[6]),
              cell[7]));
    }
    return pads;
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "stickhub/StickHub.kicad_pcb",
        "video/video.kicad_pcb",
        "sonde xilinx/sonde xilinx.kicad_pcb",
        "complex_hierarchy/complex_hierarchy.kicad_pcb"
      })
  void placementAndNetlistAreReadAsTheBoardIs(String board) throws Exception {
    List<TruePad> truth = export(board);
    Placement placement =
        PlacementReader.read(
            "p.csv",
            Files.readAllBytes(folder.resolve("p.csv")),
            PlacementFormat.RECOGNISED.withUnit(LengthUnit.MILLIMETRE));
    Map<String, TruePad> byReference = new TreeMap<>();
    truth.forEach(pad -> byReference.putIfAbsent(pad.reference(), pad));
    assertTrue(placement.parts().size() > 10, board + " has parts");
    for (PlacedPart part : placement.parts()) {
      TruePad expected = byReference.get(part.reference());
      if (expected == null) {
        continue;
      }
      assertEquals(expected.partX(), part.xMillimetres(), 1e-6, part.reference());
      assertEquals(expected.partY(), part.yMillimetres(), 1e-6, part.reference());
      assertEquals(expected.flipped() ? Side.BOTTOM : Side.TOP, part.side(), part.reference());
    }
    Netlist netlist = NetlistReader.read("n.ipc", Files.readAllBytes(folder.resolve("n.ipc")));
    PartAssembly joined = PartAssembly.of(Optional.of(placement), Optional.of(netlist), Map.of());
    assertTrue(
        joined.gaps().stream().noneMatch(gap -> gap.contains("disagree")),
        joined.gaps().toString());
    int compared = netsAgree(truth, joined.netlist().orElseThrow());
    assertTrue(
        compared > 0.9 * truth.stream().filter(pad -> !pad.net().isEmpty()).count(),
        compared + " of " + truth.size() + " pads compared");
  }

  /** Every pad that can be told by part, pin and place is there, on a net of the same pads. */
  private static int netsAgree(List<TruePad> truth, Netlist netlist) {
    Map<String, String> writtenOf = new TreeMap<>();
    Map<String, String> trueOf = new TreeMap<>();
    int compared = 0;
    for (TruePad pad : truth) {
      List<Pad> found =
          netlist.padsOf(pad.reference()).stream()
              .filter(candidate -> near(candidate, pad))
              .filter(candidate -> candidate.pin().equals(clipped(pad.pin())))
              .toList();
      if (found.isEmpty() || pad.net().isEmpty()) {
        continue;
      }
      compared++;
      String written = found.get(0).net();
      assertEquals(writtenOf.computeIfAbsent(pad.net(), net -> written), written, pad.net());
      assertEquals(trueOf.computeIfAbsent(written, net -> pad.net()), pad.net(), written);
    }
    return compared;
  }

  private static String clipped(String pin) {
    return pin.length() <= 4 ? pin : pin.substring(0, 4);
  }

  /** Within the format's unit of 0.0001 inch. */
  private static boolean near(Pad found, TruePad pad) {
    return Math.abs(found.xMillimetres() - pad.x()) < 0.003
        && Math.abs(found.yMillimetres() - pad.y()) < 0.003;
  }
}
