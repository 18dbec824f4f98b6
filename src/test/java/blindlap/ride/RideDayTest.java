package blindlap.ride;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.RecordedDay;
import blindlap.desk.TestDay;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.SessionId;
import blindlap.session.day.VoidEvent;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The rider's day on a page without a window, as a phone's would be. */
class RideDayTest {
  private static final String GRIP = "grip in the rocks";
  private static final String TIME = "lap time";
  private static final LapId FIRST = new LapId(1, 1);

  private @TempDir(factory = RamFolder.class) Path folder;
  private TestDay day;
  private PlainPage page;

  /** Shows nothing and remembers everything. */
  private static final class PlainPage extends RideDay {
    private final List<String> said = new ArrayList<>();
    private String open = "";
    private String saved = "";
    private String trouble = "";
    private String last = "";
    private String question = "";
    private SortedMap<LapId, VoidEvent> voids = Collections.emptySortedMap();
    private boolean saving;

    PlainPage(TestDay day) {
      super(
          day.desk().riderDays(),
          day.desk().notebook()::dataVersion,
          new AtOnce(),
          day.clock(),
          day.clock()::nanos);
    }

    @Override
    protected void shows(RideSheet now) {
      assertThat(now).isSameAs(sheet());
    }

    @Override
    protected void showsOpen(String words) {
      open = words;
    }

    @Override
    protected void showsSaved(String words) {
      saved = words;
    }

    @Override
    protected void showsTrouble(String words) {
      trouble = words;
    }

    @Override
    protected void says(String words) {
      said.add(words);
    }

    @Override
    protected void showsSaving(boolean now) {
      saving = now;
    }

    @Override
    protected void offersToTakeBack(String measure) {
      last = measure;
    }

    @Override
    protected void asksWhetherDone(String words) {
      question = words;
    }

    @Override
    protected void showsVoids(SortedMap<LapId, VoidEvent> standing) {
      voids = standing;
    }

    @Override
    protected void opened(SessionId session) {
      said.clear();
    }
  }

  private static final class AtOnce implements Elsewhere {
    @Override
    public <T> void run(Callable<T> work, Consumer<T> done, Consumer<Exception> failed) {
      T result;
      try {
        result = work.call();
      } catch (Exception e) {
        failed.accept(e);
        return;
      }
      done.accept(result);
    }
  }

  @BeforeEach
  void start() {
    day = new TestDay(folder, TestDay.EIGHT, 5);
    page = new PlainPage(day);
    page.open(day.id());
  }

  @AfterEach
  void end() {
    day.close();
  }

  private void toTheFirstLap() {
    page.handedOver();
    page.warmUpRidden();
    page.handedOver();
    page.watches().timedBy("STARTER");
  }

  @Test
  void aLapIsRiddenScoredTimedAndDoneWithoutAWindow() {
    assertThat(page.sheet().stage()).isEqualTo(RideSheet.Stage.HAND_OVER);
    toTheFirstLap();
    assertThat(page.sheet().stage()).isEqualTo(RideSheet.Stage.SCORED);
    assertThat(page.headline()).contains("1").contains("8");
    page.watches().start(TIME);
    day.clock().move(Duration.ofSeconds(93));
    page.watches().stop(TIME);
    String before = page.open;
    page.answer(GRIP, BigDecimal.valueOf(40));
    assertThat(page.open).isNotEqualTo(before);
    assertThat(page.saved).startsWith("Saved ");
    assertThat(page.saving).isFalse();
    page.lapDone();
    assertThat(page.trouble).isEmpty();
    assertThat(page.sheet().stage()).isEqualTo(RideSheet.Stage.DONE);
    assertThat(day.state().lap(FIRST).orElseThrow().values().get(TIME)).isEqualByComparingTo("93");
    page.next();
    assertThat(page.sheet().lap()).isEqualTo(new LapId(2, 1));
  }

  @Test
  void aLapThatARecordingTimesHasNoWatchAndIsDoneWithoutItsTime() {
    try (TestDay recorded = new TestDay(folder, RecordedDay.plan("recording", "recording"), 6)) {
      PlainPage own = new PlainPage(recorded);
      own.open(recorded.id());
      own.handedOver();
      own.warmUpRidden();
      own.handedOver();
      assertThat(own.sheet().watches()).isEmpty();
      assertThat(own.questions().questions()).isEmpty();
      own.done().press();
      assertThat(own.question).contains("your guess").doesNotContain(TIME);
      own.done().asItIs();
      assertThat(own.trouble).isEmpty();
      assertThat(own.sheet().stage()).isEqualTo(RideSheet.Stage.DONE);
      assertThat(recorded.state().lapsRidden()).isEqualTo(1);
      own.next();
      assertThat(own.sheet().lap()).isEqualTo(new LapId(2, 1));
    }
  }

  @Test
  void aWatchBesideARecordingIsReadLikeAnyOther() {
    try (TestDay recorded = new TestDay(folder, RecordedDay.PLAN, 7)) {
      PlainPage own = new PlainPage(recorded);
      own.open(recorded.id());
      own.handedOver();
      own.warmUpRidden();
      own.handedOver();
      assertThat(own.sheet().watches()).containsOnlyKeys("upper half");
    }
  }

  @Test
  void theLastAnswerIsOfferedAndTakenBackWithoutAWindow() {
    toTheFirstLap();
    page.answer(GRIP, BigDecimal.valueOf(40));
    assertThat(page.last).isEqualTo(GRIP);
    assertThat(page.undo().last()).isEqualTo(GRIP);
    page.undo().takeBack();
    assertThat(page.last).isEmpty();
    assertThat(page.sheet().values()).isEmpty();
  }

  @Test
  void doneWithAnswersOpenOrTheWatchRunningAsksOnceByNameAndAnAnswerTakesTheQuestionAway() {
    toTheFirstLap();
    page.watches().start(TIME);
    page.answer("harshness at the hands", BigDecimal.TEN);
    page.done().press();
    assertThat(page.question)
        .contains("lap time: the watch is running")
        .contains(GRIP)
        .contains("your guess")
        .doesNotContain("harshness");
    assertThat(page.sheet().stage()).isEqualTo(RideSheet.Stage.SCORED);
    page.answer(GRIP, BigDecimal.valueOf(40));
    assertThat(page.question).isEmpty();
    page.done().press();
    page.done().withdraw();
    assertThat(page.question).isEmpty();
    page.done().press();
    page.done().asItIs();
    assertThat(page.question).isEmpty();
    assertThat(page.sheet().stage()).isEqualTo(RideSheet.Stage.DONE);
    assertThat(day.state().lapsRidden()).isEqualTo(1);
  }

  @Test
  void theLastLapIsOpenedAgainUntilSomethingOfTheNextOneIsRecordedAndTheRecordSaysSo() {
    toTheFirstLap();
    page.answer(GRIP, BigDecimal.valueOf(40));
    page.lapDone();
    assertThat(page.done().reopenable()).contains(FIRST);
    page.next();
    page.handedOver();
    page.done().openAgain();
    assertThat(page.sheet().lap()).isEqualTo(FIRST);
    assertThat(page.sheet().stage()).isEqualTo(RideSheet.Stage.SCORED);
    page.answer(GRIP, BigDecimal.valueOf(50));
    assertThat(day.state().corrections())
        .singleElement()
        .satisfies(c -> assertThat(c.reason()).contains("opened again"));
    page.lapDone();
    page.next();
    assertThat(page.sheet().lap()).isEqualTo(new LapId(2, 1));
    page.watches().start(TIME);
    assertThat(page.done().reopenable()).isEmpty();
    page.done().openAgain();
    assertThat(page.sheet().lap()).isEqualTo(new LapId(2, 1));
    assertThat(day.state().lapsRidden()).isEqualTo(1);
  }

  @Test
  void guessSurenessCueAndNoteAreTakenBackOneByOneByTheirNames() {
    toTheFirstLap();
    page.note("loose");
    page.guess().choose(1);
    page.guess().sureness("HUNCH");
    page.guess().cue("it creaked");
    assertThat(page.last).isEqualTo("what gave it away");
    page.undo().takeBack();
    assertThat(day.state().guesses().get(1)).isEqualTo(new Guess(1, Guess.Sureness.HUNCH, ""));
    assertThat(page.last).isEqualTo("how sure you are");
    page.undo().takeBack();
    assertThat(page.last).isEqualTo("your guess");
    page.undo().takeBack();
    assertThat(day.state().guesses()).isEmpty();
    assertThat(page.guess().chosen()).isNull();
    assertThat(page.last).isEqualTo("the note");
    page.undo().takeBack();
    assertThat(day.state().lap(FIRST).orElseThrow().note()).isEmpty();
    assertThat(page.last).isEmpty();
  }

  @Test
  void aGuessChangedInAnotherWindowIsNotTakenBack() {
    toTheFirstLap();
    page.guess().choose(1);
    day.desk().riderDays().guess(day.id(), 1, new Guess(0, null, ""));
    page.undo().takeBack();
    assertThat(page.trouble).contains("another window");
    assertThat(day.state().guesses().get(1)).isEqualTo(new Guess(0, null, ""));
  }

  @Test
  void whatAnEventDoesToTheLapIsSaidAndARefusalIsToldInWords() {
    page.watches().timedBy("RIDER");
    toTheFirstLap();
    page.voids().spoiled("TRAFFIC");
    assertThat(page.said).hasSize(1);
    assertThat(page.sheet().voided()).isTrue();
    page.next();
    page.lapDone();
    assertThat(page.trouble).contains("stint 2");
    assertThat(page.sheet().stage()).isEqualTo(RideSheet.Stage.HAND_OVER);
  }

  @Test
  void aVoidIsTakenBackByItsNameAndTheLapCountsAgain() {
    toTheFirstLap();
    page.voids().spoiled("PUNCTURE");
    assertThat(page.voids).containsExactly(Map.entry(FIRST, VoidEvent.PUNCTURE));
    assertThat(page.last).isEqualTo("the void of lap 1");
    page.undo().takeBack();
    assertThat(page.trouble).isEmpty();
    assertThat(page.said.get(1)).contains("lap 1 counts again");
    assertThat(page.last).isEmpty();
    assertThat(page.voids).isEmpty();
    assertThat(day.state().lap(FIRST).orElseThrow().voided()).isEmpty();
    assertThat(day.state().day().ridden(FIRST)).isTrue();
  }

  @Test
  void aVoidIsTakenBackFromALaterLapAndOnTheClosedDayUntilTheReviewIsClosed() {
    toTheFirstLap();
    page.voids().spoiled("TRAFFIC");
    page.next();
    page.handedOver();
    page.voids().takeBack(FIRST);
    assertThat(day.state().lap(FIRST).orElseThrow().voided()).isEmpty();
    assertThat(page.sheet().stint()).isEqualTo(2);
    page.voids().spoiled("CRASH");
    LapId second = new LapId(2, 1);
    day.desk().riderDays().cutShort(day.id(), 2, "rain", "R. Lind", false);
    day.desk().riderDays().closeDay(day.id());
    page.tick();
    assertThat(page.voids).containsExactly(Map.entry(second, VoidEvent.CRASH));
    page.voids().takeBack(second);
    assertThat(day.state().lap(second).orElseThrow().voided()).isEmpty();
    assertThat(page.trouble).isEmpty();
  }

  @Test
  void whatWasTakenBackFromTheListIsNotOfferedAgainAsTheLastAnswer() {
    toTheFirstLap();
    page.voids().spoiled("TRAFFIC");
    page.voids().takeBack(FIRST);
    assertThat(page.last).isEmpty();
    assertThat(page.trouble).isEmpty();
  }
}
