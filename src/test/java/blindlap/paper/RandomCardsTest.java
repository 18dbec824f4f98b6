package blindlap.paper;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Reviews;
import blindlap.plan.BlindLevel;
import blindlap.plot.CardFormat;
import blindlap.plot.surface.Face;
import blindlap.plot.surface.Weight;
import blindlap.review.Analysis;
import blindlap.review.Beside;
import blindlap.review.Finding;
import blindlap.review.QuestionHistory;
import blindlap.session.SessionState;
import blindlap.session.day.Step;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The card of any day that was ridden, argued about, opened and amended. */
class RandomCardsTest {
  /** More with {@code -Drandom.cards=200}. */
  private static final int DAYS = Integer.getInteger("random.cards", 6);

  private static final Pattern WORDS =
      Pattern.compile(
          "<text x=\"([-0-9.]+)\" y=\"([-0-9.]+)\" font-size=\"([0-9.]+)\" font-weight=\"(\\d+)\""
              + " text-anchor=\"(\\w+)\"[^>]*>([^<]*)<");

  private static final QuestionHistory REPEAT =
      new QuestionHistory(
          List.of(
              new QuestionHistory.Past(
                  "116a8205-dc02-453f-8766-4417c3052ead",
                  LocalDate.of(2026, 11, 7),
                  "R. Lind",
                  "Quarry loop",
                  Step.UNSEALED,
                  "",
                  "lap time",
                  QuestionHistory.Told.SEALED,
                  Optional.empty(),
                  true,
                  true,
                  BlindLevel.HELPER,
                  false,
                  Optional.empty())));

  static LongStream seeds() {
    return LongStream.rangeClosed(1, DAYS);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void everyCardNamesWhatSpeaksAgainstItAndHoldsItsWords(long seed) {
    SessionState state = RandomReportsTest.opened(seed);
    Finding finding = Analysis.of(Reviews.day(state));
    Beside beside = new Beside(REPEAT, Optional.empty(), Optional.empty());
    Map<String, byte[]> files = CardFiles.of(state, finding, beside, seed % 2 == 0);
    String text = part(files, ".txt");
    assertThat(text)
        .contains("A repeat, decided after seeing a result.")
        .contains("Amended after the opening.")
        .doesNotContain("Ridden blind, order drawn by lot and sealed.")
        .contains("rder drawn by lot");
    if (finding.day().nullRun()) {
      assertThat(text).contains("Null run: one setup was on throughout");
    }
    if (!finding.day().blindBroken().isEmpty() && state.plan().level().blind()) {
      assertThat(text).contains("The blind was broken in stint 2.");
    }
    if (finding.day().cutShort()) {
      assertThat(text).contains("Cut short: the day ended after stint ");
    }
    for (CardFormat format : CardFormat.values()) {
      inside(part(files, "-" + format.width() + "x" + format.height() + ".svg"), format);
    }
  }

  private static String part(Map<String, byte[]> files, String end) {
    return files.entrySet().stream()
        .filter(file -> file.getKey().endsWith(end))
        .map(file -> new String(file.getValue(), StandardCharsets.UTF_8))
        .findFirst()
        .orElseThrow();
  }

  private static void inside(String svg, CardFormat format) {
    List<MatchResult> words = WORDS.matcher(svg).results().toList();
    assertThat(words).hasSizeGreaterThan(15);
    for (MatchResult each : words) {
      double x = Double.parseDouble(each.group(1));
      double y = Double.parseDouble(each.group(2));
      double size = Double.parseDouble(each.group(3));
      Weight weight =
          each.group(4).equals("700")
              ? Weight.BOLD
              : each.group(4).equals("600") ? Weight.SEMIBOLD : Weight.REGULAR;
      String plain =
          each.group(6)
              .replace("&lt;", "<")
              .replace("&gt;", ">")
              .replace("&quot;", "\"")
              .replace("&amp;", "&");
      double room = new Face(weight, size).room(plain);
      double left =
          switch (each.group(5)) {
            case "middle" -> x - room / 2;
            case "end" -> x - room;
            default -> x;
          };
      assertThat(left).as(plain).isGreaterThanOrEqualTo(-1);
      if (size < 24) {
        // The serif of answer and question is measured in FindingCardTest.
        assertThat(left + room).as(plain).isLessThanOrEqualTo(format.width() + 1);
      }
      assertThat(y).as(plain).isBetween(size / 2, format.height() - 1.0);
    }
  }
}
