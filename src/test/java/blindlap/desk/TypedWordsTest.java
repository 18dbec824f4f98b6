package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.plan.Setting;
import blindlap.session.Fact;
import blindlap.session.HelperEntry;
import blindlap.session.LifeCommands;
import blindlap.session.Outcome;
import blindlap.session.SafetyCheck;
import blindlap.session.day.DayEvent;
import blindlap.session.day.DeviationKind;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.Source;
import blindlap.session.day.VoidEvent;
import blindlap.timing.TimeRecord;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
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

/**
 * A word of its own is typed into every field of a day: whoever reads the report finds each of
 * them, and before the key is open nobody finds one of the helper's.
 */
class TypedWordsTest {
  private static final String TIME = "lap time";
  private static final String GRIP = "grip in the rocks";
  private static final String PLAN =
      TestDay.EIGHT
          .replace(
              "blinding: {helper: M. Oster, cover: Cloth over the shock}",
              """
          blinding: {helper: Wqhelperplan, others_who_know: Wqothers, cover: Wqcover, ballast: Wqballast, noise: Wqnoise, rider_waits: Wqwaits, bike_moved_by: Wqmoved, levers_touched_by: Wqlevers, remaining_cues: Wqremaining, helper_waits: Wqhelperwaits, timed_by: Wqtimedby}
          expectations: {tester: Wqtester, rider: Wqrider, helper: Wqhelperexpects}
          """
                  .strip())
          .replace("bike:\n", "bike:\n  - {name: grip tape, value: black, check: each lap}\n");

  /** Typed where the rider may see it. */
  private static final List<String> OPEN =
      List.of(
          "Wqhelperplan",
          "Wqothers",
          "Wqcover",
          "Wqballast",
          "Wqnoise",
          "Wqwaits",
          "Wqmoved",
          "Wqlevers",
          "Wqremaining",
          "Wqhelperwaits",
          "Wqtimedby",
          "Wqtester",
          "Wqrider",
          "Wqhelperexpects",
          "Wqstarterexpects",
          "Wqgiven",
          "Wqreprint",
          "Wqnotefirst",
          "Wqnotesecond",
          "Wqnote",
          "Wqcuefirst",
          "Wqcueback",
          "Wqcue",
          "Wqwind",
          "Wqbroken",
          "Wqwarmup",
          "Wqdeviation",
          "Wqcap",
          "Wqtimekeeper",
          "Wqnotegone",
          "Wqchanged",
          "Wqvoid",
          "Wqafterseen",
          "Wqgone",
          "Wqwithdrawn",
          "Wqcorrection",
          "Wqcut",
          "Wqdecider",
          "Wqlatenote",
          "Wqlatevoid",
          "Wqamended",
          "Wqreason");

  /** Typed behind the helper's phrase. */
  private static final List<String> SEALED =
      List.of("Zqhelper", "Zqsecond", "Zqnote", "Zqoutside", "Zqsaid", "Zqmeasured", "Zqwarmup");

  private @TempDir(factory = RamFolder.class) Path folder;
  private TestDay day;

  @BeforeEach
  void open() {
    day = new TestDay(folder, PLAN, 3);
  }

  @AfterEach
  void close() {
    day.close();
  }

  private void write(Fact fact) {
    day.desk().sessions().act(day.id(), latest -> Outcome.accepted(fact));
  }

  private static LapId lap(int stint) {
    return new LapId(stint, 1);
  }

  private void time(int stint, String seconds, TimeRecord.TimedBy who) {
    Instant start = day.clock().instant();
    BigDecimal value = new BigDecimal(seconds);
    day.clock().move(Duration.ofMillis(value.movePointRight(3).longValueExact()));
    long nanos = value.movePointRight(9).longValueExact();
    TimeRecord time = new TimeRecord(start, day.clock().instant(), nanos, who, null);
    write(new Fact.TimeTaken(lap(stint), TIME, time));
  }

  private HelperEntry entry(HelperDay helper, int stint, String note) {
    HelperDay.Work work = helper.work(stint);
    Map<String, String> measured = new LinkedHashMap<>();
    for (Setting setting : work.settings()) {
      measured.put(setting.name(), setting.value());
    }
    return new HelperEntry(
        stint,
        stint < 5 ? "Zqhelper" : "Zqsecond",
        work.setup(),
        stint == 6 ? 1 - work.setup() : work.setup(),
        day.clock().instant(),
        null,
        measured,
        List.of(),
        EnumSet.allOf(SafetyCheck.class),
        new TreeMap<>(stint == 0 ? Map.of() : Map.of(0, true)),
        List.of(),
        note);
  }

  private void handled() {
    HelperDay helper = day.helper();
    written(helper.write(entry(helper, 0, "Zqwarmup")));
    for (int stint = 1; stint <= 8; stint++) {
      HelperEntry entry = entry(helper, stint, stint == 2 ? "Zqnote" : "");
      if (stint == 3) {
        Map<String, String> measured = new LinkedHashMap<>(entry.measured());
        measured.put("sag", "24");
        measured.put("grip tape", "Zqmeasured");
        HelperEntry.Outside out =
            new HelperEntry.Outside("sag", "26 %", "24", new BigDecimal("-2"), "Zqoutside");
        entry = entry.withMeasured(measured, List.of(out));
      }
      if (stint == 4) {
        entry = entry.withEvent(new HelperEntry.Said(4, DayEvent.COVER_OFF, "Zqsaid"));
      }
      written(helper.write(entry));
    }
  }

  private static void written(Sessions.Result result) {
    assertThat(result).isInstanceOf(Sessions.Result.Done.class);
  }

  private void ridden() {
    write(new Fact.FingerprintGiven(Fact.Which.PLAN, "Wqgiven", null));
    write(new Fact.ExpectationGiven(Fact.Person.STARTER, "Wqstarterexpects"));
    write(new Fact.SheetReprinted("Wqreprint"));
    write(new Fact.DeviationNoted(0, DeviationKind.COVER_OFF, "Wqwarmup"));
    for (int stint = 1; stint <= 7; stint++) {
      time(stint, "91." + stint, TimeRecord.TimedBy.STARTER);
      BigDecimal grip = BigDecimal.valueOf(40 + stint * stint % 11);
      write(new Fact.ScoreGiven(lap(stint), GRIP, grip, Source.SCREEN));
      write(new Fact.LapRidden(lap(stint), Source.SCREEN));
    }
    time(2, "88.25", TimeRecord.TimedBy.OTHER);
    write(new Fact.NoteWritten(lap(1), "Wqnotefirst"));
    write(new Fact.NoteWritten(lap(1), "Wqnotesecond"));
    write(new Fact.NoteWritten(lap(1), "Wqnote"));
    write(new Fact.NoteWritten(lap(2), "Wqnotegone"));
    write(new Fact.NoteWritten(lap(2), ""));
    write(new Fact.GuessGiven(1, new Guess(1, null, "")));
    write(new Fact.GuessGiven(1, new Guess(1, Guess.Sureness.CERTAIN, "Wqcuefirst")));
    write(new Fact.GuessGiven(1, new Guess(0, Guess.Sureness.HUNCH, "Wqcue")));
    write(new Fact.GuessGiven(2, new Guess(0, Guess.Sureness.HUNCH, "")));
    write(new Fact.GuessGiven(2, new Guess(null, Guess.Sureness.HUNCH, "")));
    write(new Fact.GuessGiven(3, new Guess(1, null, "Wqcueback")));
    write(new Fact.GuessTakenBack(3));
    write(new Fact.ConditionsNoted(lap(1), Map.of("wind", "Wqwind")));
    write(new Fact.BlindBroken(2, "Wqbroken"));
    write(new Fact.DeviationNoted(3, DeviationKind.OTHER, "Wqdeviation"));
    write(new Fact.DeviationNoted(3, DeviationKind.LAP_CAP, "Wqcap"));
    write(new Fact.DeviationNoted(4, DeviationKind.TIMEKEEPER_KNOWS_KEY, "Wqtimekeeper"));
    write(new Fact.DeviationNoted(6, DeviationKind.SCORER_KNOWS_KEY, GRIP));
    write(new Fact.DeviationNoted(5, DeviationKind.HELPER_CHANGED, "Wqchanged"));
    write(new Fact.LapVoided(lap(5), VoidEvent.TRAFFIC, "Wqvoid", false));
    write(new Fact.DayCutShort(7, "Wqcut", "Wqdecider", true));
    write(new Fact.DayClosed());
    write(new Fact.LapVoided(lap(6), VoidEvent.STOPPED, "Wqgone", true));
    write(new Fact.VoidWithdrawn(lap(6), "Wqwithdrawn"));
    write(new Fact.LapVoided(lap(7), VoidEvent.CRASH, "Wqafterseen", true));
    write(new Fact.ScoreCorrected(lap(3), TIME, new BigDecimal("93.3"), "Wqcorrection"));
    day.desk().sessions().act(day.id(), latest -> new LifeCommands(latest).closeReview());
    write(new Fact.NoteWritten(lap(4), "Wqlatenote"));
    write(new Fact.LapVoided(lap(4), VoidEvent.CRASH, "Wqlatevoid", true));
  }

  private void unsealed() {
    day.desk().keys().unseal(day.state(), day.phrase());
    write(new Fact.AmendmentMade("Wqamended", "Wqreason"));
    assertThat(day.state().unsealed()).isTrue();
  }

  private static List<String> lacking(List<String> words, String text) {
    return words.stream().filter(word -> !text.contains(word)).toList();
  }

  private static List<String> found(List<String> words, String text) {
    return words.stream().filter(text::contains).toList();
  }

  private static String all(Map<String, byte[]> files) {
    StringBuilder text = new StringBuilder();
    files.forEach((name, bytes) -> text.append(new String(bytes, StandardCharsets.UTF_8)));
    return text.toString();
  }

  /** The words of the page: its plan stands there as hashed as well, which is not counted. */
  private String report() {
    String html = day.desk().reviews().html(day.state(), false);
    return html.substring(0, html.indexOf("id=\"plan-text\""));
  }

  @Test
  void everyWordThatIsTypedOnADayStandsInItsReport() {
    handled();
    ridden();
    unsealed();
    assertThat(lacking(OPEN, report())).isEmpty();
    assertThat(lacking(SEALED, report())).isEmpty();
  }

  @Test
  void beforeTheKeyIsOpenNothingHoldsAWordOfTheHelper() throws IOException {
    handled();
    ridden();
    List<String> texts = new ArrayList<>();
    texts.add(all(day.desk().reviews().export(day.state())));
    day.state().entries().forEach(entry -> texts.add(entry.text()));
    try (var files = Files.list(folder)) {
      for (Path file : files.toList()) {
        texts.add(Files.readString(file, StandardCharsets.ISO_8859_1));
      }
    }
    assertThat(texts).hasSizeGreaterThan(30);
    assertThat(texts).allSatisfy(text -> assertThat(found(SEALED, text)).isEmpty());
    assertThat(String.join("", texts)).contains("Wqnote", "Wqcut");
    assertThat(day.desk().reviews().refuse(day.state())).isPresent();
  }

  @Test
  void aScorerWhoKnowsTheKeyIsSaidBesideTheVerdictOfTheMeasureThatWasScored() {
    day.close();
    String plan =
        PLAN.replace("role: primary, worthwhile: 0.5", "worthwhile: 0.5")
            .replace(
                GRIP + ", kind: line scale,",
                GRIP + ", kind: line scale, role: primary, worthwhile: 5, better: higher,");
    day = new TestDay(folder, plan, 4);
    handled();
    ridden();
    unsealed();
    String said =
        "In stint 6, grip in the rocks was scored by someone who knew the key; such a score may follow what was expected.";
    List<String> text = day.desk().reviews().text(day.state());
    assertThat(text).contains(said);
    assertThat(text.indexOf(said)).as("%s", text).isLessThan(text.size() / 3);
    assertThat(text)
        .contains("lap time: in stint 4 timed by someone who knew the key (Wqtimekeeper).");
    assertThat(report()).contains(said, "Stint 6, scorer knows the key: grip in the rocks");
    assertThat(PackageReview.of(day.desk().reviews().export(day.state())).text()).contains(said);
  }

  @Test
  void whatCastsDoubtOnAVerdictStandsInTextReportAndDataPackage() {
    handled();
    ridden();
    unsealed();
    List<String> weighty =
        List.of(
            "It was Wqdecider who decided that the day ends, and knew the key: Wqcut",
            "Lap 7 was declared void after values could be seen.",
            "In stint 4 the time was taken by someone who knew the key (Wqtimekeeper)",
            "grip in the rocks: in stint 6 scored by someone who knew the key.",
            "Lap 1, note: \"Wqnotefirst\" was replaced by \"Wqnotesecond\" on 20",
            "Lap 1, note: \"Wqnotesecond\" was replaced by \"Wqnote\" on 20",
            "Lap 2, note: \"Wqnotegone\" was taken out on 20",
            "Stint 1, guess: Shock L was replaced by Shock K on 20",
            "Stint 1, how sure the guess is: certain was replaced by a hunch on 20",
            "Stint 1, what gave it away: \"Wqcuefirst\" was replaced by \"Wqcue\" on 20",
            "Stint 2, guess: Shock K was replaced by don't know on 20",
            "Lap 2, lap time: 91.2 was replaced by 88.25.",
            "Lap 3, lap time: 91.3 was corrected to 93.3 (reason: Wqcorrection).",
            "Stint 3: sag was 24, aimed at 26 %, and accepted outside its tolerance (reason: Zqoutside).",
            "Warm-up, cover off: Wqwarmup",
            "lap time: 6 laps timed by the starter.",
            "lap time: 1 lap timed by someone else.");
    String text = String.join("\n", day.desk().reviews().text(day.state()));
    assertThat(lacking(weighty, text)).isEmpty();
    assertThat(lacking(weighty, report().replace("&quot;", "\""))).isEmpty();
    Map<String, byte[]> files = day.desk().reviews().export(day.state());
    assertThat(PackageReview.of(files).text())
        .filteredOn(line -> !line.contains("Wqamended"))
        .isEqualTo(text.lines().filter(line -> !line.contains("Wqamended")).toList());
    String record =
        new String(
            Optional.ofNullable(files.get("record.csv")).orElseThrow(), StandardCharsets.UTF_8);
    assertThat(lacking(List.of("Wqdecider", "91.2,88.25", "Zqoutside", "Wqtimekeeper"), record))
        .isEmpty();
  }
}
