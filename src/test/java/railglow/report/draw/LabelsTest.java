package railglow.report.draw;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

class LabelsTest {
  private static final Rectangle2D PICTURE = new Rectangle2D.Double(0, 30, 600, 400);

  @Property(tries = 200, seed = "5")
  void noTwoLabelsOverlapAndNoneLeavesThePicture(
      @ForAll @IntRange(min = 1, max = 60) int count, @ForAll long seed) {
    Random random = new Random(seed);
    Labels labels = new Labels(PICTURE.getX(), PICTURE.getY(), 600, 400);
    Rectangle2D kept = new Rectangle2D.Double(200, 200, 80, 80);
    labels.keepFree(200, 200, 80, 80);
    List<Labels.Placed> placed = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      Rectangle2D thing =
          new Rectangle2D.Double(
              random.nextDouble() * 590,
              30 + random.nextDouble() * 390,
              random.nextDouble() * 60,
              random.nextDouble() * 60);
      labels.place(thing, 200, 20 + random.nextInt(60), 18).ifPresent(placed::add);
    }
    assertFalse(placed.isEmpty());
    for (int i = 0; i < placed.size(); i++) {
      Rectangle2D box = placed.get(i).box();
      assertTrue(PICTURE.contains(box), box + " leaves the picture");
      assertFalse(box.intersects(kept), box + " covers what was kept free");
      for (int k = 0; k < placed.size(); k++) {
        if (k != i) {
          assertFalse(box.intersects(placed.get(k).box()), "labels " + i + " and " + k);
          assertFalse(box.intersectsLine(placed.get(k).leader()), "a leader crosses label " + i);
        }
      }
    }
  }

  @Property(tries = 50, seed = "6")
  void aLabelAloneStandsRightAboveItsThing(@ForAll @IntRange(min = 60, max = 400) int x) {
    Rectangle2D thing = new Rectangle2D.Double(x, 200, 40, 20);
    Rectangle2D box = new Labels(0, 30, 600, 400).place(thing, 100, 50, 18).orElseThrow().box();
    assertEquals(thing.getCenterX(), box.getCenterX(), 1e-9);
    assertEquals(196, box.getMaxY(), 1e-9);
  }

  @Property(tries = 20, seed = "7")
  void whereThereIsNoRoomThereIsNoLabel(@ForAll @IntRange(min = 1, max = 20) int width) {
    Labels labels = new Labels(0, 0, 100, 100);
    labels.keepFree(0, 0, 100, 100);
    assertEquals(
        Optional.empty(), labels.place(new Rectangle2D.Double(40, 40, 10, 10), 500, width, 10));
  }
}
