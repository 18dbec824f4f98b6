package blindlap.sample;

import blindlap.desk.Desk;
import blindlap.desk.Recordings;
import blindlap.desk.Sessions;
import blindlap.desk.Settling;
import blindlap.desk.TrailBook;
import blindlap.exchange.LapsFile;
import blindlap.plan.Plan;
import blindlap.plan.Sector;
import blindlap.session.DayCommands;
import blindlap.session.RecordingCommands;
import blindlap.session.SessionState;
import blindlap.session.day.LapId;
import blindlap.session.day.LapInput;
import blindlap.session.day.Source;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.List;
import java.util.Properties;

/**
 * An invented day with a recorder on the bike: its trail goes into the trail book, its laps are
 * entered when they were ridden, and the day's recording is brought in and settled.
 */
final class RecordedSample {
  private static final String TRAIL = "trail.geojson";
  private static final String RECORDING = "recording.gpx";

  private final String folder;
  private final Desk desk;
  private final Properties events;

  /**
   * @param events {@code entered}: when each lap was entered; {@code settled}: what was said of
   *     passes; {@code void_sector}: lap, gates and event of a sector that does not count
   */
  RecordedSample(String name, Desk desk, Properties events) {
    this.folder = "/blindlap/sample-sessions/" + name + "/";
    this.desk = desk;
    this.events = events;
  }

  /** True if a sample's times come from a recording. */
  static boolean is(String name) {
    return RecordedSample.class.getResource("/blindlap/sample-sessions/" + name + "/" + TRAIL)
        != null;
  }

  /** Keeps the trail, and fills in its gates. */
  Plan plan(Plan typed) {
    return typed.with(desk.trails().keep(TrailBook.read(bytes(TRAIL))).version());
  }

  /** Rides the day and brings its recording in. */
  Sessions.Result record(SessionState state, byte[] laps) {
    LapsFile.Reading reading = LapsFile.read(laps, state.plan(), state.codes());
    String[] entered = events.getProperty("entered").split(" ");
    for (int lap = 0; lap < entered.length; lap++) {
      if (desk.clock() instanceof SampleClock clock) {
        clock.until(Instant.parse(entered[lap]));
      }
      LapInput ridden = reading.laps().get(lap);
      done(
          desk.sessions()
              .act(state.id(), now -> new DayCommands(now).record(List.of(ridden), Source.SCREEN)));
    }
    bringIn(desk.sessions().state(state.id()).orElseThrow());
    String[] spoiled = events.getProperty("void_sector").split(", ");
    LapId lap = LapId.ofDay(Integer.parseInt(spoiled[0]), state.plan().laps().perStint());
    Sector sector = new Sector(spoiled[1], spoiled[2]);
    return desk.sessions()
        .act(
            state.id(),
            now -> new RecordingCommands(now).voidSector(lap, sector, spoiled[3], spoiled[4]));
  }

  private void bringIn(SessionState state) {
    Recordings recordings = desk.recordings();
    if (!(recordings.read(state, RECORDING, bytes(RECORDING))
        instanceof Recordings.Read.Table table)) {
      throw new IllegalStateException("a sample's recording is refused");
    }
    Settling settling = table.settling();
    for (String said : events.getProperty("settled").split(" ")) {
      int sign = said.indexOf('=');
      settling =
          settling.with(
              Integer.parseInt(said.substring(0, sign)),
              said.endsWith("none") ? Settling.Answer.NO_LAP : Settling.Answer.KEEP);
    }
    done(recordings.take(settling, true));
  }

  private static void done(Sessions.Result result) {
    if (result instanceof Sessions.Result.Refused refused) {
      throw new IllegalStateException("a sample is refused: " + refused.problems());
    }
  }

  private byte[] bytes(String file) {
    try (InputStream in = RecordedSample.class.getResourceAsStream(folder + file)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its resource " + folder + file);
      }
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
