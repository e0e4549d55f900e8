package railglow.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import railglow.journal.CameraFacts;
import railglow.journal.RunHeader;
import railglow.pulse.PulseSequence;
import railglow.thermal.DetectionSettings;
import railglow.units.Quantity;
import railglow.units.Unit;

/** What a run was made with, in words, so that it can be repeated. Pure. */
final class UsedRows {
  private UsedRows() {}

  /** One line of a list in the report. */
  record Row(String key, String value) {}

  static List<Row> of(RunHeader header, Texts texts) {
    List<Row> rows = new ArrayList<>();
    rows.add(new Row(texts.get("used.camera"), camera(header.camera(), texts)));
    rows.add(
        new Row(
            texts.get("used.supply"),
            header.supplyIdentity().isEmpty()
                ? texts.get(header.isLog() ? "used.supply.camera" : "used.supply.none")
                : header.supplyIdentity()));
    rows.add(
        new Row(
            texts.get("used.leads"),
            header.leadOhms() == 0
                ? texts.get("used.leads.sensed")
                : Quantity.format(header.leadOhms(), Unit.OHM)));
    if (!header.protections().isEmpty()) {
      rows.add(new Row(texts.get("used.protections"), String.join("; ", header.protections())));
    }
    if (!header.isLog()) {
      rows.add(new Row(texts.get("used.sequence"), sequence(header.sequence(), texts)));
      rows.add(new Row(texts.get("used.detection"), detection(header.detection(), texts)));
    }
    if (!header.usedFiles().isEmpty()) {
      rows.add(new Row(texts.get("used.files"), files(header.usedFiles())));
    }
    rows.add(new Row(texts.get("used.command"), command(header.commandLine())));
    rows.add(
        new Row(
            texts.get("used.program"),
            texts.get(
                "used.program.text",
                header.programVersion(),
                Integer.toString(header.formatVersion()))));
    return rows;
  }

  private static String camera(CameraFacts camera, Texts texts) {
    return texts.get(
        "used.camera.text",
        camera.name(),
        Integer.toString(camera.width()),
        Integer.toString(camera.height()),
        Words.plain(camera.framesPerSecond()),
        Quantity.format(camera.kelvinPerCount(), Unit.KELVIN),
        Quantity.format(camera.noiseKelvin(), Unit.KELVIN),
        Quantity.format(camera.latencySeconds(), Unit.SECOND),
        Quantity.format(camera.timeConstantSeconds(), Unit.SECOND));
  }

  private static String sequence(PulseSequence s, Texts texts) {
    return texts.get(
        "used.sequence.text",
        s.name(),
        Quantity.format(s.levelVolts(), Unit.VOLT),
        Quantity.format(s.maxAmperes(), Unit.AMPERE),
        Quantity.format(s.periodSeconds(), Unit.SECOND),
        Integer.toString(s.minCycles()),
        Integer.toString(s.maxCycles()),
        Quantity.format(s.leadInSeconds(), Unit.SECOND),
        Quantity.format(s.restSeconds(), Unit.SECOND));
  }

  private static String detection(DetectionSettings d, Texts texts) {
    return texts.get(
        "used.detection.text",
        Words.plain(d.familyWiseError()),
        Integer.toString(d.minCycles()),
        Integer.toString(d.maxCycles()),
        numbers(d.filterSigmasPixels()),
        numbers(d.bodyTimeConstantsSeconds()));
  }

  private static String numbers(double[] values) {
    return Arrays.stream(values).mapToObj(Words::plain).collect(Collectors.joining(", "));
  }

  private static String files(Map<String, String> files) {
    return files.entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .map(entry -> entry.getKey() + ": " + entry.getValue())
        .collect(Collectors.joining("; "));
  }

  /** The words as a shell would need them. */
  private static String command(List<String> words) {
    return words.stream()
        .map(
            word ->
                word.matches("[A-Za-z0-9_./:=@%+,-]+")
                    ? word
                    : "'" + word.replace("'", "'\\''") + "'")
        .collect(Collectors.joining(" "));
  }
}
