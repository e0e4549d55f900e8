package railglow.journal;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import railglow.pulse.PulseOrder;

/** Fills in what headers did not say in earlier versions. Stateless. */
final class OlderHeader {
  private OlderHeader() {}

  static void complete(ObjectNode header) {
    if (header.path("sequence") instanceof ObjectNode sequence && !sequence.has("order")) {
      sequence.put("order", PulseOrder.SQUARE.name());
    }
    if (header.path("detection") instanceof ObjectNode detection && !detection.has("coded")) {
      detection.put("coded", false);
    }
    if (header.path("camera") instanceof ObjectNode camera && !camera.has("saturationValue")) {
      camera.put("saturationValue", "Infinity");
    }
    for (JsonNode cycle : header.path("cycles")) {
      if (cycle instanceof ObjectNode object && !object.has("inverted")) {
        object.put("inverted", false);
      }
    }
  }
}
