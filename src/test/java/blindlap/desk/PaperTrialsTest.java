package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.day.DayResult;
import blindlap.desk.day.LapTable;
import blindlap.fault.Problem;
import blindlap.plan.TellingTask;
import blindlap.session.Fact;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.Source;
import blindlap.session.day.Trial;
import blindlap.wording.day.Problems;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A telling run keyed in from paper: one answer a trial, beside its last lap. */
class PaperTrialsTest {
  @TempDir(factory = RamFolder.class)
  Path folder;

  private TestDay day(TellingTask task, int trials) {
    return new TestDay(folder, TellingTestDay.shocks(task, trials), 7);
  }

  /** The day's table with cells typed, each as "lap column=words". */
  private static LapTable typed(TestDay day, String... cells) {
    LapTable empty = LapTable.empty(day.state().day());
    List<List<String>> rows = new ArrayList<>(empty.rows());
    for (String cell : cells) {
      String[] parts = cell.split("[ =]", 3);
      for (int i = 0; i < rows.size(); i++) {
        if (rows.get(i).get(0).equals(parts[0])) {
          List<String> row = new ArrayList<>(rows.get(i));
          row.set(empty.columns().indexOf(parts[1]), parts[2]);
          rows.set(i, row);
        }
      }
    }
    return new LapTable(empty.columns(), rows);
  }

  private static DayResult record(TestDay day, LapTable table) {
    return day.desk().keyingIn().record(day.state().day(), table, List.of());
  }

  private static String trials(TestDay day) {
    return Trial.of(day.state().day()).stream()
        .map(trial -> trial.standing() + (trial.named() == null ? "" : " " + trial.named()))
        .collect(Collectors.joining(", "));
  }

  private static List<Integer> ridden(TestDay day) {
    return day.state().laps().stream()
        .filter(lap -> lap.ridden())
        .map(lap -> lap.id().stint())
        .toList();
  }

  @Test
  void theTableAsksForOneAnswerBesideTheLastLapOfEveryTrial() {
    try (TestDay day = day(TellingTask.TRIANGLE, 5)) {
      LapTable empty = LapTable.empty(day.state().day());
      assertThat(empty.columns())
          .containsExactly("lap", "code", "answer", "sureness", "void", "note");
      assertThat(empty.rows()).hasSize(15);
      for (int lap = 1; lap <= 15; lap++) {
        for (String column : List.of("answer", "sureness")) {
          assertThat(LapTable.asked(day.state().day(), lap, column)).isEqualTo(lap % 3 == 0);
        }
        assertThat(LapTable.asked(day.state().day(), lap, "void")).isTrue();
      }
    }
  }

  @Test
  void anAnsweredTrialWasRiddenWholeAVoidOneToItsEventAndTheRestNotAtAll() {
    try (TestDay day = day(TellingTask.TRIANGLE, 5)) {
      LapTable first =
          typed(
              day,
              "3 answer=2",
              "3 sureness=h",
              "3 note=gusts",
              "5 void=traffic",
              "5 note=walkers",
              "9 answer=lap 3",
              "9 sureness=certain");
      LapTable again = first.settled(difference(9, 2, "answer"), "1");
      List<LapTable.Difference> slips = first.differences(again);
      assertThat(slips).hasSize(1);
      assertThat(slips.get(0).lap()).isEqualTo("9");
      assertThat(slips.get(0).first()).isEqualTo("lap 3");
      assertThat(slips.get(0).second()).isEqualTo("1");

      assertThat(record(day, again.settled(slips.get(0), "3"))).isInstanceOf(DayResult.Done.class);

      assertThat(trials(day)).isEqualTo("ANSWERED 2, VOID, ANSWERED 3, OPEN, OPEN");
      assertThat(ridden(day)).containsExactly(1, 2, 3, 4, 5, 7, 8, 9);
      assertThat(day.state().day().guesses().get(3).sureness()).isEqualTo(Guess.Sureness.HUNCH);
      assertThat(day.state().lap(new LapId(5, 1)).orElseThrow().note()).isEqualTo("walkers");
      assertThat(day.state().entries())
          .filteredOn(e -> e.entry().fact() instanceof Fact.LapRidden)
          .allMatch(e -> ((Fact.LapRidden) e.entry().fact()).source() == Source.PAPER);
      // What is left to type: the two trials of which nothing stood on the sheets.
      assertThat(LapTable.empty(day.state().day()).rows().stream().map(row -> row.get(0)))
          .containsExactly("10", "11", "12", "13", "14", "15");
    }
  }

  private static LapTable.Difference difference(int lap, int column, String heading) {
    return new LapTable.Difference(lap - 1, column, String.valueOf(lap), heading, "", "");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "TRIANGLE|4 void=crash;6 answer=2|6|Trial 2 has both a void and an answer, and a trial is"
            + " void before its answer or not at all. Nothing was recorded; look at the sheet: if"
            + " the event came first, take the answer out, else take the void out and write the"
            + " event as a note.",
        "TRIANGLE|6 void=crash;6 answer=2;6 sureness=c|6|Trial 2 has both a void and an answer,",
        "TRIANGLE|4 void=crash;6 sureness=c|6|Trial 2 has both a void and an answer,",
        "TRIANGLE|5 answer=2|5|Lap 5 is not the last of trial 2, so no answer is given there."
            + " Nothing was recorded; answer at lap 6",
        "TRIANGLE|6 answer=-|6|Trial 2 needs an answer that names a lap. Nothing was recorded;"
            + " pick one of its laps 1 to 3",
        "TRIANGLE|6 sureness=h|6|Trial 2 needs an answer that names a lap.",
        "TRIANGLE|6 answer=4|6|\"4\" names no lap that can be picked in a trial. Nothing was"
            + " recorded; pick one of laps 1 to 3",
        "DUO_TRIO|6 answer=1|6|\"1\" names no lap that can be picked in a trial. Nothing was"
            + " recorded; pick one of laps 2 to 3",
        "TWO_CHOICE|4 answer=3|4|\"3\" names no lap that can be picked in a trial.",
        "TWO_CHOICE|4 answer=Shock K|4|\"Shock K\" names no lap that can be picked in a trial.",
        "TRIANGLE|4 void=bad score|4|\"bad score\" is not an event that makes a lap void",
        "TRIANGLE|4 void=crash;5 note=odd|5|Trial 2 is void from lap 4 on, so lap 5 was not"
            + " ridden, and yet something stands there. Nothing was recorded; type it beside lap"
            + " 4, and leave the rest of the trial empty.",
      })
  void whatTheSheetCannotSayIsRefusedAtItsLapAndNothingIsRecorded(
      TellingTask task, String cells, int lap, String sentence) {
    try (TestDay day = day(task, 3)) {
      List<String> all = new ArrayList<>(List.of(cells.split(";")));
      all.add(task.laps() + " answer=2");
      LapTable table = typed(day, all.toArray(String[]::new));

      DayResult result = record(day, table);

      assertThat(result).isInstanceOf(DayResult.Refused.class);
      List<Problem> problems = ((DayResult.Refused) result).problems();
      assertThat(problems).hasSize(1);
      assertThat(problems.get(0).where()).isEqualTo("lap " + lap);
      assertThat(Problems.sentence(problems.get(0))).contains(sentence);
      assertThat(ridden(day)).isEmpty();
      // The same stands at the row while it is typed, and nothing at those of other trials.
      for (int row = 0; row < table.rows().size(); row++) {
        assertThat(day.desk().keyingIn().check(day.state().day(), table, row))
            .isEqualTo(row == lap - 1 ? problems : List.of());
      }
    }
  }

  @Test
  void anAnswerWhoseLapsHaveNoRowIsRefusedWithItsLine() {
    try (TestDay day = day(TellingTask.TRIANGLE, 3)) {
      PaperKeying keying = day.desk().keyingIn();
      byte[] file = "lap;answer\n1;\n3;2\n".getBytes(StandardCharsets.UTF_8);
      PaperKeying.Files files = keying.compare(day.state(), file, file);
      assertThat(files.problems()).isEmpty();
      Sessions.Result result = keying.record(day.state(), files, List.of());
      Problem problem = ((Sessions.Result.Refused) result).problems().get(0);
      assertThat(Problems.sentence(problem))
          .isEqualTo(
              "Line 3: Trial 1 is not ridden to its end: lap 2 is missing. Its answer was not"
                  + " recorded; ride all its laps first, or void the trial.");
      assertThat(ridden(day)).isEmpty();
    }
  }

  @Test
  void theEmptyFormFilledInHalfWayRecordsTheTrialsThatWereRidden() {
    try (TestDay day = day(TellingTask.TWO_CHOICE, 4)) {
      PaperKeying keying = day.desk().keyingIn();
      String form = new String(keying.form(day.state()), StandardCharsets.UTF_8);
      assertThat(form).startsWith("lap;code;answer;sureness;void;note\n1;");
      List<String> lines = new ArrayList<>(form.lines().toList());
      lines.set(2, lines.get(2).replace(";;;;", ";1;f;;"));
      lines.set(3, lines.get(3).replace(";;;;", ";;;puncture;"));
      byte[] file = String.join("\n", lines).getBytes(StandardCharsets.UTF_8);

      PaperKeying.Files files = keying.compare(day.state(), file, file);
      assertThat(files.found()).isEmpty();
      assertThat(keying.record(day.state(), files, List.of()))
          .isInstanceOf(Sessions.Result.Done.class);

      assertThat(ridden(day)).containsExactly(1, 2, 3);
      assertThat(trials(day)).isEqualTo("ANSWERED 1, VOID, OPEN, OPEN");
      assertThat(day.state().nextLap()).contains(new LapId(5, 1));
    }
  }

  @Test
  void aFileOfLapsHasAnAnswerByEitherNameAndARowIsARiddenLap() {
    try (TestDay day = day(TellingTask.TWO_CHOICE, 4)) {
      LapFiles files = new LapFiles(day.desk().sessions());
      Sessions.Result twice =
          files.record(day.state(), "lap;answer;guess\n1;;\n".getBytes(StandardCharsets.UTF_8));
      assertThat(((Sessions.Result.Refused) twice).problems()).hasSize(1);
      Sessions.Result unknown =
          files.record(day.state(), "lap;pick\n1;\n".getBytes(StandardCharsets.UTF_8));
      assertThat(Problems.sentence(((Sessions.Result.Refused) unknown).problems().get(0)))
          .contains("lap_in_stint, answer, sureness");
      for (String file : List.of("lap;guess\n1;\n2;2\n", "lap;answer\n3;\n4;lap 1\n5;\n")) {
        assertThat(files.record(day.state(), file.getBytes(StandardCharsets.UTF_8)))
            .isInstanceOf(Sessions.Result.Done.class);
      }
      assertThat(ridden(day)).containsExactly(1, 2, 3, 4, 5);
      assertThat(trials(day)).isEqualTo("ANSWERED 2, ANSWERED 1, OPEN, OPEN");
      Sessions.Result both =
          files.record(
              day.state(), "lap;answer;void\n6;1;crash\n".getBytes(StandardCharsets.UTF_8));
      assertThat(Problems.sentence(((Sessions.Result.Refused) both).problems().get(0)))
          .startsWith("Line 2: Trial 3 has both a void and an answer,");
      assertThat(ridden(day)).hasSize(5);
    }
  }

  private static byte[] bytes(List<String> lines) {
    return String.join("\n", lines).getBytes(StandardCharsets.UTF_8);
  }

  private static List<String> helperForm(TestDay day) {
    return new ArrayList<>(
        new String(CaughtUp.form(day.state()), StandardCharsets.UTF_8).lines().toList());
  }

  @Test
  void theHelpersPaperIsCaughtUpByTrialWithTheLinesThatWereCarriedOnAndAWrongFit() {
    try (TestDay day = day(TellingTask.TRIANGLE, 3)) {
      assertThat(record(day, typed(day, "1 void=traffic", "6 answer=2")))
          .isInstanceOf(DayResult.Done.class);
      List<String> form = helperForm(day);
      assertThat(form).hasSize(11);
      assertThat(form.get(0)).startsWith("trial;stint;code;fitted;");
      assertThat(form.get(1)).startsWith(";0;;;");
      assertThat(form.get(5)).startsWith("2;4;" + day.state().codes().get(3) + ";;");
      // All lines of the void trial were carried on, and in stint 5 the other shock was on.
      int wrong = 1 - day.helper().work(5).setup();
      for (int stint = 0; stint <= 6; stint++) {
        String name = stint == 5 ? (wrong == 0 ? "Shock K" : "Shock L") : "as scheduled";
        String code = stint == 0 ? "" : String.valueOf(day.state().codes().get(stint - 1));
        form.set(
            stint + 1,
            form.get(stint + 1).replaceFirst(";" + stint + ";" + code + ";", "$0" + name));
      }
      List<String> swapped = new ArrayList<>(form);
      swapped.set(5, form.get(5).replaceFirst("2", "1"));
      assertThat(
              CaughtUp.read(day.state(), bytes(swapped)).problems().stream()
                  .map(Problems::sentence))
          .containsExactly(
              "Line 6: Stint 4 does not belong to trial 1. Nothing was recorded; look at the"
                  + " sheet.");

      CaughtUp.Paper paper = CaughtUp.read(day.state(), bytes(form));
      assertThat(paper.problems()).isEmpty();
      assertThat(new CaughtUp(day.helper()).record(paper.stints()))
          .isInstanceOf(Sessions.Result.Done.class);

      assertThat(day.state().helperRecords()).containsOnlyKeys(0, 1, 2, 3, 4, 5, 6);
      assertThat(day.helper().work(6).comesOff()).isEqualTo(wrong);
      assertThat(helperForm(day)).hasSize(4);
    }
  }

  @Test
  void theFormsOfAHundredTrianglesAreTheSameForEveryOrder() {
    List<byte[]> forms = new ArrayList<>();
    for (long seed = 1; seed <= 3; seed++) {
      try (TestDay day =
          new TestDay(folder, TellingTestDay.shocks(TellingTask.TRIANGLE, 100), seed)) {
        forms.add(day.desk().keyingIn().form(day.state()));
        forms.add(CaughtUp.form(day.state()));
        assertThat(new String(forms.get(0), StandardCharsets.UTF_8).lines()).hasSize(301);
        assertThat(new String(forms.get(1), StandardCharsets.UTF_8).lines()).hasSize(302);
      }
    }
    for (int i = 2; i < forms.size(); i++) {
      assertThat(forms.get(i)).isEqualTo(forms.get(i - 2));
    }
  }
}
