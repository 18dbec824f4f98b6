package blindlap.desk;

import blindlap.exchange.TrailFault;
import blindlap.exchange.TrailFile;
import blindlap.fault.Unreadable;
import blindlap.plan.Trail;
import blindlap.plan.TrailVersion;
import blindlap.recording.LapLine;
import blindlap.recording.ReferenceLine;
import blindlap.recording.Track;
import blindlap.recording.TrackReader;
import blindlap.session.Hash;
import blindlap.session.KeptTrail;
import blindlap.session.Notebook;
import blindlap.session.SessionState;
import blindlap.session.SessionSummary;
import blindlap.session.TrailTitle;
import blindlap.session.Trails;
import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The trails of a notebook: made from a recorded lap or read from a file, changed, kept. */
public final class TrailBook {
  private final Trails trails;
  private final Notebook notebook;
  private final Sessions sessions;
  private final Clock clock;

  TrailBook(Notebook notebook, Sessions sessions, Clock clock) {
    this.trails = notebook.trails();
    this.notebook = notebook;
    this.sessions = sessions;
    this.clock = clock;
  }

  /** All versions of all trails, by name and number. */
  public List<TrailTitle> titles() {
    return trails.titles();
  }

  /** The names of all trails. */
  public List<String> names() {
    return titles().stream().map(TrailTitle::name).distinct().toList();
  }

  /** The versions of a trail, by number. */
  public List<TrailTitle> versions(String name) {
    return titles().stream().filter(title -> title.name().equals(name)).toList();
  }

  /** The last version of a trail. */
  public Optional<KeptTrail> latest(String name) {
    return trails.latest(name);
  }

  /** A version of a trail. */
  public Optional<KeptTrail> find(String name, int number) {
    return trails.find(name, number);
  }

  /** The version that a plan or a recording names. */
  public Optional<KeptTrail> find(TrailVersion version) {
    return trails.find(version.sha256());
  }

  /**
   * Keeps a trail as a version.
   *
   * @return the version that it is: a new one, or the one with the same text
   */
  public KeptTrail keep(Trail trail) {
    return trails.keep(trail, clock.instant().truncatedTo(ChronoUnit.SECONDS));
  }

  /**
   * Reads a trail from GeoJSON; nothing is kept yet.
   *
   * @throws Unreadable with the reason if it is none
   */
  public static Trail read(byte[] geoJson) {
    return TrailFile.read(geoJson);
  }

  /** The file of a trail. */
  public static byte[] geoJson(Trail trail) {
    return TrailFile.bytes(trail);
  }

  /** What the text of a trail is known by. */
  public static String sha256(Trail trail) {
    return Hash.of(TrailFile.text(trail)).hex();
  }

  /**
   * Reads a recording.
   *
   * @throws Unreadable with the reason if it is none
   */
  public static Track recording(byte[] file) {
    return TrackReader.read(file);
  }

  /**
   * The line of one lap of a recording, without gates; nothing is kept yet.
   *
   * @param from seconds after the first point; 0 for the beginning
   * @param to seconds after the first point; infinite for the end
   * @throws Unreadable with the reason if there is no line, or more than one lap
   */
  public static TrailDraft draft(String name, Track track, double from, double to) {
    double end = track.fixes().get(track.fixes().size() - 1).seconds();
    TrailDraft draft =
        TrailDraft.of(name, LapLine.of(track, from, Double.isInfinite(to) ? end : to));
    // A line without gates is no trail yet; what is wrong with the line itself is said at once.
    if (draft.places().size() < 2) {
      throw new Unreadable(TrailFault.TOO_SHORT);
    }
    if (draft.length() > ReferenceLine.LONGEST) {
      throw new Unreadable(
          TrailFault.TOO_LONG,
          Math.round(draft.length() / 1000),
          Math.round(ReferenceLine.LONGEST / 1000));
    }
    return draft;
  }

  /** Sessions whose plan is timed on a version. */
  public List<SessionSummary> uses(TrailTitle version) {
    List<SessionSummary> using = new ArrayList<>();
    for (SessionSummary summary : notebook.summaries()) {
      if (summary.trail().equals(version.name())
          && sessions.state(summary.id()).filter(state -> uses(state, version)).isPresent()) {
        using.add(summary);
      }
    }
    return using;
  }

  private static boolean uses(SessionState state, TrailTitle version) {
    TrailVersion planned = state.plan().trailVersion();
    return planned != null && planned.sha256().equals(version.sha256());
  }
}
