package railglow.process;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** A simulated bench in a process of its own, and the files to use it with. */
final class ServedBench implements AutoCloseable {
  private static final String BOARD =
      Path.of("docs/examples/hx12/board.yaml").toAbsolutePath() + "";
  private final Path folder;
  private final RailglowProcess process;
  private final Path bench;
  private final Path truth;

  private ServedBench(Path folder, RailglowProcess process, Path bench, Path truth) {
    this.folder = folder;
    this.process = process;
    this.bench = bench;
    this.truth = truth;
  }

  static ServedBench start(Path folder, String... options)
      throws IOException, InterruptedException {
    Path truth = folder.resolve("truth.jsonl");
    List<String> arguments =
        new ArrayList<>(
            List.of(
                "simulate",
                "--supply-port",
                "0",
                "--camera-port",
                "0",
                "--truth",
                truth.toString()));
    arguments.addAll(Arrays.asList(options));
    RailglowProcess process = RailglowProcess.start(arguments.toArray(String[]::new));
    String supply = process.awaitLine("^Supply +(tcp://\\S+)", 30).group(1);
    String camera = process.awaitLine("^Camera +(tcp://\\S+)", 30).group(1);
    process.awaitLine("^Ready", 30);
    Path bench = writeBench(folder, supply, camera);
    return new ServedBench(folder, process, bench, truth);
  }

  /** A second bench file for the same bench, with the supply at another address. */
  Path benchWithSupplyAt(String address) throws IOException {
    String text = Files.readString(bench).replaceFirst("tcp://\\S+", address);
    return Files.writeString(folder.resolve("bench-other.yaml"), text);
  }

  /** A bench file for the same bench, with another descriptor of the supply at an address. */
  Path benchWithSupply(Path descriptor, String address) throws IOException {
    String text = Files.readString(benchWithSupplyAt(address));
    return Files.writeString(
        folder.resolve("bench-described.yaml"),
        text.replaceFirst("descriptor: .*", "descriptor: " + descriptor.toAbsolutePath()));
  }

  /** The address of the supply's socket. */
  String supplyAddress() throws IOException {
    Matcher address = Pattern.compile("address: (tcp://\\S+)").matcher(Files.readString(bench));
    address.find();
    return address.group(1);
  }

  /** A third bench file for the same bench, with the camera at another address. */
  Path benchWithCameraAt(String address) throws IOException {
    String text = Files.readString(bench).replace(cameraAddress(), address);
    return Files.writeString(folder.resolve("bench-camera.yaml"), text);
  }

  /** A program that brings the camera's frames to its output, as a vendor's own reader does. */
  Path cameraDriver() throws IOException {
    Path driver = folder.resolve("driver");
    String address = cameraAddress().replace("tcp://", "TCP:");
    Files.writeString(driver, "#!/bin/sh\nexec /usr/bin/socat -u " + address + " -\n");
    Files.setPosixFilePermissions(driver, PosixFilePermissions.fromString("rwx------"));
    return driver;
  }

  /**
   * A camera's driver as a Python program over a socket.
   *
   * @param perFrame what is done with {@code n} and {@code frame}, the bytes of the n-th frame of
   *     this process, before it is written; further lines indented by four blanks
   */
  Path cameraDriverInPython(Path python, String perFrame) throws IOException {
    Path driver = folder.resolve("driver.py");
    String port = cameraAddress().replaceFirst(".*:", "");
    Files.writeString(
        driver,
        """
        #!%s
        import socket, sys
        source = socket.create_connection(("127.0.0.1", %s)).makefile("rb")
        n = 0
        while True:
            frame = source.read(98320)
            if len(frame) < 98320:
                break
            n += 1
            %s
            sys.stdout.buffer.write(frame)
            sys.stdout.buffer.flush()
        """
            .formatted(python, port, perFrame));
    Files.setPosixFilePermissions(driver, PosixFilePermissions.fromString("rwx------"));
    return driver;
  }

  private String cameraAddress() throws IOException {
    Matcher address = Pattern.compile("address: (tcp://\\S+)").matcher(Files.readString(bench));
    address.find();
    address.find();
    return address.group(1);
  }

  private static Path writeBench(Path folder, String supply, String camera) throws IOException {
    Path shipped = Path.of("instruments").toAbsolutePath();
    String text =
        Files.readString(shipped.resolve("bench-simulated.yaml"))
            .replace("tcp://127.0.0.1:5025", supply)
            .replace("tcp://127.0.0.1:5600", camera)
            .replace("supply-simulated.yaml", shipped.resolve("supply-simulated.yaml").toString())
            .replace("camera-simulated.yaml", shipped.resolve("camera-simulated.yaml").toString());
    return Files.writeString(folder.resolve("bench.yaml"), text);
  }

  /** A quick sequence: two-second cycles, until sure. */
  Path sequence(String level, String current, int atMost) throws IOException {
    return sequence(level, current, atMost, "yes");
  }

  Path sequence(String level, String current, int atMost, String untilSure) throws IOException {
    return Files.writeString(
        folder.resolve("quick.yaml"),
        """
        name: quick
        purpose: A quick run for tests.
        level: %s
        current-limit: %s
        period: 2 s
        cycles-at-least: 5
        cycles-at-most: %d
        until-sure: %s
        lead-in: 1 s
        rest: 1 s
        family-wise-error: 5 %%
        hottest-allowed: 60 degC
        largest-rise: 25 K
        """
            .formatted(level, current, atMost, untilSure));
  }

  RailglowProcess hunt(Path sequence) throws IOException {
    return hunt(bench, sequence);
  }

  RailglowProcess hunt(Path benchFile, Path sequence) throws IOException {
    return RailglowProcess.start(huntWords(benchFile, sequence).toArray(String[]::new));
  }

  /** A hunt on this bench as a command line for the given program. */
  List<String> huntWords(String program, Path sequence) {
    List<String> words = new ArrayList<>(List.of(program));
    words.addAll(huntWords(bench, sequence));
    return words;
  }

  private List<String> huntWords(Path benchFile, Path sequence) {
    return List.of(
        "hunt",
        "--bench",
        benchFile.toString(),
        "--board",
        BOARD,
        "--rail",
        "3V3",
        "--sequence",
        sequence.toString(),
        "--runs",
        runs().toString());
  }

  /** Another command on this bench. */
  RailglowProcess command(String name, Path sequence, List<String> more) throws IOException {
    List<String> words =
        new ArrayList<>(
            List.of(
                name,
                "--bench",
                bench.toString(),
                "--board",
                BOARD,
                "--rail",
                "3V3",
                "--sequence",
                sequence.toString(),
                "--runs",
                runs().toString()));
    words.addAll(more);
    return RailglowProcess.start(words.toArray(String[]::new));
  }

  Path runs() {
    return folder.resolve("runs");
  }

  /** The only run folder. */
  Path run() throws IOException {
    try (Stream<Path> folders = Files.list(runs())) {
      List<Path> all = folders.filter(Files::isDirectory).toList();
      if (all.size() != 1) {
        throw new AssertionError("one run folder expected, there are " + all);
      }
      return all.get(0);
    }
  }

  JsonNode findings() throws IOException {
    return new ObjectMapper().readTree(run().resolve("findings.json").toFile());
  }

  /** What truly happened, one object an event; ends the bench, so that nothing is half written. */
  List<JsonNode> truth() throws IOException {
    process.close();
    ObjectMapper json = new ObjectMapper();
    List<JsonNode> events = new ArrayList<>();
    for (String line : Files.readAllLines(truth)) {
      events.add(json.readTree(line));
    }
    return events;
  }

  @Override
  public void close() {
    process.close();
  }
}
