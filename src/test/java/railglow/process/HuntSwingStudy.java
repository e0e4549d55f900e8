package railglow.process;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.Locale;
import railglow.sim.RiseStudy;
import railglow.sim.ToldOverTruth;
import railglow.units.Interval;

/**
 * Prints what whole hunts tell of the part at fault on a board that was never warmed, beside its
 * true swing once it is warm: packaged program, served bench, real time; every hunt with noise of
 * its own. Arguments: hunts (20), cycles at most (8), whether to stop when sure (no, or yes), the
 * first seed (1). Nothing else should run beside.
 */
public final class HuntSwingStudy {
  private static final int ATTEMPTS = 5;

  private HuntSwingStudy() {}

  public static void main(String[] args) throws Exception {
    int hunts = args.length > 0 ? Integer.parseInt(args[0]) : 20;
    int cycles = args.length > 1 ? Integer.parseInt(args[1]) : 8;
    String untilSure = args.length > 2 ? args[2] : "no";
    int firstSeed = args.length > 3 ? Integer.parseInt(args[3]) : 1;
    double truth = RiseStudy.warmSwingKelvin("hx12", "C37");
    say(
        "| seed | cycles | in phase mK | quadrature mK | told mK | 95 %% | over truth | holds %.1f mK |",
        1000 * truth);
    say("|---|---|---|---|---|---|---|---|");
    ToldOverTruth all = new ToldOverTruth();
    Path folder = Files.createTempDirectory("hunt-swings");
    for (int seed = firstSeed; seed < firstSeed + hunts; seed++) {
      JsonNode findings = findings(folder, seed, cycles, untilSure);
      JsonNode source = ofPart(findings, "C37");
      double kelvin = source.get("swingKelvin").asDouble();
      JsonNode limits = source.get("swingInterval95");
      Interval interval = new Interval(limits.get("low").asDouble(), limits.get("high").asDouble());
      say(
          "| %d | %d | %.1f | %.1f | %.1f | %.1f to %.1f | %.3f | %s |",
          seed,
          findings.get("cyclesUsed").asInt(),
          1000 * source.get("inPhaseKelvin").asDouble(),
          1000 * source.get("quadratureKelvin").asDouble(),
          1000 * kelvin,
          1000 * interval.low(),
          1000 * interval.high(),
          kelvin / truth,
          interval.contains(truth) ? "yes" : "no");
      all.add(kelvin, interval, truth);
    }
    say("");
    say(
        "%d hunts: told over truth %.3f, spread %.3f, interval %.3f wide; %d hold the truth",
        hunts, all.mean(), all.spread(), all.intervalWidth(), all.holds());
    try (var files = Files.walk(folder)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }

  /** Of one hunt; again where a busy machine stopped it. */
  private static JsonNode findings(Path folder, int seed, int cycles, String untilSure)
      throws IOException, InterruptedException {
    for (int attempt = 0; attempt < ATTEMPTS; attempt++) {
      Path own = Files.createDirectory(folder.resolve("seed" + seed + "-" + attempt));
      try (ServedBench bench = ServedBench.start(own, "--seed", Integer.toString(seed));
          RailglowProcess hunt = bench.hunt(bench.sequence("1 V", "500 mA", cycles, untilSure))) {
        hunt.awaitExit(60 + 3 * cycles);
        JsonNode findings = bench.findings();
        if (findings.get("verdict").asText().equals("HEAT_FOUND")) {
          return findings;
        }
      }
    }
    throw new IllegalStateException("no hunt of seed " + seed + " ended with heat found");
  }

  private static JsonNode ofPart(JsonNode findings, String part) {
    for (JsonNode suspect : findings.get("suspects")) {
      if (suspect.get("part").asText().equals(part)) {
        return findings.get("sources").get(suspect.get("sourceIndex").asInt());
      }
    }
    throw new IllegalStateException(part + " is not among " + findings.get("suspects"));
  }

  private static void say(String format, Object... arguments) {
    System.out.println(String.format(Locale.ROOT, format, arguments));
  }
}
