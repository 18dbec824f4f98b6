package blindlap.compute;

import blindlap.review.Finding;
import blindlap.review.RecorderFinding;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;

/** What recorders leave open, and how watches agree with them, as JSON. */
final class RecorderJson {
  private RecorderJson() {}

  /** Nothing where no recording times anything. */
  static void put(ObjectNode root, Finding finding) {
    List<RecorderFinding> all = RecorderFinding.of(finding);
    if (all.isEmpty()) {
      return;
    }
    ArrayNode recorder = root.putArray("recorder");
    for (RecorderFinding found : all) {
      ObjectNode node = recorder.addObject();
      node.put("measure", found.measure().name());
      node.put("counts", found.measure().recorded() ? "recording" : "watch");
      node.put("laps", found.laps());
      node.put("missing", found.missing());
      if (found.laps() > 0) {
        node.put("uncertainty", found.uncertainty());
      }
      found.share().ifPresent(share -> node.put("share_of_noise", share));
      found
          .agreement()
          .ifPresent(
              agreement ->
                  node.putObject("agreement")
                      .put("laps", found.pairs())
                      .put("bias", agreement.bias())
                      .put("sd", agreement.sd())
                      .put("low", agreement.limits().low())
                      .put("high", agreement.limits().high()));
    }
  }
}
