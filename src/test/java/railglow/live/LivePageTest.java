package railglow.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import railglow.live.sound.Sound;
import railglow.observed.OutputState;
import railglow.run.RunEnding;
import railglow.safety.Stop;
import railglow.safety.StopCause;
import railglow.time.SystemClock;

/** What the page is told, asked for in plain HTTP. */
@Timeout(20)
class LivePageTest {
  private final List<String> stops = new CopyOnWriteArrayList<>();
  private LivePage page;
  private PlainClient client;

  @BeforeEach
  void start() throws IOException {
    page = PretendedRun.page(stops::add);
    client = new PlainClient(page);
  }

  @AfterEach
  void end() {
    page.close();
  }

  @Test
  void aTakenPortGivesTheNextFreeOne() throws IOException {
    try (LivePage second =
        LivePage.start(
            PretendedRun.facts(),
            LiveDoor.ofThisMachine(page.port()),
            SystemClock.INSTANCE,
            who -> {})) {
      assertNotEquals(page.port(), second.port());
    }
  }

  @Test
  void aViewerGetsWhatWentBeforeAndThenOnlyWhatIsNew() throws IOException {
    assertFalse(page.isWatched());
    page.onProgress(PretendedRun.progress(1, OutputState.PROVEN_OFF, null));
    page.onMessage("the clip gets warm");
    JsonNode first = client.json("/state?");
    assertEquals(1, first.get("sampleCount").asInt());
    assertEquals("[0.0,0.0,0.0,0.3]", withoutTime(first.at("/samples/0")));
    assertEquals("the clip gets warm", first.at("/messages/0").asText());
    assertTrue(page.isWatched());
    page.onProgress(PretendedRun.progress(2, OutputState.ON, PretendedRun.source(0.2)));
    JsonNode next = client.json("/state?seen=1&");
    assertEquals(1, next.get("samples").size(), "only the new one");
    assertEquals("[1.0,0.145,0.145,0.3]", withoutTime(next.at("/samples/0")));
    assertEquals("ON", next.get("output").asText());
    assertEquals(0.5, client.json("/facts?").at("/limits/1/limit").asDouble());
    page.onEnded(
        new RunEnding(
            new Stop(StopCause.OPERATOR_REQUEST, 5, "STOP on the live page"),
            OutputState.PROVEN_OFF,
            ""));
    assertTrue(client.json("/brief?").at("/ended/proven").asBoolean());
  }

  private static String withoutTime(JsonNode sample) {
    return sample.toString().replaceFirst("\\[[^,]+,", "[");
  }

  @Test
  void historyIsKeptToTwoMinutesAndAViewerOfALongerOneGetsWhatIsLeft() throws IOException {
    for (int i = 0; i < 1300; i++) {
      page.onProgress(PretendedRun.progress(i * 0.1, OutputState.ON, null));
    }
    assertEquals(1200, client.json("/state?").get("samples").size());
    assertEquals(1200, client.json("/state?seen=50&").get("samples").size());
    assertEquals(10, client.json("/state?seen=1290&").get("samples").size());
    assertEquals(1200, client.json("/state?seen=999999&").get("samples").size());
    assertEquals(1200, client.json("/state?seen=-7x&").get("samples").size());
  }

  @Test
  void aProgramThatHasNothingNewToSayOfAnOutputThatIsOnSaysSinceWhen() throws IOException {
    page.onProgress(PretendedRun.progress(1, OutputState.ON, null));
    double first = client.json("/brief?").get("silentSeconds").asDouble();
    double later = client.json("/brief?").get("silentSeconds").asDouble();
    assertTrue(first >= 0 && later > first, first + " then " + later);
    page.onBetween(OutputState.PROVEN_OFF);
    assertEquals(0, client.json("/brief?").get("silentSeconds").asDouble());
  }

  @Test
  void aHandsFreeSessionIsOnePageThroughAllItsRuns() throws IOException {
    page.onLook(PretendedRun.look(6, List.of(PretendedRun.source(0.01))));
    page.onTouches(
        new LiveTouches(
            List.of(new LiveTouches.Row("1 amber", "C37, 420 mK", "140 mW", "least")), List.of()));
    page.onStage(LiveStage.FOUND, "touch 1, amber", "C37, 420 mK");
    page.onSound(Sound.FOUND);
    assertEquals(1, client.json("/state?").get("sources").size());
    page.onBegun();
    JsonNode next = client.json("/state?");
    assertEquals(0, next.get("sources").size(), "nothing is certain at the new point");
    assertEquals("C37, 420 mK", next.at("/touches/rows/0/found").asText());
    assertEquals(204, client.get("/picture/difference?token=" + client.token()).code());
    JsonNode brief = client.json("/brief?");
    assertEquals("HX-12, rail 3V3, touch 1, amber", brief.get("point").asText());
    assertEquals("FOUND", brief.at("/sounds/0").asText());
    assertEquals(1, brief.get("soundsPlayed").asInt());
    assertEquals(784, client.json("/sounds?").at("/scores/FOUND/0/hertz").asDouble());
  }

  @Test
  void picturesCarryTheirSizeScaleAndLevels() throws IOException {
    assertEquals(204, client.get("/picture/difference?token=" + client.token()).code());
    page.onLook(PretendedRun.look(5, List.of()));
    ByteBuffer packet =
        ByteBuffer.wrap(client.get("/picture/difference?token=" + client.token()).body())
            .order(ByteOrder.LITTLE_ENDIAN);
    assertEquals(1, packet.getInt(0));
    assertEquals(256, packet.getShort(4));
    assertEquals(192, packet.getShort(6));
    assertEquals(-0.2f, packet.getFloat(8), 1e-6);
    assertEquals(0.2f, packet.getFloat(12), 1e-6);
    assertEquals(254, packet.get(16 + 114 * 256 + 164) & 0xFF, "the warmest pixel");
    assertEquals(127, packet.get(16) & 0xFF, "no difference");
    assertEquals(16 + 256 * 192, packet.limit());
  }

  @Test
  void temperaturesAreScaledBetweenTheirEnds() {
    byte[] packet =
        LivePicture.ofTemperatures(
            7, PretendedRun.frame(7, 29000, 30000).samples(), PretendedRun.facts());
    ByteBuffer view = ByteBuffer.wrap(packet).order(ByteOrder.LITTLE_ENDIAN);
    assertEquals(29000 * 0.01 - 273.15, view.getFloat(8), 0.3);
    assertEquals(30000 * 0.01 - 273.15, view.getFloat(12), 0.3);
    assertTrue((view.get(16) & 0xFF) < 5 && (view.get(16 + 255) & 0xFF) > 250);
  }
}
