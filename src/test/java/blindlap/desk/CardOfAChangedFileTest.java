package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.seal.Fingerprint;
import blindlap.session.Entry;
import blindlap.session.Fact;
import blindlap.session.SessionState;
import blindlap.session.StoredEntry;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;

/**
 * A card of a file that was changed: it is written, as review and report are, and says first of all
 * which fingerprint the file no longer gives.
 */
class CardOfAChangedFileTest {
  private static final String PLAN =
      "The file was changed: its fingerprint of the plan does not match it.";
  private static final String REVIEW =
      "The file was changed: its fingerprint of the review does not match it.";
  private static final String BOTH =
      "The file was changed: neither of its fingerprints matches it.";
  private static final Fingerprint OTHER =
      Fingerprint.sha256("another".getBytes(StandardCharsets.UTF_8));

  @Test
  void aFileThatWasNotChangedSaysNothingOfIt() {
    SampleDays.ride(
        "bearings-on-clay-steps",
        (desk, state) ->
            assertThat(card(desk, changed(state, fact -> fact)))
                .doesNotContain("was changed", "not match")
                .contains("\nRidden blind, order drawn by lot and sealed. "));
  }

  @Test
  void theLargestCaptionNamesTheFingerprintThatDoesNotMatch() {
    SampleDays.ride(
        "bearings-on-clay-steps",
        (desk, state) -> {
          String plan = card(desk, changed(state, CardOfAChangedFileTest::anotherPlan));
          assertThat(plan.lines().toList().get(2)).isEqualTo(PLAN);
          assertThat(plan).doesNotContain("Ridden blind", "drawn by lot and sealed");
          assertThat(plan).contains("\nOrder drawn by lot, says the file; but it was changed. ");
          assertThat(prints(plan))
              .satisfiesExactly(
                  line -> assertThat(line).endsWith(" …, does not match"),
                  line -> assertThat(line).endsWith(" …"));

          String review = card(desk, changed(state, CardOfAChangedFileTest::anotherReview));
          assertThat(review.lines().toList().get(2)).isEqualTo(REVIEW);
          assertThat(review).doesNotContain("Ridden blind", "drawn by lot and sealed");
          assertThat(prints(review))
              .satisfiesExactly(
                  line -> assertThat(line).endsWith(" …"),
                  line -> assertThat(line).endsWith(" …, does not match"));

          String both = card(desk, changed(state, fact -> anotherReview(anotherPlan(fact))));
          assertThat(both.lines().toList().get(2)).isEqualTo(BOTH);
          assertThat(prints(both)).hasSize(2).allMatch(l -> l.endsWith(" …, does not match"));
        });
  }

  /** It comes before everything else that speaks against the day, on a telling run too. */
  @Test
  void itIsSaidBeforeWhatElseSpeaksAgainstTheDay() {
    for (String sample : List.of("clicks-on-wet-steps", "pads-told-on-slate-run")) {
      SampleDays.ride(
          sample,
          (desk, state) ->
              assertThat(card(desk, changed(state, CardOfAChangedFileTest::anotherReview)))
                  .contains("\n" + REVIEW + " ")
                  .contains("Another setup than drawn was on in ")
                  .contains("\nOrder drawn by lot, says the file; but it was changed. "));
    }
  }

  @Test
  void reviewAndReportOfTheSameFileAreWrittenAndSayItToo() {
    SampleDays.ride(
        "bearings-on-clay-steps",
        (desk, state) -> {
          SessionState changed = changed(state, CardOfAChangedFileTest::anotherReview);
          String sentence = "The fingerprint of the review does not match this file";
          assertThat(desk.reviews().text(changed)).anyMatch(line -> line.startsWith(sentence));
          assertThat(desk.reviews().html(changed, false)).contains(sentence);
        });
  }

  /** Both sizes draw the caption, whole. */
  @Test
  void bothPicturesShowIt() {
    SampleDays.ride(
        "bearings-on-clay-steps",
        (desk, state) -> {
          SessionState changed = changed(state, CardOfAChangedFileTest::anotherReview);
          Map<String, byte[]> files = desk.reviews().card(changed, false);
          assertThat(files.keySet()).filteredOn(name -> name.endsWith(".svg")).hasSize(2);
          files.forEach(
              (name, bytes) -> {
                if (name.endsWith(".svg")) {
                  String svg = new String(bytes, StandardCharsets.UTF_8);
                  assertThat(svg.replaceAll("<desc>.*?</desc>", "").replaceAll("<[^>]*>\n?", ""))
                      .contains(REVIEW)
                      .contains(" …, does not match");
                }
              });
        });
  }

  private static List<String> prints(String card) {
    return card.lines().filter(line -> line.startsWith("fingerprint of the ")).toList();
  }

  private static String card(Desk desk, SessionState state) {
    return desk.reviews().card(state, false).entrySet().stream()
        .filter(file -> file.getKey().endsWith(".txt"))
        .map(file -> new String(file.getValue(), StandardCharsets.UTF_8))
        .findFirst()
        .orElseThrow();
  }

  private static Fact anotherPlan(Fact fact) {
    return fact instanceof Fact.PlanCommitted c
        ? new Fact.PlanCommitted(
            c.plan(),
            c.planText() + " ",
            c.key(),
            c.covered(),
            c.fingerprint(),
            c.codes(),
            c.signedBy())
        : fact;
  }

  private static Fact anotherReview(Fact fact) {
    return fact instanceof Fact.ReviewClosed ? new Fact.ReviewClosed(OTHER) : fact;
  }

  private static SessionState changed(SessionState state, UnaryOperator<Fact> change) {
    List<StoredEntry> entries = new ArrayList<>();
    for (StoredEntry stored : state.entries()) {
      Entry e = stored.entry();
      Entry other =
          new Entry(
              e.session(),
              e.notebook(),
              e.number(),
              e.previous(),
              e.seen(),
              e.at(),
              e.zone(),
              change.apply(e.fact()),
              e.phone());
      entries.add(new StoredEntry(other, stored.text(), stored.hash()));
    }
    return SessionState.of(entries);
  }
}
