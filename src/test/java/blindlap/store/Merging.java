package blindlap.store;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.exchange.SessionFile;
import blindlap.plan.Plan;
import blindlap.session.Addition;
import blindlap.session.DayCommands;
import blindlap.session.Fact;
import blindlap.session.LifeCommands;
import blindlap.session.Outcome;
import blindlap.session.SessionState;
import blindlap.session.StoredEntry;
import blindlap.session.day.LapId;
import blindlap.session.day.LapInput;
import blindlap.session.day.SessionId;
import blindlap.session.day.Source;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;

/** Notebooks on which people work as they please, and that exchange sessions now and then. */
final class Merging {
  private static final Plan PLAN = Days.plan("R. Lind", "Quarry loop", 8);
  private static final String[] EVENTS = {"traffic", "crash", "puncture"};

  private final List<SqliteNotebook> notebooks;
  private final Random random;
  private final List<SessionId> sessions = new ArrayList<>();
  private int written;

  Merging(List<SqliteNotebook> notebooks, Random random) {
    this.notebooks = notebooks;
    this.random = random;
  }

  int written() {
    return written;
  }

  void begin(int count) {
    for (int i = 0; i < count; i++) {
      SessionId session = Days.session(random.nextInt());
      sessions.add(session);
      written += Books.put(any(), session, Days.committed(PLAN, session, i)).size();
    }
  }

  private SqliteNotebook any() {
    return notebooks.get(random.nextInt(notebooks.size()));
  }

  /** Someone does something, or two notebooks exchange a session one way. */
  void step() {
    SqliteNotebook notebook = any();
    SessionId session = sessions.get(random.nextInt(sessions.size()));
    if (random.nextInt(4) == 0) {
      exchange(notebook, any(), session);
    } else if (!notebook.heads(session).isEmpty()) {
      SessionState state = Books.state(notebook, session);
      if (decide(state) instanceof Outcome.Accepted accepted && !accepted.facts().isEmpty()) {
        written += Books.put(notebook, session, accepted.facts()).size();
      }
    }
  }

  private Outcome decide(SessionState state) {
    DayCommands day = new DayCommands(state);
    LifeCommands life = new LifeCommands(state);
    LapId lap = new LapId(1 + random.nextInt(8), 1);
    BigDecimal time = BigDecimal.valueOf(180_000 + random.nextInt(9000), 3);
    return switch (random.nextInt(16)) {
      case 0, 1, 2, 3, 4 ->
          day.record(List.of(LapInput.of(lap, Map.of("lap time", time))), Source.SCREEN);
      case 5 -> day.correct(List.of(LapInput.of(lap, Map.of("lap time", time))), "misread");
      case 6, 7 -> day.voidLap(lap, EVENTS[random.nextInt(EVENTS.length)], "");
      case 8 -> day.withdrawVoid(lap, "another lap was meant");
      case 9 -> day.note(lap, new Fact.NoteWritten(lap, "note " + random.nextInt(99)));
      case 10 -> life.blindBroken(lap.stint(), "the cover came off");
      case 11 -> life.cutShort(random.nextInt(9), "rain", "the helper", true);
      case 12 -> life.closeDay();
      case 13 -> life.closeReview();
      case 14 -> random.nextInt(5) == 0 ? life.abandon("rain") : life.closeReview();
      default -> day.stint(lap.stint(), Days.guess(lap.stint(), random));
    };
  }

  private static void exchange(SqliteNotebook from, SqliteNotebook to, SessionId session) {
    List<StoredEntry> entries = from.entries(session);
    if (entries.isEmpty()) {
      return;
    }
    byte[] file = SessionFile.text(session, entries).getBytes(StandardCharsets.UTF_8);
    SessionFile.Reading reading = SessionFile.read(file);
    assertThat(reading.problems()).isEmpty();
    assertThat(to.addEntries(reading.entries())).isInstanceOf(Addition.Added.class);
  }

  /** Everyone gives everyone everything, in any order, twice so that all has come round. */
  void exchangeAll() {
    for (int round = 0; round < 2; round++) {
      List<Runnable> all = new ArrayList<>();
      for (SqliteNotebook from : notebooks) {
        for (SqliteNotebook to : notebooks) {
          sessions.forEach(session -> all.add(() -> exchange(from, to, session)));
        }
      }
      Collections.shuffle(all, random);
      all.forEach(Runnable::run);
    }
  }

  static TreeMap<SessionId, List<StoredEntry>> contents(SqliteNotebook notebook) {
    TreeMap<SessionId, List<StoredEntry>> contents = new TreeMap<>();
    notebook.sessions().forEach(session -> contents.put(session, notebook.entries(session)));
    return contents;
  }

  /** What each session comes to, in words that leave nothing out. */
  static List<String> tellings(SqliteNotebook notebook) {
    List<String> tellings = new ArrayList<>();
    for (SessionId session : contents(notebook).keySet()) {
      SessionState state = Books.state(notebook, session);
      List<String> laps =
          state.laps().stream()
              .map(lap -> lap.id() + " " + new TreeMap<>(lap.values()) + lap.voided() + lap.note())
              .toList();
      tellings.add(
          String.join(
              "|",
              session.text(),
              state.step().name(),
              laps.toString(),
              state.guesses().toString(),
              state.blindBroken().toString(),
              state.cutShort().toString(),
              state.corrections().toString(),
              state.reviewFingerprint().toString(),
              state.notApplied().stream().map(entry -> entry.hash().hex()).toList().toString()));
    }
    tellings.addAll(notebook.summaries().stream().map(Object::toString).sorted().toList());
    return tellings;
  }
}
