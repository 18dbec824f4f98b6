package blindlap.session;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.fault.Problem;
import blindlap.session.day.LapState;
import blindlap.session.day.Step;
import blindlap.wording.day.Problems;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What holds for every session, however its people behave. */
class RandomDaysTest {
  private static Stream<RandomDay.Tried> tried() {
    return RandomDay.all().flatMap(day -> day.tried.stream());
  }

  @Test
  void inventedDaysReachEveryStepAndTryEveryCommandBothWays() {
    List<RandomDay.Tried> all = tried().toList();
    assertThat(all.stream().map(t -> t.before().step())).contains(Step.values());
    for (String name :
        List.of(
            "record",
            "correct",
            "score",
            "note",
            "covariate",
            "stint",
            "void",
            "withdraw",
            "cut",
            "blind",
            "close day",
            "close review",
            "unseal",
            "amend",
            "abandon")) {
      assertThat(all.stream().filter(t -> t.trial().what().startsWith(name)))
          .as(name)
          .extracting(t -> t.outcome() instanceof Outcome.Accepted)
          .contains(true, false);
    }
    assertThat(all.stream().map(t -> t.before().capReached()).distinct()).hasSize(2);
    assertThat(all.stream().map(t -> t.before().hasKey()).distinct()).hasSize(2);
    assertThat(RandomDay.all().flatMap(day -> SessionState.of(day.entries()).notApplied().stream()))
        .isNotEmpty();
  }

  @Test
  void aStateTellsWhatASlowRecountOfTheFactsTells() {
    RandomDay.all()
        .forEach(
            day -> {
              List<StoredEntry> all = day.entries();
              for (int end = 1; end <= all.size(); end += 7) {
                compare(day, all.subList(0, end));
              }
              compare(day, all);
            });
  }

  private static void compare(RandomDay day, List<StoredEntry> entries) {
    Map<String, Object> told = Told.of(SessionState.of(entries));
    new Recount(entries)
        .told()
        .forEach(
            (name, value) -> assertThat(told.get(name)).as(day + ": " + name).isEqualTo(value));
  }

  @Test
  void whatFollowsEntryByEntryOrInAnyHandfulsIsWhatAllAtOnceGives() {
    RandomDay.all()
        .forEach(
            day -> {
              Random random = new Random(day.seed);
              List<StoredEntry> all = day.entries();
              SessionState state = SessionState.of(all.subList(0, 1));
              int at = 1;
              while (at < all.size()) {
                int next = Math.min(all.size(), at + 1 + random.nextInt(5));
                Map<String, Object> before = Told.of(state);
                SessionState after = state.after(all.subList(at, next));
                assertThat(Told.of(state)).as("%s, the state before", day).isEqualTo(before);
                state = after;
                at = next;
              }
              assertThat(Told.of(state)).as("%s", day).isEqualTo(Told.of(SessionState.of(all)));
            });
  }

  @Test
  void chainsThatArriveInAnyOrderTellTheSame() {
    RandomDay.all()
        .forEach(
            day -> {
              Map<String, Object> told = Told.of(SessionState.of(day.entries()));
              List<StoredEntry> shuffled = new ArrayList<>(day.book.all());
              Collections.shuffle(shuffled, new Random(day.seed));
              assertThat(Told.of(SessionState.of(CausalOrder.sort(shuffled))))
                  .as("%s", day)
                  .isEqualTo(told);
              assertThat(CausalOrder.sort(day.entries())).isEqualTo(day.entries());
            });
  }

  @Test
  void aCommandIsAcceptedAndRefusedAsTheRulesSayAndBecomesTheFactsItSays() {
    tried()
        .forEach(
            t -> {
              if (t.outcome() instanceof Outcome.Refused refused) {
                assertThat(refused.problems())
                    .as(t.trial().what())
                    .extracting(problem -> (SessionFault) problem.fault())
                    .isEqualTo(t.trial().faults());
                assertThat(refused.problems()).isNotEmpty();
              } else {
                assertThat(t.trial().faults()).as(t.trial().what()).isEmpty();
                assertThat(((Outcome.Accepted) t.outcome()).facts())
                    .as(t.trial().what())
                    .isEqualTo(t.trial().facts());
              }
            });
  }

  @Test
  void aRefusedCommandChangesNothingAndSaysWhyInAWholeSentence() {
    tried()
        .filter(t -> t.outcome() instanceof Outcome.Refused)
        .forEach(
            t -> {
              assertThat(t.after()).isSameAs(t.before());
              assertThat(Told.of(t.before()))
                  .as(t.trial().what())
                  .isEqualTo(Told.of(SessionState.of(t.before().entries())));
              for (Problem problem : ((Outcome.Refused) t.outcome()).problems()) {
                assertThat(Problems.sentence(problem))
                    .as(t.trial().what())
                    .matches("(?s)[\\p{javaUpperCase}\"].*\\.")
                    .doesNotContainPattern("\\{\\d")
                    .doesNotContain("null");
              }
            });
  }

  @Test
  void anAcceptedCommandGivenAgainIsRefusedOrChangesNothingWhereItIsDoneOnce() {
    List<String> once = List.of("record", "void", "withdraw", "cut", "close", "unseal", "abandon");
    tried()
        .filter(t -> t.outcome() instanceof Outcome.Accepted)
        .forEach(
            t -> {
              Outcome again = t.trial().run().apply(t.after());
              if (once.stream().anyMatch(t.trial().what()::startsWith)) {
                assertThat(again).as(t.trial().what()).isInstanceOf(Outcome.Refused.class);
              } else if (t.trial().what().startsWith("correct")) {
                assertThat(again).as(t.trial().what()).isEqualTo(Outcome.accepted());
              }
            });
  }

  private static Stream<List<SessionState>> courses() {
    return RandomDay.all().flatMap(day -> day.courses.stream());
  }

  @Test
  void noNotebookEverSeesASessionGoAStepBack() {
    courses()
        .forEach(
            course -> {
              for (int i = 1; i < course.size(); i++) {
                assertThat(course.get(i).step()).isGreaterThanOrEqualTo(course.get(i - 1).step());
              }
            });
  }

  @Test
  void nothingThatComesLaterChangesAClosedReview() {
    int[] late = {0};
    courses()
        .forEach(
            course -> {
              for (int i = 1; i < course.size(); i++) {
                SessionState before = course.get(i - 1);
                SessionState now = course.get(i);
                if (closing(before).isPresent() && closing(before).equals(closing(now))) {
                  late[0] += now.notApplied().size() - before.notApplied().size();
                  assertThat(fixed(now)).isEqualTo(fixed(before));
                  assertThat(now.notApplied()).containsAll(refused(before));
                }
              }
            });
    assertThat(late[0]).as("entries that came too late").isPositive();
  }

  /**
   * What was not applied and never is. Of findings that two machines recorded side by side the
   * first counts, and which is the first may change when they meet a third.
   */
  private static List<StoredEntry> refused(SessionState state) {
    return state.notApplied().stream()
        .filter(each -> !(each.entry().fact() instanceof Fact.FindingRecorded))
        .filter(each -> !(each.entry().fact() instanceof FindingSeenAgain))
        .toList();
  }

  private static java.util.Optional<StoredEntry> closing(SessionState state) {
    return new Recount(state.entries()).closing();
  }

  /** A deviation may still be told afterwards, and is a reason for one more lap. */
  private static Map<String, Object> fixed(SessionState state) {
    Map<String, Object> told = Told.day(state);
    told.remove("deviations");
    told.remove("cap reached");
    return told;
  }

  @Test
  void everyEntryCountsOrIsListedAsNotApplied() {
    RandomDay.all()
        .forEach(
            day -> {
              List<StoredEntry> all = day.entries();
              SessionState state = SessionState.of(all);
              for (int i = 0; i < all.size(); i++) {
                List<StoredEntry> without = new ArrayList<>(all);
                StoredEntry one = without.remove(i);
                if (state.notApplied().contains(one)) {
                  Map<String, Object> told = Told.of(SessionState.of(without));
                  told.keySet().removeAll(List.of("entries", "heads", "not applied"));
                  assertThat(Told.of(state)).as("%s", day).containsAllEntriesOf(told);
                }
              }
            });
  }

  @Test
  void everyValueOfALapWasGivenTimedOrCorrectedAndEveryCorrectionIsListed() {
    RandomDay.all()
        .forEach(
            day -> {
              SessionState state = SessionState.of(day.entries());
              List<Fact> facts = day.entries().stream().map(e -> e.entry().fact()).toList();
              for (LapState lap : state.laps()) {
                lap.values()
                    .forEach(
                        (measure, value) ->
                            assertThat(facts)
                                .as("%s: %s of %s", day, measure, lap.id())
                                .anyMatch(f -> says(f, lap, measure, value)));
              }
              List<Fact> corrections =
                  facts.stream().filter(Fact.ScoreCorrected.class::isInstance).toList();
              List<Fact> listed = new ArrayList<>(state.corrections());
              state.notApplied().forEach(late -> listed.add(late.entry().fact()));
              assertThat(listed).as("%s", day).containsAll(corrections);
            });
  }

  private static boolean says(Fact fact, LapState lap, String measure, java.math.BigDecimal value) {
    if (fact instanceof Fact.ScoreGiven f) {
      return f.lap().equals(lap.id()) && f.measure().equals(measure) && f.value().equals(value);
    } else if (fact instanceof Fact.TimeTaken f) {
      return f.lap().equals(lap.id())
          && f.measure().equals(measure)
          && value.equals(f.time().seconds());
    }
    return fact instanceof Fact.ScoreCorrected f
        && f.lap().equals(lap.id())
        && f.measure().equals(measure)
        && value.equals(f.value());
  }

  @Test
  void theListOfSessionsSaysWhatTheSessionSays() {
    RandomDay.all()
        .forEach(
            day -> {
              SessionState state = SessionState.of(day.entries());
              SessionSummary summary = SessionSummary.of(state);
              assertThat(summary.id()).isEqualTo(state.id()).isEqualTo(Histories.SESSION);
              assertThat(summary.kind()).isEqualTo(state.plan().kind());
              assertThat(summary.level()).isEqualTo(state.plan().level());
              assertThat(summary.question()).isEqualTo(state.plan().question());
              assertThat(summary.rider()).isEqualTo(state.plan().rider());
              assertThat(summary.trail()).isEqualTo(state.plan().trail());
              assertThat(summary.day()).isEqualTo(state.plan().day());
              assertThat(summary.title()).isEqualTo(state.plan().title()).contains("Sq0zk");
              assertThat(summary.step()).isEqualTo(state.step());
              assertThat(summary.verdict()).isEmpty();
              assertThat(summary.reason()).isEqualTo(state.abandonedBecause().orElse(""));
              assertThat(summary.committedAt())
                  .isEqualTo(day.book.all().get(0).entry().at())
                  .isEqualTo(state.committedAt());
              assertThat(
                      SessionSummary.of(state.id(), state.plan(), state.committedAt(), Step.RIDING))
                  .extracting(SessionSummary::step, SessionSummary::reason, SessionSummary::title)
                  .containsExactly(Step.RIDING, "", summary.title());
            });
  }

  @Test
  void noCodeStandsForTwoStintsAndEachIsFoundByItsStint() {
    RandomDay.all()
        .forEach(
            day -> {
              SessionState state = SessionState.of(day.entries());
              assertThat(state.codes()).doesNotHaveDuplicates().hasSize(state.plan().stints());
              for (int stint = 1; stint <= state.plan().stints(); stint++) {
                assertThat(state.code(stint)).isEqualTo(state.codes().get(stint - 1));
              }
            });
  }

  @Test
  void theFingerprintOfAClosedReviewIsComputedAgainWhateverWasMergedInSince() {
    courses()
        .flatMap(List::stream)
        .filter(state -> state.reviewFingerprint().isPresent())
        .forEach(
            state ->
                assertThat(LifeCommands.reviewFingerprint(state))
                    .isEqualTo(state.reviewFingerprint().orElseThrow()));
  }
}
