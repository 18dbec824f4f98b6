package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.fault.Fault;
import blindlap.fault.Problem;
import blindlap.plan.Plan;
import blindlap.seal.SealParameters;
import blindlap.seal.SessionKind;
import blindlap.seal.StintViews;
import blindlap.session.DayCommands;
import blindlap.session.Fact;
import blindlap.session.LifeCommands;
import blindlap.session.OneStint;
import blindlap.session.OneStintShown;
import blindlap.session.SessionFault;
import blindlap.session.SessionState;
import blindlap.session.StoredEntry;
import blindlap.session.day.LapId;
import blindlap.session.day.LapInput;
import blindlap.session.day.Source;
import blindlap.store.SqliteNotebook;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What to set for one stint, shown once to somebody who is not the helper. */
class OneStintsTest {
  private static final Pattern SEALED = Pattern.compile("\"ciphertext\":\"([^\"]+)\"");
  private static final Pattern HASH = Pattern.compile("[0-9a-f]{64}");

  @TempDir Path folder;

  private SetClock clock = new SetClock(Instant.parse("2026-11-14T08:00:00Z"));
  private Desk desk;
  private SessionState committed;
  private HelperDay day;
  private List<OneStints.Slip> slips;

  @BeforeEach
  void open() {
    desk = desk("one", 1);
    committed = commit(desk, "helper", "");
  }

  @AfterEach
  void close() {
    desk.close();
  }

  private Desk desk(String name, long order) {
    return new Desk(
        SqliteNotebook.open(
            folder.resolve(name + ".blindlap"),
            FixedSources.stream(50).exactly(16),
            clock.instant()),
        clock,
        FixedSources.order(order),
        new SealParameters(1),
        FixedSources.stream(60));
  }

  private static String text(String level, String more) {
    String blinding = "blinding: {level: %s, guesses: %s%s}\n";
    String plan = AloneDayTest.text("drawn");
    return plan.substring(0, plan.indexOf("blinding:"))
        + blinding.formatted(level, level.equals("prepared") || level.equals("helper"), more);
  }

  private SessionState commit(Desk on, String level, String more) {
    PlanPreview preview = on.planning().preview(text(level, more));
    assertThat(preview.problems()).as(String.valueOf(preview.problems())).isEmpty();
    Plan plan = preview.plan().orElseThrow();
    Committing.Result.Committed done =
        Commits.commit(on, plan, SessionKind.comparison(), List.of("R. Lind"));
    HelperDays.Opened opened = on.helperDays().open(done.state(), done.sealed().phrase().text());
    day = ((HelperDays.Opened.Day) opened).day();
    return done.state();
  }

  private SessionState now() {
    return desk.sessions().state(committed.id()).orElseThrow();
  }

  private OneStints made() {
    OneStints views = desk.oneStints();
    slips = ((OneStints.Made.Slips) views.make(day, now())).slips();
    return views;
  }

  private String words(int stint) {
    return slips.stream().filter(s -> s.stint() == stint).findFirst().orElseThrow().words().text();
  }

  private static void refused(OneStints.Shown shown, Fault fault) {
    assertThat(shown).isInstanceOf(OneStints.Shown.Refused.class);
    assertThat(((OneStints.Shown.Refused) shown).problems())
        .extracting(Problem::fault)
        .containsExactly(fault);
  }

  private static void refused(Sessions.Result result, Fault fault) {
    assertThat(((Sessions.Result.Refused) result).problems())
        .extracting(Problem::fault)
        .containsExactly(fault);
  }

  private static void done(Sessions.Result result) {
    assertThat(result).as(String.valueOf(result)).isInstanceOf(Sessions.Result.Done.class);
  }

  private void ride(int stint) {
    clock.move(Duration.ofMinutes(5));
    LapInput lap =
        LapInput.of(new LapId(stint, 1), Map.of("lap time", new BigDecimal(180 + stint % 3)));
    done(
        desk.sessions()
            .act(committed.id(), s -> new DayCommands(s).record(List.of(lap), Source.FILE)));
  }

  @Test
  void everyStintThatIsLeftHasWordsOfItsOwnThatShowWhatTheOrderSaysOnce() {
    OneStints views = made();
    assertThat(slips).extracting(OneStints.Slip::stint).containsExactly(1, 2, 3, 4, 5, 6, 7, 8);
    assertThat(slips.stream().map(s -> s.words().text()).distinct()).hasSize(8);
    for (int stint = 1; stint <= 8; stint++) {
      OneStints.Shown.Setup shown =
          (OneStints.Shown.Setup) views.show(now(), stint, " P. Wier ", words(stint));
      HelperDay.Work work = day.work(stint);
      assertThat(shown.setup()).isEqualTo(day.plan().setups().get(work.setup()).name());
      assertThat(shown.real()).isEqualTo(work.real());
      assertThat(shown.settings()).isEqualTo(work.settings());
      assertThat(shown.code()).isEqualTo(work.code());
      assertThat(shown.toString()).isEqualTo("Setup[stint " + stint + "]");
      assertThat(now().oneStint().get(stint)).isEqualTo(new OneStint("P. Wier", null));
      refused(views.show(now(), stint, "P. Wier", words(stint)), SessionFault.ONE_STINT_USED);
    }
    assertThat(views.make(day, now())).isInstanceOf(OneStints.Made.Refused.class);
  }

  @Test
  void wordsOfAnotherStintAndEarlierWordsOpenNothing() {
    OneStints views = made();
    refused(views.show(now(), 2, "P. Wier", words(3)), DeskFault.ONE_STINT_WRONG);
    refused(views.show(now(), 2, "P. Wier", "two words"), DeskFault.ONE_STINT_WORDS);
    String earlier = words(2);
    made();
    refused(views.show(now(), 2, "P. Wier", earlier), DeskFault.ONE_STINT_WRONG);
    refused(views.show(now(), 2, " ", words(2)), SessionFault.ONE_STINT_NOBODY);
    refused(views.show(now(), 9, "P. Wier", words(2)), SessionFault.NO_SUCH_STINT);
    assertThat(now().oneStint()).isEmpty();
    assertThat(views.show(now(), 2, "P. Wier", words(2))).isInstanceOf(OneStints.Shown.Setup.class);
  }

  @Test
  void afterThreeWrongCodesThereIsAWaitOfAMinuteInEveryWindow() {
    OneStints views = made();
    for (int i = 0; i < 3; i++) {
      refused(views.show(now(), 1, "P. Wier", words(2)), DeskFault.ONE_STINT_WRONG);
    }
    refused(desk.oneStints().show(now(), 1, "P. Wier", words(1)), DeskFault.ONE_STINT_WAIT);
    clock.move(Duration.ofSeconds(59));
    refused(views.show(now(), 1, "P. Wier", words(1)), DeskFault.ONE_STINT_WAIT);
    clock.move(Duration.ofSeconds(1));
    assertThat(views.show(now(), 1, "P. Wier", words(1))).isInstanceOf(OneStints.Shown.Setup.class);
  }

  @Test
  void aStintThatIsRiddenAndADayThatIsClosedShowNothing() {
    OneStints views = made();
    ride(1);
    refused(views.show(now(), 1, "P. Wier", words(1)), SessionFault.ONE_STINT_BEGUN);
    made();
    assertThat(slips).extracting(OneStints.Slip::stint).containsExactly(2, 3, 4, 5, 6, 7, 8);
    done(desk.sessions().act(committed.id(), s -> new LifeCommands(s).closeDay()));
    refused(views.show(now(), 2, "P. Wier", words(2)), SessionFault.RECORDING_IS_OVER);
    assertThat(views.refusal(now())).isPresent();
    assertThat(views.make(day, now())).isInstanceOf(OneStints.Made.Refused.class);
  }

  @Test
  void whetherTheRiderSawIsSaidOnceAndBreaksTheBlindInThatStintAlone() {
    OneStints views = made();
    refused(views.answer(committed.id(), 2, true), SessionFault.ONE_STINT_NOT_SHOWN);
    views.show(now(), 2, "P. Wier", words(2));
    views.show(now(), 3, "K. Dorn", words(3));
    assertThat(views.unanswered(now())).contains(2);
    done(views.answer(committed.id(), 2, true));
    assertThat(views.unanswered(now())).contains(3);
    done(views.answer(committed.id(), 3, false));
    assertThat(views.unanswered(now())).isEmpty();
    refused(views.answer(committed.id(), 3, true), SessionFault.ONE_STINT_ANSWERED);
    assertThat(now().blindBroken()).extracting(Fact.BlindBroken::stint).containsExactly(2);
    assertThat(now().blindBroken().get(0).what()).contains("P. Wier");
    assertThat(now().oneStint().get(3)).isEqualTo(new OneStint("K. Dorn", false));
  }

  @Test
  void belowPreparedThereIsNothingToHideFromWhoeverSwaps() {
    Plan plan = desk.planning().preview(text("drawn", "")).plan().orElseThrow();
    SessionState covered =
        ((Committing.Result.Covered) desk.committing().cover(plan, List.of("R. Lind"))).state();
    assertThat(desk.oneStints().refusal(covered).orElseThrow())
        .extracting(Problem::fault)
        .containsExactly(SessionFault.ONE_STINT_LEVEL);
    refused(
        desk.oneStints().show(covered, 1, "P. Wier", "one two three"),
        SessionFault.ONE_STINT_LEVEL);
  }

  @Test
  void aPreparedDayHasItForTheUnitsToo() {
    committed = commit(desk, "prepared", ", prepared_by: M. Oster");
    OneStints views = made();
    assertThat(views.show(now(), 1, "P. Wier", words(1))).isInstanceOf(OneStints.Shown.Setup.class);
  }

  @Test
  void rightAndWrongWordsCostOneDerivation() {
    made();
    List<Integer> rounds = new ArrayList<>();
    OneStints counted =
        new OneStints(
            desk.sessions(),
            new StintViews(
                FixedSources.order(1),
                new SealParameters(1),
                (code, salt, of) -> {
                  rounds.add(of);
                  return new byte[32];
                }),
            desk.notebook(),
            clock);
    refused(counted.show(now(), 1, "P. Wier", words(1)), DeskFault.ONE_STINT_WRONG);
    assertThat(rounds).containsExactly(1);
    refused(counted.show(now(), 1, "P. Wier", words(2)), DeskFault.ONE_STINT_WRONG);
    assertThat(rounds).containsExactly(1, 1);
  }

  /** The rest of the notebook tells the same whatever the order is. */
  @Test
  void entriesDraftAndFileAreTheSameOverOrders() throws IOException {
    Map<String, List<String>> seen = new HashMap<>();
    for (long order = 2; order <= 9; order++) {
      close();
      clock = new SetClock(Instant.parse("2026-11-14T08:00:00Z"));
      desk = desk("order-" + order, order);
      committed = commit(desk, "helper", "");
      OneStints views = made();
      StringBuilder fitted = new StringBuilder();
      for (int stint = 1; stint <= 3; stint++) {
        refused(views.show(now(), stint, "P. Wier", words(stint + 1)), DeskFault.ONE_STINT_WRONG);
        OneStints.Shown.Setup shown =
            (OneStints.Shown.Setup) views.show(now(), stint, "P. Wier", words(stint));
        fitted.append(shown.setup()).append(shown.real()).append(' ');
        done(views.answer(committed.id(), stint, stint == 2));
      }
      seen.put(fitted.toString(), visible("order-" + order));
    }
    assertThat(seen.size()).isGreaterThan(2);
    assertThat(new HashSet<>(seen.values())).hasSize(1);
  }

  private List<String> visible(String name) throws IOException {
    List<String> all = new ArrayList<>();
    Set<String> shown = new HashSet<>();
    for (StoredEntry stored : desk.notebook().entries(committed.id())) {
      String text = HASH.matcher(stored.text()).replaceAll("*");
      all.add(SEALED.matcher(text).replaceAll(found -> String.valueOf(found.group(1).length())));
      if (stored.entry().fact() instanceof OneStintShown) {
        shown.add(String.valueOf(stored.text().length()));
      }
    }
    assertThat(shown).hasSize(1);
    desk.notebook()
        .drafts()
        .forEach((draft, text) -> all.add("draft " + draft + " " + text.length()));
    byte[] bytes = Files.readAllBytes(folder.resolve(name + ".blindlap"));
    all.add("size " + bytes.length);
    all.add("changes " + ByteBuffer.wrap(bytes, 24, 4).getInt());
    return all;
  }
}
