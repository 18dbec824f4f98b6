package blindlap.compute;

import blindlap.plan.PlanJson;
import blindlap.review.TellingFinding;
import blindlap.review.TellingTrial;
import blindlap.session.day.Guess.Sureness;
import blindlap.stats.tell.TellingTrials;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** A telling run as JSON, and the request that gives its numbers again. */
public final class TellingJson {
  private TellingJson() {}

  /**
   * What was declared, what the count says under the names of the calculation {@code telling}, and
   * every trial.
   */
  public static ObjectNode of(TellingFinding finding) {
    TellingTrials declared = finding.declared();
    ObjectNode node = StrictJson.NODES.objectNode();
    node.put("task", Given.word(declared.task()))
        .put("matters", declared.matters())
        .put("declared", declared.number())
        .put("answered", finding.trials().size())
        .put("void", finding.voided())
        .put("null_run", finding.nullRun())
        .put("correct", finding.telling().right());
    ResultFields numbers = new ResultFields();
    TellingCalculations.read(numbers, finding.telling());
    node.setAll(numbers.toJson());
    ArrayNode trials = node.putArray("trials");
    for (TellingTrial trial : finding.trials()) {
      Sureness sureness = trial.sureness();
      trials
          .addObject()
          .put("trial", trial.number())
          .put("differed", trial.differed())
          .put("named", trial.named())
          .put("right", trial.right())
          .put("sureness", sureness == null ? null : PlanJson.word(sureness));
    }
    return node;
  }

  /** The request behind the numbers, for whoever has no session. */
  public static FindingRequests.Named request(TellingFinding finding) {
    ObjectNode request = StrictJson.NODES.objectNode().put("calculation", "telling");
    request
        .putObject("given")
        .put("task", Given.word(finding.declared().task()))
        .put("trials", finding.trials().size())
        .put("correct", finding.telling().right())
        .put("matters", finding.declared().matters());
    return new FindingRequests.Named("telling", "", request.toString());
  }
}
