package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.exchange.QuarryTrail;
import blindlap.session.DayCommands;
import blindlap.session.Fact;
import blindlap.session.KeptTrail;
import blindlap.session.LifeCommands;
import blindlap.session.Outcome;
import blindlap.session.SessionState;
import blindlap.session.day.LapId;
import blindlap.session.day.LapInput;
import blindlap.session.day.Source;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;

/** A day on the invented trail with a recorder that runs on, and whose every time is known. */
public final class TrackDay implements AutoCloseable {
  private static final double START = 10;
  private static final double FINISH = 690;

  private final TestDay day;
  private QuarryTrack track;
  private Duration off = Duration.ZERO;
  private Source source = Source.SCREEN;

  public TrackDay(Path folder, String plan, long order) {
    this(new TestDay(folder, plan, order));
  }

  public TrackDay(TestDay ofPlan) {
    day = ofPlan;
    track = new QuarryTrack(day.clock(), off);
    day.desk().notebook().trails().keep(QuarryTrail.trail(), day.clock().instant());
  }

  /** Eight stints timed by the gates of the trail's first version. */
  public static String plan() {
    return TestDay.EIGHT + QuarryTrack.ofPlan();
  }

  /** The recorder's clock is so much ahead of the day's. */
  public TrackDay recorderAhead(Duration by) {
    off = by;
    newFile();
    return this;
  }

  /** Laps are kept in such a way from now on. */
  public TrackDay kept(Source how) {
    source = how;
    return this;
  }

  /** From one distance along the line to another, a point a second. */
  public TrackDay ride(double from, double to, double speed) {
    track.ride(from, to, speed);
    return this;
  }

  /** The way back up, a good way from the trail. */
  public TrackDay climb(int seconds) {
    return aside(0.02, seconds, 1);
  }

  /** Somewhere else, a point every so many seconds. */
  public TrackDay aside(double degrees, int seconds, int step) {
    track.aside(degrees, seconds, step);
    return this;
  }

  /** Nothing is written for so long. */
  public TrackDay silent(int seconds) {
    track.silent(seconds);
    return this;
  }

  /** A warm-up lap. */
  public TrackDay warmUp() {
    ride(0, 700, 6);
    assertThat(day.desk().riderDays().warmUp(day.id()))
        .isInstanceOf(blindlap.desk.day.DayResult.Done.class);
    return climb(600);
  }

  /** A whole lap at a speed in metres a second, entered some time after the finish. */
  public TrackDay lap(int stint, double speed, int later) {
    return ride(0, 700, speed).entered(stint, later);
  }

  /** A lap is entered, some time after the recorder's last point. */
  public TrackDay entered(int stint, int later) {
    aside(0.001, later, 1);
    LapInput lap =
        LapInput.of(new LapId(stint, 1), Map.of("trust", BigDecimal.valueOf(2 + stint % 3)));
    act(state -> new DayCommands(state).record(List.of(lap), source));
    return this;
  }

  public void act(java.util.function.Function<SessionState, Outcome> decision) {
    assertThat(day.desk().sessions().act(day.id(), decision))
        .isInstanceOf(Sessions.Result.Done.class);
  }

  /** A day of eight clear laps, each at a speed of its own. */
  public TrackDay clear() {
    warmUp();
    for (int stint = 1; stint <= 8; stint++) {
      lap(stint, speed(stint), 25 + 5 * (stint % 3)).climb(700 + 40 * (stint % 4));
    }
    return this;
  }

  public static double speed(int stint) {
    return 6 + 0.2 * (stint * 3 % 8);
  }

  /** From start gate to finish gate. */
  public static double seconds(int stint) {
    return (FINISH - START) / speed(stint);
  }

  public void close(boolean review) {
    act(state -> new LifeCommands(state).closeDay());
    if (review) {
      act(state -> new LifeCommands(state).closeReview());
    }
  }

  /** The recording so far. */
  public byte[] gpx() {
    return track.gpx();
  }

  /** Another recording begins. */
  public void newFile() {
    track = new QuarryTrack(day.clock(), off);
  }

  public Recordings.Read read() {
    return read("quarry.gpx");
  }

  public Recordings.Read read(String name) {
    return recordings().read(state(), name, gpx());
  }

  public Settling settling() {
    Recordings.Read read = read();
    assertThat(read).as(String.valueOf(read)).isInstanceOf(Recordings.Read.Table.class);
    return ((Recordings.Read.Table) read).settling();
  }

  public Recordings recordings() {
    return day.desk().recordings();
  }

  public KeptTrail trail() {
    return day.desk().notebook().trails().latest("Quarry loop").orElseThrow();
  }

  public TestDay day() {
    return day;
  }

  public SessionState state() {
    return day.state();
  }

  /** The facts so far, without the commit. */
  public List<Fact> facts() {
    return state().entries().stream().skip(1).map(stored -> stored.entry().fact()).toList();
  }

  @Override
  public void close() {
    day.close();
  }
}
