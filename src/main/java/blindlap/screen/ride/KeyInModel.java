package blindlap.screen.ride;

import blindlap.desk.day.DayResult;
import blindlap.desk.day.KeyingIn;
import blindlap.desk.day.LapTable;
import blindlap.desk.day.RiderDays;
import blindlap.screen.part.Background;
import blindlap.session.day.Day;
import blindlap.session.day.SessionId;
import blindlap.wording.day.Problems;
import blindlap.wording.day.RideWords;
import blindlap.wording.day.Trouble;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.collections.FXCollections;
import javafx.collections.ObservableMap;
import org.jspecify.annotations.Nullable;

/**
 * Keying in from paper: once, again without looking, then what differs is settled. Every cell is
 * kept when it is left, so that whoever is called away goes on where he was.
 */
public final class KeyInModel {
  /** Where the keying in stands. */
  public enum Stage {
    FIRST,
    AGAIN,
    SETTLE,
    DONE
  }

  /**
   * A difference to settle.
   *
   * @param index which
   * @param words lap and column
   * @param first what was typed first
   * @param second what was typed again
   */
  public record Row(int index, String words, String first, String second) {}

  private static final LapTable NONE = new LapTable(List.of(), List.of());

  private final KeyingIn keyingIn;
  private final RiderDays days;
  private final Background background;
  private final ReadOnlyObjectWrapper<Stage> stage = new ReadOnlyObjectWrapper<>(Stage.DONE);
  private final ReadOnlyStringWrapper trouble = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper recorded = new ReadOnlyStringWrapper("");
  private final ObservableMap<Integer, String> wrong = FXCollections.observableHashMap();
  private @Nullable Day day;
  private boolean saving;
  private LapTable first = NONE;
  private LapTable second = NONE;
  private List<LapTable.Difference> differences = List.of();
  private final Set<String> knowing = new TreeSet<>();

  public KeyInModel(KeyingIn keyingIn, RiderDays days, Background background) {
    this.keyingIn = keyingIn;
    this.days = days;
    this.background = background;
  }

  /** Where the keying in stands. */
  public ReadOnlyObjectProperty<Stage> stageProperty() {
    return stage.getReadOnlyProperty();
  }

  /** One sentence for each thing that is wrong; else empty. */
  public ReadOnlyStringProperty troubleProperty() {
    return trouble.getReadOnlyProperty();
  }

  /** "6 laps recorded." once they are; else empty. */
  public ReadOnlyStringProperty recordedProperty() {
    return recorded.getReadOnlyProperty();
  }

  /** What is wrong with a row as it was typed so far, by row from 0. */
  public ObservableMap<Integer, String> wrong() {
    return FXCollections.unmodifiableObservableMap(wrong);
  }

  /** True where an answer of a ridden lap stands already, which is not typed again. */
  public boolean given(int row, int column) {
    return LapTable.given(
        Objects.requireNonNull(day),
        Integer.parseInt(first.rows().get(row).get(0)),
        first.columns().get(column));
  }

  /** True where a cell is asked for: a trial's answer stands beside its last lap alone. */
  public boolean asked(int row, int column) {
    return LapTable.asked(
        Objects.requireNonNull(day),
        Integer.parseInt(first.rows().get(row).get(0)),
        first.columns().get(column));
  }

  /** What is to be typed, by which rules. */
  public String words() {
    boolean trials = stage.get() == Stage.FIRST && ofTrials();
    return RideWords.say("key.in." + stage.get() + (trials ? ".trials" : ""));
  }

  /** True if rows stand by trial. */
  public boolean ofTrials() {
    return day != null && trials().any();
  }

  /** True for the columns of a trial's answer: not every row has them. */
  public boolean ofAnswer(int column) {
    return IntStream.range(0, rows().size()).anyMatch(row -> !asked(row, column));
  }

  private KeyInTrials trials() {
    return new KeyInTrials(Objects.requireNonNull(day));
  }

  /** "Trial 3: laps 7 to 9" above the first of its rows; else empty. */
  public String above(int row) {
    return trials().above(first.rows(), row);
  }

  /** "lap 9, answer": the name of a cell. */
  public String cellWords(int row, int column) {
    String lap = trials().lap(first.rows().get(row).get(0));
    return RideWords.say("key.in.cell", lap, first.columns().get(column));
  }

  /** What a session's table held when it was left, in the laps not recorded yet. */
  private record Opened(Day day, KeyingIn.Begun begun) {}

  /** Begins, or goes on where the table was left. */
  public void open(SessionId session) {
    background.run(
        () -> {
          Day found = days.day(session).orElseThrow();
          return new Opened(found, keyingIn.begun(found));
        },
        found -> {
          day = found.day();
          first = found.begun().first();
          second = found.begun().second();
          knowing.clear();
          trouble.set("");
          recorded.set("");
          wrong.clear();
          saving = false;
          stage.set(Stage.DONE);
          if (!first.rows().isEmpty()) {
            stage.set(found.begun().again() ? Stage.AGAIN : Stage.FIRST);
          }
        },
        this::failed);
  }

  private LapTable now() {
    return stage.get() == Stage.FIRST ? first : second;
  }

  /** Headings. */
  public List<String> columns() {
    return first.columns();
  }

  /** Names of the measures of the session. */
  public List<String> measures() {
    return LapTable.measures(Objects.requireNonNull(day));
  }

  /** True if whoever timed or scored a measure knows the key. */
  public boolean knowsKey(String measure) {
    return knowing.contains(measure);
  }

  /** Whether whoever timed or scored a measure, by the sheets, knows the key. */
  public void knowsKey(String measure, boolean knows) {
    if (knows) {
      knowing.add(measure);
    } else {
      knowing.remove(measure);
    }
  }

  /** The rows to type: lap and code, then what was typed so far in this turn, at first nothing. */
  public List<List<String>> rows() {
    return now().rows();
  }

  /**
   * A cell was left.
   *
   * @param of the turn whose table it stands in; a cell of another turn is let be
   * @param row from 0
   * @param column from 0
   */
  public void cell(Stage of, int row, int column, String typed) {
    List<List<String>> rows = new ArrayList<>(now().rows());
    if (of != stage.get() || rows.get(row).get(column).equals(typed)) {
      return;
    }
    List<String> changed = new ArrayList<>(rows.get(row));
    changed.set(column, typed);
    rows.set(row, changed);
    take(rows);
    keep(stage.get() != Stage.FIRST);
    // A void in one row of a trial may be what is wrong with the answer in another.
    trials().together(rows, row).forEach(each -> check(of, each));
  }

  private void check(Stage of, int row) {
    Day on = Objects.requireNonNull(day);
    LapTable table = now();
    background.run(
        () -> String.join(" ", Problems.sentences(keyingIn.check(on, table, row))),
        words -> {
          if (of != stage.get()) {
            return;
          }
          if (words.isEmpty()) {
            wrong.remove(row);
          } else {
            wrong.put(row, words);
          }
        },
        this::failed);
  }

  private void take(List<List<String>> rows) {
    LapTable table = new LapTable(first.columns(), rows);
    if (stage.get() == Stage.FIRST) {
      first = table;
    } else {
      second = table;
    }
  }

  private void keep(boolean again) {
    SessionId session = Objects.requireNonNull(day).id();
    KeyingIn.Begun begun = new KeyingIn.Begun(again, first, second);
    background.run(
        () -> {
          keyingIn.keep(session, begun);
          return begun;
        },
        kept -> {},
        this::failed);
  }

  /** The table was typed to its end. */
  public void typed() {
    if (stage.get() == Stage.FIRST) {
      keep(true);
      trouble.set("");
      wrong.clear();
      stage.set(Stage.AGAIN);
    } else if (stage.get() == Stage.AGAIN) {
      compare();
    }
  }

  private void compare() {
    differences = first.differences(second);
    if (differences.isEmpty()) {
      save();
    } else {
      stage.set(Stage.SETTLE);
    }
  }

  /** What differs. */
  public List<Row> differences() {
    return java.util.stream.IntStream.range(0, differences.size())
        .mapToObj(
            i -> {
              LapTable.Difference d = differences.get(i);
              return new Row(
                  i,
                  RideWords.say("key.in.cell", trials().lap(d.lap()), d.heading()),
                  d.first(),
                  d.second());
            })
        .toList();
  }

  /** The sheet was looked at again: each difference with its value; then all is recorded. */
  public void settle(List<String> values) {
    for (int i = 0; i < values.size(); i++) {
      LapTable.Difference open = differences.get(i);
      if (values.get(i).isBlank() && !open.first().isBlank() && !open.second().isBlank()) {
        trouble.set(RideWords.say("key.in.open", differences().get(i).words()));
        return;
      }
    }
    for (int i = 0; i < values.size(); i++) {
      first = first.settled(differences.get(i), values.get(i));
      second = second.settled(differences.get(i), values.get(i));
    }
    differences = List.of();
    save();
  }

  private void save() {
    if (saving) {
      return; // pressed twice: it is on its way
    }
    saving = true;
    Day of = Objects.requireNonNull(day);
    LapTable table = first;
    List<String> known = List.copyOf(knowing);
    background.run(
        () -> {
          DayResult result = keyingIn.record(of, table, known);
          if (result instanceof DayResult.Done) {
            keyingIn.forget(of.id());
          }
          return result;
        },
        result -> saved(result, table),
        problem -> {
          saving = false;
          failed(problem);
        });
  }

  /** What was refused is mended in the table as it was typed first. */
  private void saved(DayResult result, LapTable table) {
    saving = false;
    if (result instanceof DayResult.Refused refused) {
      trouble.set(String.join("\n", Problems.sentences(refused.problems())));
      stage.set(Stage.FIRST);
      keep(false);
      return;
    }
    trouble.set("");
    recorded.set(
        trials()
            .recorded(
                IntStream.range(0, table.rows().size())
                    .filter(row -> !table.blank(row))
                    .mapToObj(table.rows()::get)
                    .toList()));
    stage.set(Stage.DONE);
  }

  private void failed(Exception problem) {
    trouble.set(RideWords.notSaved(Trouble.sentence(problem)));
  }
}
