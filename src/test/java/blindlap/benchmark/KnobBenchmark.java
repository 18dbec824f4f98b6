package blindlap.benchmark;

import blindlap.desk.BundledProtocols;
import blindlap.desk.PlanPreview;
import blindlap.exchange.Protocols;
import blindlap.plan.DayAnswers;
import blindlap.plan.Plans;
import blindlap.plan.Rule;
import blindlap.plan.RuleBook;
import java.util.List;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Setup;

/**
 * What happens between turning a knob of the Plan page and its answer by formula: the draft is read
 * and checked, and the day with its whole curve is worked out. It may take 100 ms.
 */
public class KnobBenchmark extends InMilliseconds {
  /** Rule and stints. */
  @Param({
    "blocks-of-four/16",
    "blocks-of-four/24",
    "pairs/24",
    "eight-stints/8",
    "limited-runs/24",
    "whole-day/24"
  })
  public String knob = "";

  private final Protocols protocols = BundledProtocols.load();
  private final DayAnswers kept = new DayAnswers(() -> List.copyOf(protocols.all()));
  private String draft = "";

  /** Types the draft. */
  @Setup
  public void type() {
    String[] parts = knob.split("/", 2);
    draft(Plans.text("timetable: null\nprotocol: " + parts[0] + "\nstints: " + parts[1] + "\n"));
  }

  void draft(String typed) {
    draft = typed;
  }

  /** Another noise or worthwhile difference: what depends on the rule is known. */
  @Benchmark
  public PlanPreview sameRule() {
    return PlanPreview.of(draft, protocols, kept);
  }

  /** A rule that was not looked at before. */
  @Benchmark
  public PlanPreview newRule() {
    return PlanPreview.of(
        draft,
        protocols,
        DayAnswers.unprepared(() -> List.copyOf(protocols.all()), new RuleBook(Rule::planned)));
  }
}
