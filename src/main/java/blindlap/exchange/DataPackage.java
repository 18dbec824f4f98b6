package blindlap.exchange;

import static blindlap.exchange.PackageTables.lapColumns;

import blindlap.compute.StrictJson;
import blindlap.exchange.PackageTables.Column;
import blindlap.plan.BlindLevel;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.review.DayRecord;
import blindlap.review.Edition;
import blindlap.review.QuestionHistory;
import blindlap.review.StintValues;
import blindlap.review.TakenOut;
import blindlap.review.Waits;
import blindlap.seal.OpenKey;
import blindlap.session.GuessWords;
import blindlap.session.Recorded;
import blindlap.session.SessionState;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.wording.FindingText;
import blindlap.wording.HistoryWords;
import blindlap.wording.day.Words;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;

/**
 * A session as a data package (Data Package and Table Schema of the Open Knowledge Foundation): CSV
 * and JSON with a dictionary of columns and units, from which every number can be computed again. A
 * sealed session gives codes only.
 */
public final class DataPackage {
  private static final Words WORDS = Words.of("package");

  /** The field of {@code key.json} that says in words what others hold. */
  public static final String ABOUT = "about";

  private static final Words CAUTIONS = Words.of("cautions");

  private DataPackage() {}

  /**
   * What was added after unsealing.
   *
   * @param at when
   * @param text what
   * @param reason why
   */
  public record Amendment(Instant at, String text, String reason) {}

  /** The package of a sealed session: laps by code, and nothing of setups, guesses or key. */
  public static Map<String, byte[]> blind(SessionState state) {
    PackageTables tables = new PackageTables();
    Plan plan = state.plan();
    Recorded recorded = state.recorded();
    List<List<String>> rows = new ArrayList<>();
    for (LapState lap : state.laps()) {
      List<String> row = start(plan, lap.id(), state.code(lap.id().stint()), lap.ridden());
      row.addAll(PackageTables.voided(lap.voided()));
      row.add(lap.note());
      row.addAll(PackageTables.values(plan, m -> recorded.counting(plan, m, lap).orElse(null)));
      rows.add(row);
    }
    tables.table("laps", lapColumns(plan), rows);
    tables.measures(plan);
    CovariateTables.said(tables, plan, state.day().covariates());
    PassTables.write(tables, plan, recorded);
    tables.readme(
        WORDS.say("title", "Blind laps of " + plan.day()),
        WORDS.say(state.covered() ? "blind.covered" : "blind"),
        unblinded(plan),
        WORDS.say("tables"),
        WORDS.say(state.covered() ? "covered.session" : "sealed.session"),
        WORDS.say("proof"),
        caution("ride"));
    return tables.files(
        "blindlap-" + state.id().brief(),
        "Blind laps of " + plan.day(),
        state.covered()
            ? "Laps by code. The order is covered, so no table here names a setup."
            : "Laps by code. The key is sealed, so no table here names a setup.",
        state);
  }

  private static String caution(String... keys) {
    List<String> texts = java.util.Arrays.stream(keys).map(CAUTIONS::say).toList();
    return WORDS.say("caution", String.join(" ", texts));
  }

  private static List<String> start(Plan plan, LapId id, int code, boolean ridden) {
    return new ArrayList<>(
        List.of(
            String.valueOf(id.ofDay(plan.laps().perStint())),
            String.valueOf(id.stint()),
            String.valueOf(id.lap()),
            String.valueOf(id.lap() > plan.laps().settling()),
            String.valueOf(code),
            String.valueOf(ridden)));
  }

  /**
   * The package of an unsealed session.
   *
   * @param state the session that it is of
   * @param finding its finding as JSON: the original analysis
   * @param started when laps were started by a watch; not in a blind package, where the time
   *     between two stints could hint at what was done in it
   * @param amendments what was added after unsealing, and changed no number
   * @param history other sessions of the question
   */
  public static Map<String, byte[]> open(
      SessionState state,
      DayRecord day,
      String finding,
      Map<LapId, Instant> started,
      List<Amendment> amendments,
      QuestionHistory history) {
    PackageTables tables = new PackageTables();
    Plan plan = day.plan();
    laps(tables, day, started);
    units(tables, day);
    tables.measures(plan);
    CovariateTables.said(tables, plan, day.covariates());
    CovariateTables.takenOut(tables, day);
    tables.rule(plan.rule());
    tables.levels(plan);
    TrialTable.write(tables, day);
    stints(tables, day);
    RecordedTables.write(tables, day);
    fits(tables, day);
    WaitTable.write(tables, Waits.timed(day));
    LookTable.write(tables, day.looks());
    PhoneTable.write(tables, state);
    MaskTable.write(tables, day.masks());
    TimedTable.write(tables, day);
    PassTables.write(tables, plan, state.recorded());
    RemarkTable.write(tables, day.remarks());
    tables.json("plan", state.planText());
    tables.json("key", key(day));
    tables.json("finding", finding);
    PackageScripts.session(tables, plan.telling() != null);
    amendments(tables, amendments);
    PackageBeside.history(tables, history);
    readme(tables, plan, amendments.size(), history);
    return tables.files(
        "blindlap-" + day.session().substring(0, 8),
        title(plan),
        (unblinded(plan) + " " + plan.question()).strip(),
        state);
  }

  private static void laps(PackageTables tables, DayRecord day, Map<LapId, Instant> started) {
    Plan plan = day.plan();
    List<List<String>> rows = new ArrayList<>();
    for (DayRecord.Lap lap : day.laps()) {
      int stint = lap.id().stint();
      List<String> row = start(plan, lap.id(), day.key().codes().get(stint - 1), lap.ridden());
      row.addAll(PackageTables.voided(lap.voided()));
      row.add(lap.note());
      row.addAll(PackageTables.values(plan, m -> lap.values().get(m.name())));
      row.add(letter(day.setup(stint)));
      Instant at = started.get(lap.id());
      row.add(at == null ? "" : at.toString());
      rows.add(row);
    }
    List<Column> columns = lapColumns(plan);
    columns.add(Column.of("setup", "string", "setup of the stint by the drawn order"));
    columns.add(
        Column.of("started", "datetime", "start of the watch; empty where a time was typed"));
    tables.table("laps", columns, rows);
  }

  private static String title(Plan plan) {
    return plan.title() + ", " + plan.trail() + ", " + plan.day();
  }

  private static String unblinded(Plan plan) {
    return plan.level() == BlindLevel.HELPER ? "" : WORDS.say("level." + plan.level().name());
  }

  private static void readme(
      PackageTables tables, Plan plan, int amendments, QuestionHistory history) {
    tables.readme(
        WORDS.say("title", title(plan)),
        unblinded(plan),
        WORDS.say("question", plan.question()),
        WORDS.say("check"),
        WORDS.say("tables"),
        WORDS.say(plan.telling() == null ? "again" : "again.trials"),
        plan.steps() == null ? "" : WORDS.say("levels"),
        plan.telling() == null ? "" : WORDS.say("trials"),
        WORDS.say("proof"),
        WORDS.say("amended", amendments),
        WORDS.say("edition", Edition.CURRENT),
        HistoryWords.repeat(history).orElse(""),
        WORDS.say("history", history.past().size()),
        WORDS.say("limits", FindingText.limits(plan)),
        caution("trust", "short", "ride"));
  }

  private static void amendments(PackageTables tables, List<Amendment> amendments) {
    tables.table(
        "amendments",
        List.of(
            Column.of("at", "datetime", "when it was added, after unsealing"),
            Column.of("text", "string", "what was added"),
            Column.of("reason", "string", "why")),
        amendments.stream().map(a -> List.of(a.at().toString(), a.text(), a.reason())).toList());
  }

  static String letter(int setup) {
    return String.valueOf((char) ('A' + setup));
  }

  /** The analysed units, so that a short script needs nothing but this table and the rule. */
  private static void units(PackageTables tables, DayRecord day) {
    List<List<String>> rows = new ArrayList<>();
    for (Measure measure : day.plan().measures()) {
      StintValues said = StintValues.counted(day, measure);
      double[] values = TakenOut.of(day, measure, said).stints().values();
      for (int i = 0; i < values.length; i++) {
        rows.add(
            List.of(
                measure.name(),
                String.valueOf(i + 1),
                letter(day.setup(i + 1)),
                Double.isNaN(values[i]) ? "" : String.valueOf(values[i]),
                measure.drift().text(),
                measure.scale().text()));
      }
    }
    tables.table(
        "units",
        List.of(
            Column.of("measure", "string", "name of the measure"),
            Column.of("stint", "integer", "stint, from 1"),
            Column.of("setup", "string", "setup by the drawn order"),
            Column.of(
                "value",
                "number",
                "summary (mean, or median as measures says) of the stint's counting laps, of their"
                    + " natural logarithms on the ratio scale; empty where masked"),
            Column.of("drift", "string", "what is removed"),
            Column.of("scale", "string", "raw or ratio")),
        rows);
  }

  private static void stints(PackageTables tables, DayRecord day) {
    List<List<String>> rows = new ArrayList<>();
    for (int stint = 1; stint <= day.plan().stints(); stint++) {
      Guess guess = day.guesses().get(stint);
      rows.add(
          List.of(
              String.valueOf(stint),
              String.valueOf(day.key().codes().get(stint - 1)),
              letter(day.setup(stint)),
              guess == null ? "" : GuessWords.text(day.plan(), guess),
              guess == null ? "" : guess.cue(),
              day.blindBroken().getOrDefault(stint, ""),
              String.valueOf(stint <= day.lastStint())));
    }
    tables.table(
        "stints",
        List.of(
            Column.of("stint", "integer", "stint, from 1"),
            Column.of("code", "integer", "code on everything the rider saw"),
            Column.of("setup", "string", "setup by the drawn order"),
            Column.of(
                "guess",
                "string",
                "the rider's guess, on a steps day the end: low or high, of a telling run the lap"
                    + " that was named within its trial; - for don't know, empty if not asked"),
            Column.of("cue", "string", "what gave it away"),
            Column.of("blind_broken", "string", "what happened, where the rider knew"),
            Column.of("in_the_day", "boolean", "false after the day was cut short")),
        rows);
  }

  private static void fits(PackageTables tables, DayRecord day) {
    List<List<String>> rows = new ArrayList<>();
    day.fits()
        .values()
        .forEach(
            fit -> {
              Integer fitted = fit.fitted();
              String setup = fitted == null ? "" : letter(fitted);
              String stint = String.valueOf(fit.stint());
              rows.add(List.of(stint, setup, "", "", fit.note()));
              fit.measured()
                  .forEach(
                      (name, value) ->
                          rows.add(List.of(stint, setup, name, value.toPlainString(), "")));
              fit.words()
                  .forEach((name, typed) -> rows.add(List.of(stint, setup, name, "", typed)));
            });
    tables.table(
        "helper",
        List.of(
            Column.of("stint", "integer", "stint, from 1; 0 is the warm-up"),
            Column.of("fitted", "string", "setup that was on"),
            Column.of("setting", "string", "a setting that was measured"),
            Column.of("measured", "number", "its value in the unit of the plan"),
            Column.of("note", "string", "further words of the helper")),
        rows);
  }

  private static String key(DayRecord day) {
    OpenKey key = day.key();
    ObjectNode node = StrictJson.NODES.objectNode();
    node.put("session", day.session());
    node.put("algorithm", key.algorithm());
    node.put("order", key.order());
    ArrayNode codes = node.putArray("codes");
    key.codes().forEach(codes::add);
    node.put("seed", HexFormat.of().formatHex(key.seed()));
    node.put("nonce", HexFormat.of().formatHex(key.nonce()));
    node.put("warm_up", letter(key.warmUp()));
    node.put("null_run", key.nullRun().map(DataPackage::letter).orElse(null));
    node.put("last_stint", day.lastStint());
    ObjectNode about = node.putObject(ABOUT);
    for (String field : List.of("order", "warm_up", "null_run", "last_stint")) {
      about.put(field, WORDS.say("key." + field));
    }
    return StrictJson.print(node);
  }
}
