package blindlap.screen.manual;

import blindlap.desk.Commits;
import blindlap.desk.Committing;
import blindlap.desk.Desk;
import blindlap.desk.PlanPreview;
import blindlap.desk.Recordings;
import blindlap.desk.Sessions;
import blindlap.desk.SetClock;
import blindlap.desk.Settling;
import blindlap.desk.TrailBook;
import blindlap.exchange.LapsFile;
import blindlap.plan.Plan;
import blindlap.plan.Sector;
import blindlap.sample.SampleSources;
import blindlap.seal.SealParameters;
import blindlap.seal.SessionKind;
import blindlap.session.DayCommands;
import blindlap.session.LifeCommands;
import blindlap.session.RecordingCommands;
import blindlap.session.SessionState;
import blindlap.session.day.LapId;
import blindlap.session.day.LapInput;
import blindlap.session.day.SessionId;
import blindlap.session.day.Source;
import blindlap.store.SqliteNotebook;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Properties;
import org.jspecify.annotations.Nullable;

/**
 * The day of the pictures, on a notebook of its own: the plan that lies beside them, with the
 * order, the trail and the recording of the invented day on Juniper chute, and what rider and
 * starter said of each lap.
 */
final class ForkDay implements AutoCloseable {
  /** The plan that the manual links to. */
  static final Path PLAN = Album.FOLDER.resolve("plan.yaml");

  /** The invented day whose order, trail and recording it has. */
  static final String SAMPLE = "forks-on-juniper-chute";

  private static final Path FILES = Path.of("sample-sessions", SAMPLE);
  static final Duration HANDLED = Duration.ofMinutes(4);
  private final SetClock clock = new SetClock(Instant.parse("2026-09-18T17:10:00Z"));
  private final Path notebook;
  private final Desk desk;
  private final Properties events = new Properties();
  private @Nullable SessionId id;
  private String phrase = "";

  /** A notebook that knows the trail, and nothing of the day. */
  ForkDay(Path folder, String name) {
    notebook = folder.resolve(name + ".blindlap");
    desk =
        new Desk(
            SqliteNotebook.open(
                notebook, SampleSources.stream(SAMPLE, "book").exactly(16), clock.instant()),
            clock,
            SampleSources.of(SAMPLE),
            new SealParameters(1_000),
            SampleSources.stream("manual", "id"));
    desk.trails().keep(TrailBook.read(bytes("trail.geojson")));
    try (InputStream in = Files.newInputStream(FILES.resolve("events.properties"))) {
      events.load(in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  Desk desk() {
    return desk;
  }

  SetClock clock() {
    return clock;
  }

  Path notebook() {
    return notebook;
  }

  SessionId id() {
    return Objects.requireNonNull(id, "nothing is committed");
  }

  String phrase() {
    return phrase;
  }

  SessionState state() {
    return desk.sessions().state(id()).orElseThrow();
  }

  /** Its recording. */
  static Path recording() {
    return FILES.resolve("recording.gpx");
  }

  /** The plan as it is typed. */
  static String text() {
    try {
      return Files.readString(PLAN);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Keeps the plan as a draft; its name. */
  String draft() {
    String name = desk.planning().freshName();
    desk.planning().keep(name, desk.planning().importText(text()).fields());
    return name;
  }

  /** Two profiles, made before the day. */
  ForkDay profiles() {
    desk.profiles().keep("Fast and steep: lap time, stones, trust in the front");
    desk.profiles().keep("Long days: calm over stones, mass, price");
    return this;
  }

  /** Commits the plan. */
  ForkDay commit() {
    PlanPreview preview = PlanPreview.of(text(), desk.protocols());
    Plan typed =
        preview.plan().orElseThrow(() -> new AssertionError("refused: " + preview.problems()));
    Plan plan = typed.with(desk.trails().latest(typed.trail()).orElseThrow().version());
    Committing.Result.Committed committed =
        Commits.commit(desk, plan, SessionKind.comparison(), List.of("K. Vogt", "M. Oster"));
    id = committed.state().id();
    phrase = committed.sealed().phrase().text();
    until("2026-09-19T07:00:00Z");
    return this;
  }

  private void until(String instant) {
    Duration ahead = Duration.between(clock.instant(), Instant.parse(instant));
    if (!ahead.isNegative()) {
      clock.move(ahead);
    }
  }

  /** The helper of the day. */
  Hands helper() {
    return new Hands(desk, id(), phrase);
  }

  /** Stints up to this one, handled, ridden and said. */
  ForkDay ride(int last) {
    String[] entered = events.getProperty("entered").split(" ");
    for (int stint = state().lapsRidden() + 1; stint <= last; stint++) {
      until(Instant.parse(entered[stint - 1]).minusSeconds(130).toString());
      helper().handOver(stint, HANDLED);
      until(entered[stint - 1]);
      LapInput lap = laps().get(stint - 1);
      Hands.done(act(now -> new DayCommands(now).record(List.of(lap), Source.SCREEN)));
      helper().back(stint);
    }
    return this;
  }

  private List<LapInput> laps() {
    SessionState now = state();
    return LapsFile.read(said(), now.plan(), now.codes()).laps();
  }

  private static byte[] said() {
    try (InputStream in = ForkDay.class.getResourceAsStream("/blindlap/manual/laps.csv")) {
      return Objects.requireNonNull(in, "laps.csv").readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** What the recorder wrote is brought in, and walkers spoiled a sector. */
  ForkDay record() {
    Recordings.Read.Table read =
        (Recordings.Read.Table)
            desk.recordings().read(state(), "recording.gpx", bytes("recording.gpx"));
    Settling settling = read.settling();
    for (String word : events.getProperty("settled").split(" ")) {
      String[] sides = word.split("=", 2);
      settling =
          settling.with(
              Integer.parseInt(sides[0]),
              sides[1].equals("none") ? Settling.Answer.NO_LAP : Settling.Answer.KEEP);
    }
    Hands.done(desk.recordings().take(settling, true));
    LapId lap = new LapId(13, 1);
    Hands.done(
        act(
            now ->
                new RecordingCommands(now)
                    .voidSector(
                        lap, new Sector("Culvert", "Barn"), "traffic", "walkers at the barn")));
    return this;
  }

  /** The day is over. */
  ForkDay over() {
    helper().over();
    Hands.done(act(now -> new LifeCommands(now).closeDay()));
    return this;
  }

  /** Voids are final, and the key is opened. */
  ForkDay unseal() {
    Hands.done(desk.keys().closeReview(id()));
    Hands.done(desk.keys().unseal(state(), phrase));
    return this;
  }

  private Sessions.Result act(
      java.util.function.Function<SessionState, blindlap.session.Outcome> decision) {
    return desk.sessions().act(id(), decision);
  }

  private static byte[] bytes(String file) {
    try {
      return Files.readAllBytes(FILES.resolve(file));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Lets go of the notebook. */
  @Override
  public void close() {
    desk.close();
  }
}
