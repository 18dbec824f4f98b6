package blindlap.wording;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.compute.FindingJson;
import blindlap.plan.BlindLevel;
import blindlap.plan.PlanJson;
import blindlap.review.Analysis;
import blindlap.review.Comparison;
import blindlap.review.DayRecord;
import blindlap.review.Finding;
import blindlap.review.KnownStints;
import blindlap.review.Masks;
import blindlap.review.Sensitivity;
import blindlap.session.MasksRead;
import blindlap.stats.compare.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Over random days of every blind level no sentence says more than that level allows. */
class LevelCapsTest {
  private static final int DAYS = 60;

  /** What only a day may say whose rider did not know what was on. */
  private static final List<String> TOO_STRONG =
      List.of(
          "real and worthwhile",
          "real but small",
          "real, and large",
          "Settled for",
          "settled that they differ",
          "beat chance",
          "No sign of unblinding",
          "proof that the blind held",
          "the waits told",
          "look away",
          "called in",
          "still blind",
          "Look at the result with all ridden laps");

  private static final List<String> CAPS =
      List.of("effort and belief are not excluded", "liking for a label");

  private static DayRecord day(BlindLevel level, long seed) {
    Random random = new Random(seed);
    int setups = seed % 4 == 3 ? 3 : 2;
    DayRecord day = DoubtfulDays.day(random, setups, Optional.of(level));
    if (level != BlindLevel.MASKED) {
      return day;
    }
    List<Integer> mapping = new ArrayList<>(List.of(0, 1, 2).subList(0, setups));
    java.util.Collections.shuffle(mapping, random);
    List<Integer> guess = new ArrayList<>(mapping);
    java.util.Collections.shuffle(guess, random);
    boolean read = seed % 3 > 0;
    return day.with(
        new Masks(
            day.plan(),
            seed % 5 == 0 ? List.of() : guess,
            read ? mapping : List.of(),
            read
                ? Optional.of(seed % 2 == 0 ? MasksRead.From.PHRASE : MasksRead.From.MARKS)
                : Optional.empty()));
  }

  private static List<String> said(Finding finding) {
    FindingText text = new FindingText(finding);
    List<String> said = new ArrayList<>(text.lines());
    said.add(text.lead());
    finding
        .primary()
        .filter(p -> p.verdict().isPresent())
        .ifPresent(p -> said.add(NotebookWords.verdict(finding.day().plan(), false, p, false)));
    return said;
  }

  private static boolean told(Finding finding) {
    return finding
        .primary()
        .flatMap(Comparison::verdict)
        .filter(v -> v == Verdict.DIRECTION_KNOWN || v.settled() && v != Verdict.NO_VARIATION)
        .isPresent();
  }

  @ParameterizedTest
  @EnumSource(BlindLevel.class)
  void noSentenceSaysMoreThanItsLevelAllows(BlindLevel level) {
    int told = 0;
    for (long seed = 0; seed < DAYS; seed++) {
      Finding finding = Analysis.of(day(level, seed));
      List<String> said = said(finding);
      String headline = new FindingText(finding).headline().text();
      String all = String.join("\n", said);
      assertThat(headline).startsWith(LevelWords.label(level));
      assertThat(FindingJson.write(finding))
          .contains("\"level\" : \"" + PlanJson.word(level) + "\"");
      if (level.blind()) {
        assertThat(all).doesNotContain(CAPS).doesNotContain("Unblinded", "label");
      } else {
        assertThat(all).doesNotContain(TOO_STRONG);
        assertThat(all).contains(CAPS.get(level == BlindLevel.MASKED ? 1 : 0));
        assertThat(all).doesNotContain(CAPS.get(level == BlindLevel.MASKED ? 0 : 1));
        if (told(finding) || !finding.many().isEmpty()) {
          told++;
          assertThat(headline).contains(CAPS.get(level == BlindLevel.MASKED ? 1 : 0));
        }
        if (level != BlindLevel.MASKED) {
          assertThat(all).as("covered is never called sealed").doesNotContainIgnoringCase("seal");
        }
      }
      masked(finding, all);
    }
    assertThat(told).isGreaterThanOrEqualTo(level.blind() ? 0 : DAYS / 6);
  }

  /** A label that is known stays known: the result beside is that of the stints before. */
  private static void cameOut(Finding finding, String all) {
    int from = KnownStints.labelsOut(finding.day()).orElse(0);
    assertThat(all.contains("so that a guess of it means nothing")).isEqualTo(from > 0);
    assertThat(all.contains("from then on the rider knew what was on")).isEqualTo(from > 0);
    assertThat(FindingJson.write(finding).contains("\"came_out\" : " + from)).isEqualTo(from > 0);
    assertThat(
            finding.sensitivities().stream()
                .filter(each -> each.kind() == Sensitivity.Kind.BLIND_BROKEN_MASKED)
                .allMatch(
                    each ->
                        each.stints()
                            .equals(
                                IntStream.rangeClosed(from, finding.day().lastStint())
                                    .boxed()
                                    .collect(Collectors.toSet()))))
        .isTrue();
  }

  /** Before the labels are read nothing names a setup; afterwards everything names both. */
  private static void masked(Finding finding, String all) {
    Optional<Masks> masks = finding.day().masks();
    if (masks.isEmpty()) {
      return;
    }
    cameOut(finding, all);
    if (!masks.get().isRead()) {
      assertThat(all).doesNotContain("Shock").contains("has not been read");
      assertThat(FindingJson.write(finding).replaceAll("(?s)\"guessed\" : \\{.*?\\}", ""))
          .doesNotContain("Shock");
      return;
    }
    String first = "Shock " + (char) ('K' + masks.get().read().get(0));
    assertThat(all).contains("X was " + first);
    if (finding.primary().isPresent()) {
      assertThat(all).contains(first + " (X)");
    }
    assertThat(all.contains("which nothing sealed"))
        .isEqualTo(masks.get().from().orElseThrow() == MasksRead.From.MARKS);
    boolean out = KnownStints.labelsOut(finding.day()).isPresent();
    if (masks.get().isGuessed()) {
      assertThat(all.contains("and was right")).isEqualTo(masks.get().right() && !out);
      if (masks.get().right() && !out) {
        assertThat(all)
            .contains(masks.get().committed().setups().size() == 2 ? "p = .50" : "p = .17");
      }
    }
  }

  /** What each level says is said of it alone. */
  @ParameterizedTest
  @EnumSource(BlindLevel.class)
  void theTableOfLevelsNamesEachWithWhatItMaySay(BlindLevel level) {
    assertThat(LevelWords.name(level)).isNotBlank();
    assertThat(LevelWords.proves(level)).endsWith(".");
    assertThat(LevelWords.needs(level)).endsWith(".");
    assertThat(LevelWords.mayBeSaid(level)).endsWith(".");
    assertThat(LevelWords.mayBeSaid(level).contains("Never settled")).isEqualTo(level.shown());
  }
}
