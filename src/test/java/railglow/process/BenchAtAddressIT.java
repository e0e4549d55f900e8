package railglow.process;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What `bench` and `off` make of an address alone, over real wires. */
class BenchAtAddressIT {
  @TempDir Path folder;

  private RailglowProcess bench(String address, String... more) throws IOException {
    List<String> words =
        new java.util.ArrayList<>(
            List.of("bench", address, "--into", folder.resolve("check").toString()));
    words.addAll(List.of(more));
    return RailglowProcess.start(words.toArray(String[]::new));
  }

  private static String words(RailglowProcess process) {
    return process.output().replaceAll("\\s+", " ");
  }

  @Test
  void aSupplyOnTheNetworkIsTriedWithTheOutputOffAndTheLinesPrintedMakeABenchFile()
      throws Exception {
    try (ServedBench served = ServedBench.start(folder)) {
      RailglowProcess trial = bench(served.supplyAddress());
      assertEquals(0, trial.awaitExit(30), trial.output());
      assertTrue(words(trial).contains("taken as: simulated supply"), trial.output());
      assertTrue(words(trial).contains("5. a companion process"), trial.output());
      String printed = trial.output();
      String beginning = printed.substring(printed.indexOf("name: my bench"));
      String rest = Files.readString(folder.resolve("bench.yaml"));
      Path file = folder.resolve("check").resolve("mine.yaml");
      Files.writeString(
          file,
          beginning
              + "\n"
              + rest.substring(rest.indexOf("camera:")).replaceAll("(?m)^companion:.*$", ""));
      RailglowProcess again =
          RailglowProcess.start(
              "bench",
              "--bench",
              file.toString(),
              "--watch",
              "2 s",
              "--into",
              folder.resolve("check").toString());
      assertEquals(0, again.awaitExit(30), again.output());
      assertTrue(again.output().contains("Bench      my bench"), again.output());
      assertNeverOn(served);
    }
  }

  @Test
  void onASerialLineLineEndsAndEchoAreFoundAndPutIntoTheDescriptor() throws Exception {
    assumeTrue(Files.isExecutable(Path.of("/usr/bin/socat")), "socat is not installed");
    Path terminal = folder.resolve("supply-terminal");
    try (ServedBench served =
        ServedBench.start(
            folder, "--terminal", terminal.toString(), "--line-end", "cr", "--echo")) {
      RailglowProcess trial = bench("serial:" + terminal);
      assertEquals(0, trial.awaitExit(60), trial.output());
      assertTrue(words(trial).contains("9600 baud, messages end with CR, echo"), trial.output());
      String descriptor = Files.readString(folder.resolve("check/supply-simulated.yaml"));
      assertTrue(
          descriptor.contains("send-end: cr") && descriptor.contains("echo: yes"), descriptor);
      assertNeverOn(served);
    }
  }

  @Test
  void overTheUsbDeviceFileTheSupplyOfAFamilyIsSaidToBeNoModel() throws Exception {
    assumeTrue(Files.isExecutable(Path.of("/usr/bin/socat")), "socat is not installed");
    Path device = folder.resolve("usbtmc0");
    try (ServedBench served =
        ServedBench.start(
            folder, "--terminal", device.toString(), "--regulation-in", "questionable")) {
      RailglowProcess trial =
          bench("usbtmc:" + device, "--supply", "supply-scpi-regulation-in-questionable");
      assertEquals(0, trial.awaitExit(30), trial.output());
      assertTrue(words(trial).contains("description of a family"), trial.output());
      assertTrue(words(trial).contains("address: usbtmc:" + device), trial.output());
      assertNeverOn(served);
    }
  }

  @Test
  void aDescriptorWithAWordTheSupplyRefusesIsNamedInTheSuppliesOwnWords() throws Exception {
    try (ServedBench served = ServedBench.start(folder)) {
      Path liar = folder.resolve("liar.yaml");
      Files.writeString(
          liar,
          Files.readString(Path.of("instruments/supply-simulated.yaml"))
              .replace("VOLT:PROT {volts}", "VOLT:GUARD {volts}"));
      RailglowProcess trial = bench(served.supplyAddress(), "--supply", liar.toString());
      assertEquals(2, trial.awaitExit(30), trial.output());
      assertTrue(words(trial).contains("FAILS over-voltage protection: -113"), trial.output());
      assertFalse(trial.output().contains("name: my bench"), trial.output());
      assertNeverOn(served);
    }
  }

  @Test
  void nothingThereAndSomethingElseThereAreToldApart() throws Exception {
    int free;
    try (ServerSocket socket = new ServerSocket(0)) {
      free = socket.getLocalPort();
    }
    RailglowProcess nothing = bench("tcp://127.0.0.1:" + free);
    assertEquals(2, nothing.awaitExit(30), nothing.output());
    assertTrue(words(nothing).contains("refused the connection: check the port"), nothing.output());

    try (ServerSocket page = new ServerSocket(0)) {
      Thread server = new Thread(() -> answerEach(page), "page");
      server.setDaemon(true);
      server.start();
      RailglowProcess other = bench("tcp://127.0.0.1:" + page.getLocalPort());
      assertEquals(2, other.awaitExit(60), other.output());
      assertTrue(words(other).contains("Something else than a SCPI supply"), other.output());
    }
    RailglowProcess noDevice = bench("serial:" + folder.resolve("none"));
    assertEquals(2, noDevice.awaitExit(30), noDevice.output());
    assertTrue(words(noDevice).contains("There is no serial port"), noDevice.output());
  }

  private static void answerEach(ServerSocket page) {
    while (!page.isClosed()) {
      try (Socket socket = page.accept()) {
        socket.getInputStream().read(new byte[100]);
        socket.getOutputStream().write("HTTP/1.1 400 Bad\r\n".getBytes(StandardCharsets.US_ASCII));
      } catch (IOException e) {
        return;
      }
    }
  }

  @Test
  void offActsByTheAddressAloneEvenWhenTheDescriptorGivenCannotBeRead() throws Exception {
    try (ServedBench served = ServedBench.start(folder)) {
      Path broken = Files.writeString(folder.resolve("broken.yaml"), "name: [\nwire: }");
      switchOn(served.supplyAddress());
      RailglowProcess off =
          RailglowProcess.start("off", served.supplyAddress(), "--supply", broken.toString());
      assertEquals(0, off.awaitExit(30), off.output());
      assertTrue(off.output().contains("broken.yaml"), off.output());
      assertTrue(words(off).contains("is off and proven"), off.output());
      assertEndsOff(served);
    }
  }

  @Test
  void offActsEvenWhenTheDescriptorGivenIsNotThere() throws Exception {
    try (ServedBench served = ServedBench.start(folder)) {
      switchOn(served.supplyAddress());
      RailglowProcess off =
          RailglowProcess.start("off", served.supplyAddress(), "--supply", "nowhere.yaml");
      assertEquals(0, off.awaitExit(30), off.output());
      assertTrue(words(off).contains("there is no descriptor of a supply 'nowhere.yaml'"));
      assertEndsOff(served);
    }
  }

  private static void switchOn(String address) throws IOException {
    String[] parts = address.replace("tcp://", "").split(":");
    try (Socket socket = new Socket(parts[0], Integer.parseInt(parts[1]))) {
      socket
          .getOutputStream()
          .write("VOLT 1;:CURR 1;:OUTP ON;:OUTP?\n".getBytes(StandardCharsets.US_ASCII));
      assertEquals('1', socket.getInputStream().read(), "the output is on");
    }
  }

  private static void assertNeverOn(ServedBench served) throws Exception {
    assertTrue(
        served.truth().stream()
            .filter(e -> HuntOverWiresIT.is(e, "output"))
            .noneMatch(e -> e.get("on").asBoolean()));
  }

  private static void assertEndsOff(ServedBench served) throws Exception {
    List<com.fasterxml.jackson.databind.JsonNode> output =
        served.truth().stream().filter(e -> HuntOverWiresIT.is(e, "output")).toList();
    assertTrue(output.get(0).get("on").asBoolean(), "it was on: " + output);
    assertFalse(output.get(output.size() - 1).get("on").asBoolean(), output.toString());
  }
}
