package blindlap.compute;

import blindlap.recording.Pass;
import blindlap.recording.Passes;
import blindlap.recording.Track;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.jspecify.annotations.Nullable;

/** A recorder's passes of gates as JSON. */
public final class PassesJson {
  private PassesJson() {}

  /**
   * @return {@code points}, {@code passes} and {@code laps} in seconds; a lap with an end in a gap
   *     is null
   */
  public static String of(Track track, Passes passes) {
    ObjectNode root = StrictJson.NODES.objectNode();
    root.put("points", track.fixes().size());
    ArrayNode list = root.putArray("passes");
    for (Pass pass : passes.passes()) {
      ObjectNode node = list.addObject();
      node.put("utc", track.at(pass.seconds()).toString());
      node.put("seconds", pass.seconds());
      node.put("direction", pass.direction());
      node.put("uncertainty", pass.uncertainty());
      node.put("doubtful", doubt(pass));
    }
    ArrayNode laps = root.putArray("laps");
    for (Passes.Lap lap : passes.laps()) {
      if (lap.known()) {
        laps.add(lap.total());
      } else {
        laps.addNull();
      }
    }
    return root.toPrettyString();
  }

  private static @Nullable String doubt(Pass pass) {
    return pass.gap() ? "gap" : pass.slow() ? "slow" : null;
  }
}
