package blindlap.screen.review;

import static blindlap.screen.part.ReviewParts.WORDS;
import static blindlap.screen.part.ReviewParts.lines;
import static blindlap.screen.part.ReviewParts.section;
import static blindlap.screen.part.ReviewParts.words;

import blindlap.screen.part.AnswerSentence;
import blindlap.screen.part.Caution;
import blindlap.screen.part.Lead;
import blindlap.screen.part.Look;
import blindlap.screen.part.MarginNote;
import blindlap.screen.part.PageGrid;
import blindlap.screen.part.PlotView;
import blindlap.wording.Headline;
import blindlap.wording.TellingAxisWords;
import blindlap.wording.TellingWords;
import blindlap.wording.day.Words;
import java.util.List;
import javafx.scene.layout.VBox;

/**
 * A telling run on the Review page: whether the rider can tell, every trial, and right answers
 * against chance; in the margin what was said before, why guessing gives as many, and how sure.
 */
final class TellingReviewView {
  private final Look look;
  private final TellingReview review;

  TellingReviewView(Look look, TellingReview review) {
    this.look = look;
    this.review = review;
  }

  /** Adds it, up to what every review ends with. */
  void addTo(PageGrid page) {
    TellingWords words = review.words();
    page.add(
        head(),
        new MarginNote(WORDS.say("telling.said"), said()),
        new MarginNote(words.whyTitle(), words.why()),
        new MarginNote(words.sureTitle(), String.join(" ", words.sure())));
    VBox strip = titled(TellingWords.stripTitle(), new PlotView(look, review.strip()));
    strip.setId("trials");
    page.add(
        strip,
        new MarginNote(words.notSaidTitle(), words.notSaid()),
        new MarginNote(words.voidsTitle(), words.voids()));
    VBox axis = titled(TellingAxisWords.title(), new PlotView(look, review.axis()));
    words.distance().ifPresent(line -> axis.getChildren().add(words(line, "note", "second")));
    page.add(axis, new MarginNote(WORDS.say("seal"), String.join("\n", review.seal())));
    if (!review.waits().isEmpty()) {
      page.add(section("blind", review.waits()));
    }
    if (!review.events().isEmpty()) {
      page.add(section("events.telling", review.events()));
    }
  }

  private VBox head() {
    AnswerSentence answer = new AnswerSentence(look, TellingWords.question());
    Headline headline = review.headline();
    answer.say(headline.before(), headline.phrase(), headline.after());
    return new VBox(
        12,
        words(review.running(), "note", "second"),
        answer,
        new Lead(review.lead()),
        lines(review.circumstances()),
        new Caution(WORDS.say("caution"), Words.of("cautions").say("trust")));
  }

  private String said() {
    List<String> said = review.said();
    return said.isEmpty() ? WORDS.say("expected.none") : String.join("\n", said);
  }

  private static VBox titled(String title, PlotView picture) {
    return new VBox(10, words(title, "h2"), picture);
  }
}
