package blindlap.wording;

import blindlap.plan.Plan;
import blindlap.review.Finding;
import blindlap.review.Handling;
import blindlap.review.Waits;
import blindlap.stats.tell.WaitTest;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Whether the waits told, and which handlings took longer than planned. */
final class WaitWords {
  private static final Words WORDS = FindingWords.WORDS;

  private final Waits waits;
  private final Plan plan;

  WaitWords(Finding finding) {
    this(finding.day().plan(), finding.waits());
  }

  WaitWords(Plan plan, Waits waits) {
    this.waits = waits;
    this.plan = plan;
  }

  /** The answer first, then what was left out, then every overrun; nothing if nothing is known. */
  List<String> lines() {
    List<String> lines = new ArrayList<>();
    waits.test().map(this::told).ifPresent(lines::add);
    waits.untested().map(this::untested).ifPresent(lines::add);
    left(lines, Waits.Left.REST);
    left(lines, Waits.Left.MISHAP);
    waits.overruns().forEach(each -> lines.add(overrun(each)));
    return lines;
  }

  private String told(WaitTest test) {
    boolean flagged =
        test.kind().flagged() || test.setup().filter(WaitTest.BySetup::flagged).isPresent();
    String kind =
        WORDS.say(
            test.kind().seconds() < 0 ? "waits.kind.less" : "waits.kind.more",
            size(test.kind().seconds()),
            Figures.p(test.kind().midP()));
    String both =
        test.setup()
            .map(
                s ->
                    WORDS.say(
                        "waits.both",
                        kind,
                        WORDS.say(
                            "waits.setup",
                            plan.setups().get(s.slowest()).name(),
                            size(s.seconds()),
                            plan.setups().get(s.quickest()).name(),
                            Figures.p(s.midP()))))
            .orElse(kind);
    return WORDS.say(flagged ? "waits.flagged" : "waits.held", both, test.waits());
  }

  private static String size(double seconds) {
    double size = Math.abs(seconds);
    return WORDS.say("waits.seconds", Figures.number(size, size < 10 ? 1 : 0));
  }

  private String untested(WaitTest.Untested why) {
    return switch (why) {
      case TOO_FEW -> WORDS.say("waits.too.few", waits.counted(), WaitTest.FEWEST);
      case ONE_KIND -> WORDS.say("waits.one.kind");
    };
  }

  private void left(List<String> lines, Waits.Left why) {
    List<Integer> stints =
        waits.leftOut().stream()
            .filter(each -> each.left().filter(why::equals).isPresent())
            .map(each -> each.handling().stint())
            .toList();
    if (!stints.isEmpty()) {
      lines.add(WORDS.say("waits.left." + why, StintList.words(stints)));
    }
  }

  private static String overrun(Waits.Timed each) {
    Handling handling = each.handling();
    @Nullable String mishap = handling.mishap();
    String said =
        mishap == null
            ? WORDS.say("waits.no.mishap")
            : mishap.isBlank()
                ? WORDS.say("waits.mishap")
                : WORDS.say("waits.mishap.words", mishap);
    return WORDS.say(
        "waits.overrun",
        StintList.words(List.of(handling.stint())),
        clock(handling.took()),
        clock(handling.given()),
        WORDS.say(each.real() ? "waits.real" : "waits.dummy"),
        said);
  }

  private static String clock(@Nullable BigDecimal seconds) {
    return seconds == null ? "–" : Figures.time(seconds.doubleValue(), 0);
  }
}
