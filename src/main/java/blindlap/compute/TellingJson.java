package blindlap.compute;

import blindlap.plan.PlanJson;
import blindlap.review.Beside;
import blindlap.review.DayRecord;
import blindlap.review.Edition;
import blindlap.review.Remark;
import blindlap.review.TellingAnalysis;
import blindlap.review.TellingFinding;
import blindlap.review.TellingTrial;
import blindlap.session.day.Guess.Sureness;
import blindlap.stats.tell.TellingTrials;
import blindlap.wording.TellingText;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;

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

  /** A whole telling run: as a finding has it, with what stands beside it. */
  public static String write(TellingAnalysis analysis, Beside beside) {
    DayRecord day = analysis.day();
    ObjectNode root = StrictJson.NODES.objectNode();
    root.put("session", day.session());
    root.put("engine", Engine.version());
    root.put("edition", Edition.CURRENT);
    root.put("order", day.order());
    root.put("count", day.plan().rule().assignments().count());
    root.put("null_run", day.nullRun());
    root.put("blinded", day.plan().blinding().blinded());
    root.put("level", PlanJson.word(day.plan().level()));
    TellingText text = new TellingText(analysis);
    root.put("sentence", text.headline().text());
    root.put("verdict", analysis.finding().telling().verdict().text());
    ObjectNode run = of(analysis.finding());
    root.set("telling_run", run);
    numbers(run.putArray("wrong_fits"), analysis.wrongFits());
    numbers(run.putArray("blind_broken"), analysis.known());
    analysis.without().ifPresent(rest -> run.set("without", count(rest)));
    WaitsJson.put(root, analysis.waits());
    RemarksJson.late(root, day.remarks(Remark.Kind.LATE));
    BesideJson.write(root, beside);
    ArrayNode requests = root.putArray("requests");
    for (FindingRequests.Named named : requests(analysis)) {
      requests
          .addObject()
          .put("about", named.about())
          .put("measure", named.measure())
          .set("request", StrictJson.parse(named.json()));
    }
    return StrictJson.print(root);
  }

  private static void numbers(ArrayNode node, List<Integer> trials) {
    trials.forEach(node::add);
  }

  /** All requests of a run. */
  public static List<FindingRequests.Named> requests(TellingAnalysis analysis) {
    List<FindingRequests.Named> requests = new ArrayList<>();
    requests.add(request(analysis.finding()));
    analysis.without().ifPresent(rest -> requests.add(request("telling.without", rest)));
    if (analysis.waits().test().isPresent()) {
      DayRecord day = analysis.day();
      ObjectNode request = StrictJson.NODES.objectNode().put("calculation", "waits");
      ObjectNode given = request.putObject("given");
      given.set("rule", FindingRequests.rule(day.plan().rule()));
      given.put("order", day.order());
      ArrayNode waits = given.putArray("waits");
      for (double wait : analysis.waits().seconds(day.plan().stints())) {
        FindingRequests.number(waits, wait);
      }
      requests.add(new FindingRequests.Named("waits", "", request.toString()));
    }
    return requests;
  }

  private static ObjectNode count(TellingFinding finding) {
    ObjectNode node = StrictJson.NODES.objectNode();
    node.put("answered", finding.trials().size()).put("correct", finding.telling().right());
    ResultFields numbers = new ResultFields();
    TellingCalculations.read(numbers, finding.telling());
    node.setAll(numbers.toJson());
    return node;
  }

  /** The request behind the numbers, for whoever has no session. */
  public static FindingRequests.Named request(TellingFinding finding) {
    return request("telling", finding);
  }

  private static FindingRequests.Named request(String about, TellingFinding finding) {
    ObjectNode request = StrictJson.NODES.objectNode().put("calculation", "telling");
    request
        .putObject("given")
        .put("task", Given.word(finding.declared().task()))
        .put("trials", finding.trials().size())
        .put("correct", finding.telling().right())
        .put("matters", finding.declared().matters());
    return new FindingRequests.Named(about, "", request.toString());
  }
}
