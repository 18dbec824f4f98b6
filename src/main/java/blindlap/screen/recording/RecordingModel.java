package blindlap.screen.recording;

import blindlap.desk.Recordings;
import blindlap.desk.Sessions;
import blindlap.desk.Settling;
import blindlap.fault.Problem;
import blindlap.screen.part.Background;
import blindlap.session.SessionState;
import blindlap.session.TrailTitle;
import blindlap.session.day.SessionId;
import blindlap.wording.SettlingWords;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Trouble;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;
import org.jspecify.annotations.Nullable;

/** A recording in hand: read, settled pass by pass, taken in or put aside. */
public final class RecordingModel {
  private final Sessions sessions;
  private final Recordings recordings;
  private final Background background;
  private final ReadOnlyObjectWrapper<Optional<Settling>> settling =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyStringWrapper trouble = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper said = new ReadOnlyStringWrapper("");
  private final SimpleObjectProperty<@Nullable TrailTitle> trail = new SimpleObjectProperty<>();
  private final SimpleBooleanProperty positions = new SimpleBooleanProperty(true);
  private @Nullable SessionId id;
  private @Nullable SessionState state;
  private @Nullable Path file;

  public RecordingModel(Sessions sessions, Recordings recordings, Background background) {
    this.sessions = sessions;
    this.recordings = recordings;
    this.background = background;
  }

  /** The recording in hand; empty while there is none. */
  public ReadOnlyObjectProperty<Optional<Settling>> settlingProperty() {
    return settling.getReadOnlyProperty();
  }

  /** One sentence if something was refused; else empty. */
  public ReadOnlyStringProperty troubleProperty() {
    return trouble.getReadOnlyProperty();
  }

  /** What became of the last recording; else empty. */
  public ReadOnlyStringProperty saidProperty() {
    return said.getReadOnlyProperty();
  }

  /**
   * The trail by whose gates files are read where the plan fixes none; null for the plan's name.
   */
  public SimpleObjectProperty<@Nullable TrailTitle> trailProperty() {
    return trail;
  }

  /** Whether positions between start and finish are kept. */
  public SimpleBooleanProperty positionsProperty() {
    return positions;
  }

  /** Versions of trails to choose from; none where the plan fixes one. */
  public List<TrailTitle> trails() {
    SessionState latest = state;
    return latest == null ? List.of() : recordings.trails(latest);
  }

  /** Opens a session; what is in hand of another is put aside. */
  public void open(SessionId session) {
    if (!session.equals(id)) {
      aside();
      said.set("");
    }
    id = session;
    run(() -> sessions.state(session), found -> found.ifPresent(this::show));
  }

  private void show(SessionState latest) {
    state = latest;
    trouble.set(settling.get().isPresent() ? "" : sentence(recordings.problems(latest)));
  }

  /** Reads a file; what was in hand before is kept if it cannot be read. */
  public void read(Path chosen) {
    SessionState shown = state;
    if (shown == null) {
      return;
    }
    TrailTitle by = trail.get();
    run(
        () ->
            recordings.read(
                sessions.state(shown.id()).orElse(shown),
                chosen,
                by == null ? null : by.name(),
                by == null ? null : by.number()),
        read -> {
          if (read instanceof Recordings.Read.Table table) {
            file = chosen;
            said.set("");
            trouble.set("");
            settling.set(Optional.of(table.settling()));
          } else if (read instanceof Recordings.Read.Refused refused) {
            trouble.set(sentence(refused.problems()));
          }
        });
  }

  /** Says something of a pass; refused in a sentence. */
  public void answer(int pass, Settling.Answer answer) {
    Settling now = settling.get().orElseThrow();
    List<Problem> problems = now.problems(pass, answer);
    trouble.set(sentence(problems));
    if (problems.isEmpty()) {
      settling.set(Optional.of(now.with(pass, answer)));
    }
  }

  /** Takes back what was said of a pass. */
  public void takeBack(int pass) {
    trouble.set("");
    settling.set(settling.get().map(now -> now.without(pass)));
  }

  /** Takes all of it in. */
  public void take() {
    Settling now = settling.get().orElseThrow();
    long laps = now.rows().stream().filter(row -> row.match().taken()).count();
    run(
        () -> recordings.take(now, positions.get()),
        result -> {
          if (result instanceof Sessions.Result.Done done) {
            aside();
            state = done.state();
            said.set(SettlingWords.say("taken", now.fileName(), laps));
          } else if (result instanceof Sessions.Result.Refused refused) {
            trouble.set(sentence(refused.problems()));
          }
        });
  }

  /** Puts the recording in hand aside; nothing of it is kept. */
  public void aside() {
    file = null;
    trouble.set("");
    settling.set(Optional.empty());
  }

  /** The file in hand, to be read by other gates. */
  public Optional<Path> file() {
    return Optional.ofNullable(file);
  }

  private <T> void run(Callable<T> work, java.util.function.Consumer<T> done) {
    background.run(work, done, thrown -> trouble.set(Trouble.sentence(thrown)));
  }

  private static String sentence(List<Problem> problems) {
    return String.join(" ", Problems.sentences(problems));
  }
}
