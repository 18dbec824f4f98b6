package blindlap.screen.alone;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.AloneDay;
import blindlap.desk.MaskKeeping;
import blindlap.desk.MeasuredValues;
import blindlap.desk.PreparedUnits;
import blindlap.desk.Sessions;
import blindlap.desk.TestDay;
import blindlap.plan.Setting;
import blindlap.screen.Models;
import blindlap.screen.Outside;
import blindlap.screen.SceneText;
import blindlap.screen.Window;
import blindlap.screen.Within;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.ride.RideModel;
import blindlap.screen.ride.RidePage;
import blindlap.screen.ride.RideWays;
import blindlap.session.DayCommands;
import blindlap.session.HelperEntry;
import blindlap.session.SafetyCheck;
import blindlap.session.SessionState;
import blindlap.session.day.LapId;
import blindlap.session.day.LapInput;
import blindlap.session.day.Source;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import javafx.scene.Scene;
import javafx.scene.control.ButtonBase;
import javafx.scene.layout.StackPane;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The Ride page of a day alone tells of the order what is in hand and nothing else: with the order
 * as the only difference, it reads the same at every moment but for the stint that was shown.
 */
class AloneRidePageTest {
  private static final int ORDERS = Math.min(12, Integer.getInteger("orders", 4));
  private static final String PREPARED =
      TestDay.at("level: prepared, prepared_by: M. Oster, prepared_on: 2026-11-13");
  private static final StackPane holder = new StackPane();
  private static Look look;
  private static Scene scene;

  private @TempDir(factory = RamFolder.class) Path folder;

  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(
        () -> {
          Fonts.load();
          look = new Look();
          scene = new Scene(holder, 1366, 768);
          look.dress(scene);
        });
  }

  /** What the page showed: moments that may differ by what is in hand stand apart. */
  private record Seen(List<Integer> order, List<String> always, Map<String, String> inHand) {}

  private Seen day(TestDay day) {
    List<String> always = new ArrayList<>();
    Map<String, String> inHand = new LinkedHashMap<>();
    Window.run(
        () -> {
          RideModel ride = Models.ride(day);
          AloneModel alone = Models.alone(day, ride);
          holder
              .getChildren()
              .setAll(
                  new RidePage(
                      look,
                      ride,
                      new AloneView(look, alone),
                      () -> {},
                      new RideWays(() -> {}, () -> {})));
          boolean prepared = day.state().plan().blinding().level().blind();
          for (int stint = 0; stint <= 8; stint++) {
            always.add("before " + stint + text());
            if (!prepared) {
              alone.showNext();
              inHand.put(hand(day.state(), stint), text());
            }
            mount(day, alone, stint, prepared ? always : new ArrayList<>());
            always.add("safe " + stint + text());
            lap(ride, stint);
            always.add("ridden " + stint + text());
            if (stint > 0) {
              ride.next();
            }
          }
          ride.events().closeDay();
          always.add("closed" + text());
          holder.getChildren().clear();
        });
    return new Seen(List.copyOf(day.state().shown().values()), always, inHand);
  }

  /** What was on before and what is to be mounted now. */
  private static String hand(SessionState state, int stint) {
    return stint + ": " + state.shown().get(stint - 1) + " to " + state.shown().get(stint);
  }

  private static String text() {
    scene.getRoot().applyCss();
    scene.getRoot().layout();
    return "\n" + SceneText.of(scene);
  }

  private static void mount(TestDay day, AloneModel alone, int stint, List<String> seen) {
    AloneSheet sheet = alone.sheetProperty().get().orElseThrow();
    AloneDay open = day.desk().aloneDays().day(day.state()).orElseThrow();
    seen.add("mount " + stint + text());
    for (Setting setting : open.work(day.state(), stint).settings()) {
      alone.measured(setting.name(), setting.value());
    }
    sheet.checks().forEach(check -> alone.confirm(check.key(), true));
    if (sheet.fitAsked()) {
      alone.fit(true);
    }
    if (sheet.prepared()) {
      alone.whole(true);
    }
    seen.add("ready " + stint + text());
    alone.mounted();
    assertThat(alone.troubleProperty().get()).isEmpty();
    assertThat(day.state().handedOver(stint)).isTrue();
  }

  private static void lap(RideModel ride, int stint) {
    if (stint == 0) {
      ride.warmUpRidden();
      return;
    }
    ride.answer("trust", BigDecimal.valueOf(1 + stint % 8));
    ride.lapDone();
  }

  private List<Seen> days(String plan, int days) {
    List<Seen> seen = new ArrayList<>();
    for (long seed = 1; seed <= days; seed++) {
      try (TestDay day = new TestDay(folder, plan, seed)) {
        if (plan.equals(PREPARED)) {
          prepare(day);
        }
        seen.add(day(day));
      }
    }
    return seen;
  }

  private static void prepare(TestDay day) {
    PreparedUnits units = new PreparedUnits(day.helper());
    List<HelperEntry> entries = new ArrayList<>();
    for (PreparedUnits.Unit unit : units.units()) {
      HelperEntry entry = units.untouched(unit);
      for (Setting setting : unit.settings()) {
        entry = MeasuredValues.judged(unit.settings(), entry, setting.name(), setting.value());
      }
      entries.add(entry);
    }
    assertThat(units.write(entries)).isInstanceOf(Sessions.Result.Done.class);
  }

  private static void sameButForWhatIsInHand(List<Seen> days) {
    Map<String, String> inHand = new HashMap<>();
    for (Seen seen : days) {
      assertThat(seen.always()).hasSize(28).isEqualTo(days.get(0).always());
      seen.inHand()
          .forEach(
              (hand, words) -> {
                String before = inHand.putIfAbsent(hand, words);
                assertThat(words).as(hand).isEqualTo(before == null ? words : before);
              });
    }
    assertThat(days.stream().map(Seen::order).distinct().count()).isGreaterThan(2);
    assertThat(inHand).hasSizeGreaterThan(18);
  }

  @Test
  void ofADrawnDayOnlyTheStintInHandIsToldWhateverTheOrder() {
    sameButForWhatIsInHand(days(TestDay.at("level: drawn"), ORDERS));
  }

  @Test
  void ofMaskedLabelsOnlyTheLabelInHandIsToldWhateverTheOrder() {
    sameButForWhatIsInHand(
        days(TestDay.at("level: masked, prepared_by: M. Oster, masks: marks"), ORDERS));
  }

  @Test
  void whichLabelIsWhichIsToldAtNoMomentOfTheDay() {
    List<Seen> days = new ArrayList<>();
    for (List<Integer> mapping : List.of(List.of(0, 1), List.of(1, 0))) {
      Path file = folder.resolve("masked-" + mapping.get(0) + ".blindlap");
      String plan = TestDay.at("level: masked, prepared_by: M. Oster");
      try (TestDay day = new TestDay(file, plan, 3, Optional.empty())) {
        MaskKeeping masks = day.desk().masks();
        assertThat(
                masks.seal(
                    day.state(),
                    masks.typed(day.state(), mapping).orElseThrow(),
                    masks.phrase().unasked()))
            .isInstanceOf(Sessions.Result.Done.class);
        days.add(day(day));
      }
    }
    assertThat(days.get(0)).isEqualTo(days.get(1));
    assertThat(days.get(0).inHand().values()).allMatch(words -> !words.contains("Shock"));
  }

  @Test
  void ofPreparedUnitsNothingIsToldWhateverTheOrder() {
    List<Seen> days = days(PREPARED, ORDERS);
    for (Seen seen : days) {
      assertThat(seen.always()).hasSize(46).isEqualTo(days.get(0).always());
    }
    TreeSet<String> orders = new TreeSet<>();
    for (long seed = 1; seed <= ORDERS; seed++) {
      try (TestDay day =
          new TestDay(folder.resolve("again-" + seed), PREPARED, seed, Optional.empty())) {
        orders.add(day.order());
      }
    }
    assertThat(orders).hasSizeGreaterThan(2);
  }

  /** Looked at; the level of the plan, and what it is called in a picture. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "open     | level: open",
        "drawn    | level: drawn",
        "masked   | level: masked, prepared_by: M. Oster, masks: marks",
        "prepared | level: prepared, prepared_by: M. Oster, prepared_on: 2026-11-13"
      })
  void whatIsMountedAndCheckedLiesWholeInAWindowOf1366By768(String name, String level) {
    Map<String, List<String>> wrong = new LinkedHashMap<>();
    try (TestDay day = new TestDay(folder, TestDay.at(level), 2)) {
      if (name.equals("prepared")) {
        prepare(day);
      }
      Window.run(
          () -> {
            RideModel ride = Models.ride(day);
            AloneModel alone = Models.alone(day, ride);
            AloneView view = new AloneView(look, alone);
            holder
                .getChildren()
                .setAll(new RidePage(look, ride, view, () -> {}, new RideWays(() -> {}, () -> {})));
            for (int stint = 0; stint <= 2; stint++) {
              String moment = name + "-" + stint;
              if (alone.sheetProperty().get().orElseThrow().hidden()) {
                whole(moment + "-hidden", wrong);
                alone.showNext();
              }
              whole(moment + "-mount", wrong);
              assertThat(view.first())
                  .as("a key that bounces answers nothing")
                  .isNotInstanceOf(ButtonBase.class);
              if (name.equals("prepared")) {
                alone.whole(false);
                whole(moment + "-torn", wrong);
                alone.whole(true);
              }
              alone.measured("front tyre", "1.7");
              whole(moment + "-outside", wrong);
              mount(day, alone, stint, new ArrayList<>());
              lap(ride, stint);
              if (stint > 0) {
                ride.next();
              }
            }
            holder.getChildren().clear();
          });
    }
    assertThat(wrong).isEmpty();
  }

  private static void whole(String moment, Map<String, List<String>> wrong) {
    Window.picture(scene, "alone-whole-" + moment);
    List<String> outside = Outside.of(scene);
    if (!outside.isEmpty()) {
      wrong.put(moment, outside);
    }
  }

  @Test
  void whatWasKeptOnPaperIsRecordedOnThePageAsItStandsThere() {
    try (TestDay day = new TestDay(folder, TestDay.at("level: drawn"), 2)) {
      Window.run(
          () -> {
            RideModel ride = Models.ride(day);
            AloneModel alone = Models.alone(day, ride);
            RidePage page =
                new RidePage(
                    look,
                    ride,
                    new AloneView(look, alone),
                    () -> {},
                    new RideWays(() -> {}, () -> {}));
            holder.getChildren().setAll(page);
            alone.showNext();
            mount(day, alone, 0, new ArrayList<>());
            ride.warmUpRidden();
            LapInput lap = LapInput.of(new LapId(1, 1), Map.of("lap time", new BigDecimal("93.4")));
            day.desk()
                .sessions()
                .act(day.id(), now -> new DayCommands(now).record(List.of(lap), Source.PAPER));
            ride.tick();
            alone.reload();
            assertThat(text()).contains("Stint 1 is on record already");
            alone.showNext();
            assertThat(text()).contains("Record stint 1 as on paper");
            Window.picture(scene, "alone-paper");
            assertThat(Within.of(page, "from paper").wrong()).isEmpty();
            alone.measured("compression", "6");
            alone.confirm(SafetyCheck.AXLES.name(), true);
            alone.mounted();
            assertThat(alone.troubleProperty().get()).isEmpty();
            holder.getChildren().clear();
          });
      SessionState state = day.state();
      assertThat(state.mounted()).containsOnlyKeys(0, 1);
      assertThat(state.lap(new LapId(1, 1)).orElseThrow().ridden()).isTrue();
      assertThat(state.shown()).as("the next is not shown by that").containsOnlyKeys(0, 1);
    }
  }
}
