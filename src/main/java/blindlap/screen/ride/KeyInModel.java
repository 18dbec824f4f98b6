package blindlap.screen.ride;

import blindlap.desk.KeyingIn;
import blindlap.desk.RiderDays;
import blindlap.desk.Sessions;
import blindlap.screen.part.Background;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import blindlap.wording.day.Problems;
import blindlap.wording.day.RideWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
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

  private static final KeyingIn.Table NONE = new KeyingIn.Table(List.of(), List.of());

  private final KeyingIn keyingIn;
  private final RiderDays days;
  private final Background background;
  private final ReadOnlyObjectWrapper<Stage> stage = new ReadOnlyObjectWrapper<>(Stage.DONE);
  private final ReadOnlyStringWrapper trouble = new ReadOnlyStringWrapper("");
  private @Nullable SessionState state;
  private KeyingIn.Table first = NONE;
  private KeyingIn.Table second = NONE;
  private List<KeyingIn.Difference> differences = List.of();

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

  /** What a session's table held when it was left, in the laps not recorded yet. */
  private record Opened(SessionState state, KeyingIn.Begun begun) {}

  /** Begins, or goes on where the table was left. */
  public void open(SessionId session) {
    background.run(
        () -> {
          SessionState found = days.state(session).orElseThrow();
          return new Opened(found, keyingIn.begun(found));
        },
        found -> {
          state = found.state();
          first = found.begun().first();
          second = found.begun().second();
          trouble.set("");
          stage.set(Stage.DONE);
          if (!first.rows().isEmpty()) {
            stage.set(found.begun().again() ? Stage.AGAIN : Stage.FIRST);
          }
        },
        this::failed);
  }

  private KeyingIn.Table now() {
    return stage.get() == Stage.FIRST ? first : second;
  }

  /** Headings. */
  public List<String> columns() {
    return first.columns();
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
  }

  private void take(List<List<String>> rows) {
    KeyingIn.Table table = new KeyingIn.Table(first.columns(), rows);
    if (stage.get() == Stage.FIRST) {
      first = table;
    } else {
      second = table;
    }
  }

  private void keep(boolean again) {
    SessionId session = Objects.requireNonNull(state).id();
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
      stage.set(Stage.AGAIN);
    } else if (stage.get() == Stage.AGAIN) {
      compare();
    }
  }

  private void compare() {
    differences = keyingIn.differences(first, second);
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
              KeyingIn.Difference d = differences.get(i);
              return new Row(
                  i, RideWords.say("key.in.cell", d.lap(), d.heading()), d.first(), d.second());
            })
        .toList();
  }

  /** The sheet was looked at again: each difference with its value; then all is recorded. */
  public void settle(List<String> values) {
    for (int i = 0; i < values.size(); i++) {
      KeyingIn.Difference open = differences.get(i);
      if (values.get(i).isBlank() && !open.first().isBlank() && !open.second().isBlank()) {
        trouble.set(RideWords.say("key.in.open", differences().get(i).words()));
        return;
      }
    }
    for (int i = 0; i < values.size(); i++) {
      first = keyingIn.settled(first, differences.get(i), values.get(i));
      second = keyingIn.settled(second, differences.get(i), values.get(i));
    }
    differences = List.of();
    save();
  }

  private void save() {
    SessionState of = Objects.requireNonNull(state);
    KeyingIn.Table table = first;
    background.run(
        () -> {
          Sessions.Result result = keyingIn.record(of, table);
          if (result instanceof Sessions.Result.Done) {
            keyingIn.forget(of.id());
          }
          return result;
        },
        this::saved,
        this::failed);
  }

  /** What was refused is mended in the table as it was typed first. */
  private void saved(Sessions.Result result) {
    if (result instanceof Sessions.Result.Refused refused) {
      trouble.set(String.join("\n", Problems.sentences(refused.problems())));
      stage.set(Stage.FIRST);
      keep(false);
      return;
    }
    trouble.set("");
    stage.set(Stage.DONE);
  }

  private void failed(Exception problem) {
    trouble.set(RideWords.notSaved(String.valueOf(problem.getMessage())));
  }
}
