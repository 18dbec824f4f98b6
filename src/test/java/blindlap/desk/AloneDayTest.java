package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plan.Plan;
import blindlap.plan.Setting;
import blindlap.seal.Masks;
import blindlap.seal.PhraseAsked;
import blindlap.seal.SealParameters;
import blindlap.session.DayCommands;
import blindlap.session.Fact;
import blindlap.session.HelperEntry;
import blindlap.session.LifeCommands;
import blindlap.session.MasksRead;
import blindlap.session.MountedUnit;
import blindlap.session.OpenedWith;
import blindlap.session.SafetyCheck;
import blindlap.session.SessionFault;
import blindlap.session.SessionState;
import blindlap.session.SetupShown;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.LapInput;
import blindlap.session.day.SessionId;
import blindlap.session.day.Source;
import blindlap.store.SqliteNotebook;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Duration;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Days of one person: what is shown when, what is recorded, and how the order opens. */
class AloneDayTest {
  @TempDir Path folder;

  private final SetClock clock = new SetClock(java.time.Instant.parse("2026-11-14T08:00:00Z"));
  private Desk desk;

  @BeforeEach
  void open() {
    desk = desk(folder.resolve("alone.blindlap"), 1);
  }

  private Desk desk(Path file, long seed) {
    return new Desk(
        SqliteNotebook.open(file, FixedSources.stream(50 + seed).exactly(16), clock.instant()),
        clock,
        FixedSources.order(seed),
        new SealParameters(1),
        FixedSources.stream(60 + seed));
  }

  @AfterEach
  void close() {
    desk.close();
  }

  static String text(String level) {
    return """
    question: Is Shock L quicker than Shock K?
    rider: R. Lind
    trail: Quarry loop
    day: 2026-11-14
    setups:
      - name: Shock K
        settings:
          - {name: sag, value: 28, unit: "%%", tolerance: 1, equal: true}
          - {name: rebound, value: 9}
      - name: Shock L
        settings:
          - {name: sag, value: 28, unit: "%%", tolerance: 1, equal: true}
          - {name: rebound, value: 7}
    override: The rebound belongs to each shock.
    measures:
      - {name: lap time, kind: lap time, unit: s, role: primary, worthwhile: 0.5}
    protocol: eight-stints
    stints: 8
    laps: {warm_up: 1, settling: 0, scored: 1}
    blinding: {level: %s, guesses: %s, prepared_by: M. Oster}
    """
        .formatted(level, level.equals("prepared"));
  }

  private Plan plan(String level) {
    PlanPreview preview = desk.planning().preview(text(level));
    assertThat(preview.problems()).as(String.valueOf(preview.problems())).isEmpty();
    return preview.plan().orElseThrow();
  }

  private SessionState covered(String level) {
    Plan plan = plan(level);
    assertThat(desk.committing().begin(plan)).isInstanceOf(Committing.Begun.Alone.class);
    return ((Committing.Result.Covered) desk.committing().cover(plan, List.of("R. Lind"))).state();
  }

  private SessionState state(SessionState before) {
    return desk.sessions().state(before.id()).orElseThrow();
  }

  private static void done(Sessions.Result result) {
    assertThat(result).as(String.valueOf(result)).isInstanceOf(Sessions.Result.Done.class);
  }

  private static void refused(Sessions.Result result, blindlap.fault.Fault fault) {
    assertThat(result).isInstanceOf(Sessions.Result.Refused.class);
    assertThat(((Sessions.Result.Refused) result).problems())
        .extracting(blindlap.fault.Problem::fault)
        .contains(fault);
  }

  private HelperEntry ready(AloneDay day, int stint, int fitted, SessionState state) {
    Map<String, String> measured = new LinkedHashMap<>();
    for (Setting setting : day.settings(stint, fitted)) {
      measured.put(setting.name(), setting.value());
    }
    return HelperEntry.untouched(stint, "R. Lind", fitted)
        .withMeasured(measured, List.of())
        .withConfirmed(EnumSet.allOf(SafetyCheck.class))
        .withFit(state.lapsSoFar(), true);
  }

  private void ride(SessionId id, int stint) {
    clock.move(Duration.ofMinutes(5));
    LapInput lap =
        LapInput.of(
            new LapId(stint, 1), Map.of("lap time", new BigDecimal(180 + stint * stint % 7)));
    done(desk.sessions().act(id, s -> new DayCommands(s).record(List.of(lap), Source.SCREEN)));
  }

  private void close(SessionId id) {
    done(desk.sessions().act(id, s -> new LifeCommands(s).closeDay()));
    done(desk.keys().closeReview(id));
  }

  private void whole(SessionState state) {
    AloneDay day = desk.aloneDays().day(state).orElseThrow();
    for (int stint = day.firstStint(); stint <= day.plan().stints(); stint++) {
      SessionState now = state(state);
      if (!day.prepared() && !now.shown().containsKey(stint)) {
        assertThat(day.next(now)).isEqualTo(new AloneDay.Next.Show(stint));
        assertThat(day.show()).isInstanceOf(AloneDay.Shown.Setup.class);
      }
      now = state(state);
      AloneDay.Work work = ((AloneDay.Next.Mount) day.next(now)).work();
      Integer due = work.setup();
      done(day.mount(ready(day, stint, due == null ? 0 : due, now)));
      if (stint > 0) {
        assertThat(day.next(state(state))).isEqualTo(new AloneDay.Next.Ride(stint));
        ride(state.id(), stint);
      }
    }
    assertThat(day.next(state(state))).isEqualTo(new AloneDay.Next.Over());
  }

  @Test
  void aDrawnDayIsShownStintByStintAndOpensWithoutAPhrase() {
    SessionState state = covered("drawn");
    assertThat(state.covered()).isTrue();
    assertThat(state.shown()).isEmpty();
    whole(state);
    close(state.id());
    done(desk.keys().unsealCovered(state(state), Optional.empty()));
    SessionState open = state(state);
    assertThat(open.openedWith()).contains(OpenedWith.COVER);
    for (int stint = 1; stint <= 8; stint++) {
      assertThat(open.shown().get(stint)).isEqualTo(open.openKey().orElseThrow().setup(stint));
    }
    assertThat(open.openedHelperRecords()).containsOnlyKeys(0, 1, 2, 3, 4, 5, 6, 7, 8);
    assertThat(Reviews.day(open).fits().get(3).fitted()).isEqualTo(open.shown().get(3));
    assertThat(desk.notebook().verify().problems()).isEmpty();
  }

  @Test
  void lapsThatCameFromAFileWithoutAnythingMountedAreSaidInTheFinding() {
    SessionState mounted = covered("drawn");
    whole(mounted);
    close(mounted.id());
    done(desk.keys().unsealCovered(state(mounted), Optional.empty()));
    assertThat(desk.reviews().text(state(mounted)))
        .noneMatch(line -> line.contains("says what was mounted"));
    SessionState state = covered("drawn");
    StringBuilder laps = new StringBuilder("lap;lap time\n");
    for (int lap = 1; lap <= 8; lap++) {
      laps.append(lap).append(";9").append(lap * lap % 7).append("\n");
    }
    byte[] file = laps.toString().getBytes(java.nio.charset.StandardCharsets.UTF_8);
    done(new LapFiles(desk.sessions()).record(state, file));
    close(state.id());
    done(desk.keys().unsealCovered(state(state), Optional.empty()));
    assertThat(desk.reviews().text(state(state)))
        .contains(
            "Of stints 1, 2, 3, 4, 5, 6, 7 and 8 no entry says what was mounted: that the drawn"
                + " order was ridden there is the rider's word alone.");
  }

  @Test
  void theNextSetupIsRefusedWhileTheStintBeforeIsUnfinishedAndShownTwiceItIsTheSameEntry() {
    SessionState state = covered("drawn");
    AloneDay day = desk.aloneDays().day(state).orElseThrow();
    AloneDay.Shown first = day.show();
    int entries = state(state).entries().size();
    assertThat(((AloneDay.Shown.Setup) day.show()).work())
        .isEqualTo(((AloneDay.Shown.Setup) first).work());
    assertThat(state(state).entries()).hasSize(entries);
    int warmUp = ((AloneDay.Shown.Setup) first).work().setup();
    done(day.mount(ready(day, 0, warmUp, state(state))));
    int one = ((AloneDay.Shown.Setup) day.show()).work().setup();
    done(day.mount(ready(day, 1, one, state(state))));
    assertThat(((AloneDay.Shown.Refused) day.show()).problems().get(0).fault())
        .isEqualTo(SessionFault.SHOW_NOT_RIDDEN);
    ride(state.id(), 1);
    done(
        desk.sessions()
            .act(state.id(), s -> new DayCommands(s).voidLap(new LapId(1, 1), "crash", "")));
    assertThat(day.show()).isInstanceOf(AloneDay.Shown.Setup.class);
    done(
        desk.sessions()
            .act(state.id(), s -> new LifeCommands(s).cutShort(1, "dark", "R. Lind", true)));
    assertThat(((AloneDay.Shown.Refused) day.show()).problems().get(0).fault())
        .isEqualTo(SessionFault.SHOWN_ALL);
    close(state.id());
    assertThat(((AloneDay.Shown.Refused) day.show()).problems().get(0).fault())
        .isEqualTo(SessionFault.REVIEW_IS_CLOSED);
  }

  @Test
  void anOpenDayShowsTheWholeOrderFromTheCommitOn() {
    SessionState state = covered("open");
    assertThat(state.shown()).containsOnlyKeys(0, 1, 2, 3, 4, 5, 6, 7, 8);
    whole(state);
    close(state.id());
    done(desk.keys().unsealCovered(state(state), Optional.empty()));
  }

  @Test
  void aWrongFitCountsWhetherItIsSaidAtOnceOrLater() {
    SessionState state = covered("drawn");
    whole(state);
    AloneDay day = desk.aloneDays().day(state).orElseThrow();
    int other = 1 - state(state).shown().get(4);
    done(day.correct(4, other, "The spare was on."));
    done(day.correct(5, 1 - state(state).shown().get(5), ""));
    close(state.id());
    refused(day.correct(6, other, ""), SessionFault.REVIEW_IS_CLOSED);
    done(desk.keys().unsealCovered(state(state), Optional.empty()));
    SessionState open = state(state);
    assertThat(Reviews.day(open).fits().get(4).fitted()).isEqualTo(other);
    assertThat(Reviews.day(open).fits().get(5).fitted()).isEqualTo(1 - open.shown().get(5));
  }

  @Test
  void nothingIsMountedUnmeasuredOrUnchecked() {
    SessionState state = covered("drawn");
    AloneDay day = desk.aloneDays().day(state).orElseThrow();
    int setup = ((AloneDay.Shown.Setup) day.show()).work().setup();
    HelperEntry ready = ready(day, 0, setup, state(state));
    refused(day.mount(ready.withMeasured(Map.of(), List.of())), DeskFault.MEASURES_OPEN);
    refused(day.mount(ready.withConfirmed(EnumSet.of(SafetyCheck.AXLES))), DeskFault.CHECKS_OPEN);
    refused(day.mount(ready.withFit(0, false)), DeskFault.RIDER_NOT_FIT);
    refused(day.mount(ready(day, 1, setup, state(state))), SessionFault.SHOW_NOT_MOUNTED);
    done(day.mount(ready));
    refused(day.mount(ready), SessionFault.MOUNTED_TWICE);
  }

  @Test
  void guessesAndABrokenBlindAreRefusedWhereTheRiderKnows() {
    SessionState state = covered("drawn");
    refused(
        desk.sessions()
            .act(
                state.id(),
                s -> new DayCommands(s).stint(1, new Fact.GuessGiven(1, new Guess(0, null, "")))),
        SessionFault.GUESSES_KNOWING);
    refused(
        desk.sessions().act(state.id(), s -> new LifeCommands(s).blindBroken(1, "Seen.")),
        SessionFault.BLIND_KNOWING);
    SessionState masked = covered("masked");
    done(desk.sessions().act(masked.id(), s -> new LifeCommands(s).blindBroken(1, "A mask tore.")));
  }

  @Test
  void anotherNotebookNeitherShowsNorOpensTheOrder() {
    SessionState state = covered("drawn");
    try (Desk other = desk(folder.resolve("other.blindlap"), 2)) {
      other.notebook().addEntries(state.entries());
      AloneDay day = other.aloneDays().day(state).orElseThrow();
      assertThat(((AloneDay.Shown.Refused) day.show()).problems().get(0).fault())
          .isEqualTo(DeskFault.NO_COVER);
    }
  }

  @Test
  void masksAreSealedByAFriendGuessedOnceAndReadAfterTheReview() {
    SessionState state = covered("masked");
    MaskKeeping masks = desk.masks();
    PhraseAsked asked = masks.phrase();
    Masks mapping = masks.typed(state, List.of(1, 0)).orElseThrow();
    assertThat(masks.typed(state, List.of(1, 1))).isEmpty();
    done(masks.seal(state, mapping, asked.unasked()));
    refused(masks.seal(state(state), mapping, asked.unasked()), SessionFault.MASKS_TWICE);
    whole(state);
    assertThat(state(state).mounted().get(1))
        .contains("\"fitted\":\"")
        .containsPattern("\"fitted\":\"[XY]\"");
    assertThat(desk.aloneDays().day(state).orElseThrow().settings(3, 0))
        .extracting(Setting::name)
        .containsExactly("sag");
    refused(masks.guess(state(state), List.of(1, 0)), SessionFault.MASKS_GUESS_EARLY);
    refused(masks.read(state(state), asked.text()), SessionFault.MASKS_READ_EARLY);
    done(desk.sessions().act(state.id(), s -> new LifeCommands(s).closeDay()));
    done(masks.guess(state(state), List.of(1, 0)));
    refused(masks.guess(state(state), List.of(1, 0)), SessionFault.MASKS_GUESSED);
    done(desk.keys().closeReview(state.id()));
    done(desk.keys().unsealCovered(state(state), Optional.empty()));
    done(masks.read(state(state), asked.text()));
    assertThat(state(state).masksRead())
        .contains(new MasksRead(List.of(1, 0), MasksRead.From.PHRASE));
    assertThat(Reviews.day(state(state)).fits().get(2).fitted())
        .isEqualTo(state(state).shown().get(2));
  }

  @Test
  void preparedUnitsAreMeasuredAtOnceMountedByCodeAndOpenAsWithAHelper() {
    Committing.Result.Committed committed =
        Commits.commit(
            desk, plan("prepared"), blindlap.seal.SessionKind.comparison(), List.of("R. Lind"));
    SessionState state = committed.state();
    String phrase = committed.sealed().phrase().text();
    PreparedUnits units = units(state, phrase);
    List<HelperEntry> entries =
        units.units().stream()
            .map(
                unit -> {
                  Map<String, String> measured = new TreeMap<>();
                  unit.settings().forEach(each -> measured.put(each.name(), each.value()));
                  return units.untouched(unit).withMeasured(measured, List.of());
                })
            .toList();
    refused(units.write(entries.subList(1, 9)), DeskFault.UNITS_MISSING);
    done(units.write(entries));
    refused(units.write(entries), DeskFault.UNITS_WRITTEN);
    assertThat(state(state).handedOver(0)).isFalse();
    AloneDay day = desk.aloneDays().day(state).orElseThrow();
    done(day.mount(ready(day, 0, 0, state(state))));
    done(day.mount(ready(day, 1, 0, state(state)), new MountedUnit(2, true, "")));
    ride(state.id(), 1);
    refused(
        day.mount(ready(day, 2, 0, state(state)), new MountedUnit(2, false, "")),
        DeskFault.COVER_WORDS);
    done(day.mount(ready(day, 2, 0, state(state)), new MountedUnit(2, false, "The tape was off.")));
    assertThat(state(state).blindBroken()).extracting(Fact.BlindBroken::stint).containsExactly(2);
    assertThat(state(state).mounted().get(2)).doesNotContain("fitted").doesNotContain("planned");
    ride(state.id(), 2);
    close(state.id());
    refused(desk.keys().unsealCovered(state(state), Optional.empty()), DeskFault.NOT_COVERED);
    done(desk.keys().unseal(state(state), phrase));
    SessionState open = state(state);
    assertThat(Reviews.day(open).fits().get(1).fitted())
        .isEqualTo(open.openKey().orElseThrow().setup(2));
    assertThat(Reviews.day(open).fits()).hasSize(9);
  }

  private PreparedUnits units(SessionState state, String phrase) {
    HelperDays.Opened opened = desk.helperDays().open(state, phrase);
    return new PreparedUnits(((HelperDays.Opened.Day) opened).day());
  }

  @Test
  void aStintKeptOnPaperIsShownAndMountedWhateverIsRecordedOfTheOneBefore() {
    SessionState state = covered("drawn");
    AloneDay day = desk.aloneDays().day(state).orElseThrow();
    for (int stint = 0; stint <= 3; stint++) {
      AloneDay.Work work = ((AloneDay.Shown.Setup) day.showOnPaper()).work();
      assertThat(work.stint()).isEqualTo(stint);
      done(
          day.mountOnPaper(
              HelperEntry.untouched(stint, "R. Lind", work.setup())
                  .onPaper(new HelperEntry.Paper("R. Lind")),
              MountedUnit.asPlanned(stint)));
    }
    assertThat(state(state).shown()).hasSize(4);
    assertThat(
            state(state).entries().stream()
                .filter(each -> each.entry().fact() instanceof SetupShown))
        .hasSize(4);
  }
}
