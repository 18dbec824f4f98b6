package blindlap.compute;

import blindlap.review.Remark;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;

/** Remarks on a day that stand beside its finding, as JSON. */
final class RemarksJson {
  private RemarksJson() {}

  /** Values that machines recorded apart: the one set aside beside the one that counts. */
  static void twice(ObjectNode root, List<Remark> remarks) {
    if (remarks.isEmpty()) {
      return;
    }
    ArrayNode twice = root.putArray("two_values");
    for (Remark remark : remarks) {
      twice
          .addObject()
          .put("measure", remark.about())
          .put("stint", remark.stint())
          .put("lap", remark.lap())
          .put("counts", remark.value())
          .put("set_aside", remark.before())
          .put("record_of", remark.who())
          .put("written_in", remark.words());
    }
  }

  /** What came after the other side had closed: kept, and not applied. */
  static void late(ObjectNode root, List<Remark> remarks) {
    if (remarks.isEmpty()) {
      return;
    }
    ArrayNode late = root.putArray("late");
    for (Remark remark : remarks) {
      late.addObject()
          .put("entry", remark.about())
          .put("stint", remark.stint())
          .put("lap", remark.lap())
          .put("measure", remark.before())
          .put("value", remark.value())
          .put("reason", remark.words())
          .put("written_in", remark.who());
    }
  }
}
