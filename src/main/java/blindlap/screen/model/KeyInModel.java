package blindlap.screen.model;

import blindlap.desk.KeyingIn;
import blindlap.desk.RiderDays;
import blindlap.desk.Sessions;
import blindlap.session.SessionId;
import blindlap.session.SessionState;
import blindlap.wording.Problems;
import blindlap.wording.RideWords;
import java.util.List;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;

/** Keying in from paper: once, again without looking, then what differs is settled. */
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

  private final KeyingIn keyingIn;
  private final RiderDays days;
  private final Background background;
  private final ReadOnlyObjectWrapper<Stage> stage = new ReadOnlyObjectWrapper<>(Stage.FIRST);
  private final ReadOnlyStringWrapper trouble = new ReadOnlyStringWrapper("");
  private @Nullable SessionState state;
  private KeyingIn.Table empty = new KeyingIn.Table(List.of(), List.of());
  private KeyingIn.Table first = empty;
  private KeyingIn.Table second = empty;
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

  /** Begins with an empty table of the laps not recorded yet. */
  public void open(SessionId session) {
    background.run(
        () -> days.state(session).orElseThrow(),
        found -> {
          state = found;
          empty = keyingIn.empty(found);
          first = empty;
          second = empty;
          trouble.set("");
          stage.set(Stage.DONE);
          stage.set(empty.rows().isEmpty() ? Stage.DONE : Stage.FIRST);
        },
        this::failed);
  }

  /** Headings. */
  public List<String> columns() {
    return empty.columns();
  }

  /**
   * The rows to type: lap and code filled in, the rest empty, whatever was typed the first time.
   */
  public List<List<String>> rows() {
    return empty.rows();
  }

  /** A table was typed to its end. */
  public void typed(List<List<String>> rows) {
    KeyingIn.Table table = new KeyingIn.Table(empty.columns(), rows);
    if (stage.get() == Stage.FIRST) {
      first = table;
      stage.set(Stage.AGAIN);
    } else if (stage.get() == Stage.AGAIN) {
      second = table;
      compare();
    }
  }

  private void compare() {
    differences = keyingIn.differences(first, second);
    if (differences.isEmpty()) {
      save();
    } else {
      stage.set(Stage.AGAIN);
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
      first = keyingIn.settled(first, differences.get(i), values.get(i));
    }
    differences = List.of();
    save();
  }

  private void save() {
    SessionState of = java.util.Objects.requireNonNull(state);
    KeyingIn.Table table = first;
    background.run(() -> keyingIn.record(of, table), this::saved, this::failed);
  }

  private void saved(Sessions.Result result) {
    if (result instanceof Sessions.Result.Refused refused) {
      trouble.set(String.join("\n", Problems.sentences(refused.problems())));
      first = empty;
      stage.set(Stage.FIRST);
      return;
    }
    trouble.set("");
    stage.set(Stage.DONE);
  }

  private void failed(Exception problem) {
    trouble.set(RideWords.notSaved(String.valueOf(problem.getMessage())));
  }
}
