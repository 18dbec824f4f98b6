package blindlap.screen.review;

import blindlap.desk.Reviews;
import blindlap.picture.TellingPictures;
import blindlap.plan.Plan;
import blindlap.plot.surface.Drawing;
import blindlap.review.Beside;
import blindlap.review.TellingAnalysis;
import blindlap.session.SessionState;
import blindlap.wording.AmendmentWords;
import blindlap.wording.EditionWords;
import blindlap.wording.ExpectedWords;
import blindlap.wording.Headline;
import blindlap.wording.HistoryWords;
import blindlap.wording.TellingText;
import blindlap.wording.TellingWords;
import java.util.ArrayList;
import java.util.List;

/**
 * Everything the Review page shows of a telling run, in words and drawings.
 *
 * @param running what is told apart, trail, rider and day
 * @param headline the answer
 * @param lead what it means
 * @param circumstances what must be known first: null run, early end, broken blind, wrong fits
 * @param words titles and texts of the margin
 * @param strip every trial, lap by lap
 * @param axis right answers against chance
 * @param said what the people of the day said before
 * @param events departures, settings as measured, and what else was said
 * @param waits whether the waits told
 * @param method how the count is read
 * @param requests how each number was computed
 * @param history other sessions of the question
 * @param amendments what was added after unsealing
 * @param seal both fingerprints and that they match
 */
public record TellingReview(
    String running,
    Headline headline,
    String lead,
    List<String> circumstances,
    TellingWords words,
    Drawing strip,
    Drawing axis,
    List<String> said,
    List<String> events,
    List<String> waits,
    List<String> method,
    List<ReviewView.How> requests,
    List<String> history,
    List<String> amendments,
    List<String> seal) {

  static TellingReview of(SessionState state, TellingAnalysis analysis, Beside beside) {
    Plan plan = state.plan();
    TellingText text = new TellingText(analysis);
    List<String> circumstances = new ArrayList<>(text.underVerdict(beside));
    circumstances.addAll(text.circumstances());
    AmendmentWords.mark(state).ifPresent(circumstances::add);
    return new TellingReview(
        String.join(" · ", plan.title(), plan.trail(), plan.rider(), plan.day().toString()),
        text.headline(),
        text.lead(),
        circumstances,
        text.words(),
        TellingPictures.strip(analysis.finding(), text.words()),
        TellingPictures.axis(analysis.finding(), text.words()),
        text.expected(
            state.expectations().stream()
                .map(e -> new ExpectedWords.Expectation(e.who().name(), e.text()))
                .toList()),
        events(text),
        text.waits(),
        method(text, beside),
        Reviews.how(analysis).stream()
            .map(how -> new ReviewView.How(how.about(), how.request()))
            .toList(),
        HistoryWords.lines(beside.history()),
        AmendmentWords.lines(state),
        ReviewView.seal(state));
  }

  private static List<String> events(TellingText text) {
    List<String> lines = new ArrayList<>(text.deviations());
    lines.addAll(text.parity());
    lines.addAll(text.record());
    text.measures().ifPresent(lines::add);
    return lines;
  }

  private static List<String> method(TellingText text, Beside beside) {
    List<String> lines = new ArrayList<>(text.method());
    lines.add(TellingText.limits());
    lines.add(EditionWords.both(beside.edition()));
    EditionWords.look(beside).ifPresent(lines::add);
    return lines;
  }
}
