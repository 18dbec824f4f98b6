package blindlap.compute;

import blindlap.recording.Pass;
import blindlap.recording.Passes;
import blindlap.recording.Track;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** A recorder's passes of gates as JSON. */
public final class PassesJson {
  private PassesJson() {}

  /**
   * @param gates how many were given
   * @return {@code points}, {@code passes} and {@code laps} in seconds; a lap with an end in a gap
   *     is null
   */
  public static String of(Track track, Passes passes, int gates) {
    ObjectNode root = StrictJson.NODES.objectNode();
    root.put("points", track.fixes().size());
    ArrayNode list = root.putArray("passes");
    for (Pass pass : passes.passes()) {
      ObjectNode node = list.addObject();
      if (gates > 1) {
        node.put("gate", pass.gate() + 1);
      }
      node.put("utc", track.at(pass.seconds()).toString());
      node.put("seconds", pass.seconds());
      node.put("direction", pass.direction());
      node.put("uncertainty", pass.uncertainty());
      node.put("doubtful", pass.gap() ? "gap" : null);
      node.put("speed", pass.speed());
    }
    ArrayNode laps = root.putArray("laps");
    ArrayNode sectors = gates > 2 ? root.putArray("sectors") : StrictJson.NODES.arrayNode();
    for (Passes.Lap lap : passes.laps()) {
      if (lap.known()) {
        laps.add(lap.total());
      } else {
        laps.addNull();
      }
      ArrayNode ofLap = sectors.addArray();
      for (double each : lap.seconds()) {
        ofLap.add(each);
      }
    }
    return root.toPrettyString();
  }
}
