package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.exchange.Protocols;
import blindlap.fault.Problem;
import blindlap.fault.RuleFault;
import blindlap.plan.DayAnswers;
import blindlap.plan.EarlierNoise;
import blindlap.plan.Plan;
import blindlap.plan.PlanCheck;
import blindlap.plan.Rule;
import blindlap.plan.RuleBook;
import blindlap.stats.order.Assignments;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Who makes the sets of orders, how often and on which thread; counted, not timed. */
class RuleMadeOnceTest {
  private record Made(Rule rule, Thread by) {}

  private final List<Made> made = Collections.synchronizedList(new ArrayList<>());
  private final RuleBook book = new RuleBook(this::make);
  private final Protocols protocols = BundledProtocols.load();
  private final DayAnswers answers =
      DayAnswers.unprepared(() -> List.copyOf(protocols.all()), book);

  private Assignments make(Rule rule) {
    made.add(new Made(rule, Thread.currentThread()));
    return rule.planned();
  }

  private static String plan(int longest, int stints) {
    String rule = "rule: {setups: 2, stints: %2$d, max_run: %1$d}%nstints: %2$d";
    return TestDay.EIGHT
        .replaceFirst("(?m)^timetable: .*$", "")
        .replace("protocol: eight-stints\nstints: 8", rule.formatted(longest, stints));
  }

  private PlanPreview atOnce(String text) {
    return PlanPreview.atOnce(text, protocols, answers, plan -> EarlierNoise.NONE);
  }

  private static void elsewhere(Runnable work) throws InterruptedException {
    Thread worker = new Thread(work);
    worker.start();
    worker.join();
  }

  @Test
  void aLargeRuleIsNotMadeByWhoeverAsksAtOnce() throws Exception {
    PlanPreview preview = atOnce(plan(11, 36));
    Plan plan = preview.plan().orElseThrow();
    assertThat(preview.judged()).isFalse();
    assertThat(preview.answer()).isEmpty();
    assertThat(answers.takesLong(plan)).isTrue();
    assertThat(made).isEmpty();
    elsewhere(() -> book.judge(plan.rule()));
    PlanPreview then = atOnce(plan(11, 36));
    assertThat(then.judged()).isTrue();
    assertThat(then.problems()).isEmpty();
    assertThat(then.answer()).isEmpty();
    elsewhere(() -> answers.quick(plan));
    PlanPreview last = atOnce(plan(11, 36));
    assertThat(last.answer()).isPresent();
    assertThat(made).extracting(Made::by).doesNotContain(Thread.currentThread());
    assertThat(made).extracting(Made::rule).contains(plan.rule()).doesNotHaveDuplicates();
  }

  @Test
  void judgingAndAnsweringASmallRuleMakesEachSetOnce() throws Exception {
    PlanPreview preview = atOnce(plan(3, 16));
    Plan plan = preview.plan().orElseThrow();
    assertThat(preview.judged()).isTrue();
    assertThat(preview.answer()).isPresent();
    assertThat(PlanCheck.problems(plan, book)).isEmpty();
    assertThat(atOnce(plan(3, 16)).answer()).isPresent();
    assertThat(made).extracting(Made::rule).contains(plan.rule()).doesNotHaveDuplicates();
  }

  @Test
  void aRuleThatIsRefusedForItsSizeIsTriedOnce() throws Exception {
    PlanPreview preview = atOnce(plan(29, 60));
    assertThat(preview.judged()).isFalse();
    assertThat(made).isEmpty();
    Rule rule = preview.plan().orElseThrow().rule();
    elsewhere(() -> book.judge(rule));
    PlanPreview then = atOnce(plan(29, 60));
    assertThat(then.judged()).isTrue();
    assertThat(then.problems()).extracting(Problem::fault).contains(RuleFault.TOO_LARGE);
    assertThat(answers.takesLong(then.plan().orElseThrow())).isFalse();
    assertThat(PlanCheck.problems(then.plan().orElseThrow(), book)).isNotEmpty();
    assertThat(made.stream().filter(m -> m.rule().equals(rule))).hasSize(1);
  }

  @Test
  void aSmallDayWhoseLongestComparedDayIsLargeTakesLong() {
    assertThat(book.atOnce(new Rule(4, 12, 12, List.of(), 10, null))).isTrue();
    assertThat(book.atOnce(new Rule(4, 24, 24, List.of(), 10, null))).isFalse();
    assertThat(made).isEmpty();
  }
}
