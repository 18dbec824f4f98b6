package blindlap.screen.book;

import blindlap.desk.RiderHistory;
import blindlap.picture.NoisePictures;
import blindlap.plot.surface.Drawing;
import blindlap.review.NoiseRecord;
import blindlap.session.SessionSummary;
import blindlap.wording.NoiseWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What stands in the margin of the Notebook page about a rider's noise.
 *
 * @param title whose noise, where
 * @param words what it is; also when nothing is known
 * @param picture its history, if any
 * @param shows what days of so many stints can show
 * @param elsewhere other riders and trails
 */
public record NoiseNote(
    String title,
    String words,
    Optional<Drawing> picture,
    List<Shows> shows,
    List<String> elsewhere) {
  private static final int[] STINTS = {12, 16, 20, 24};
  private static final int MOST_ELSEWHERE = 6;

  /** Nothing to say yet. */
  static final NoiseNote NONE = new NoiseNote("", "", Optional.empty(), List.of(), List.of());

  /** A row: a number of stints, and the difference they can show. */
  public record Shows(String stints, String difference) {}

  public NoiseNote {
    shows = List.copyOf(shows);
    elsewhere = List.copyOf(elsewhere);
  }

  /** The note about the rider and trail of a session. */
  static NoiseNote of(RiderHistory history, SessionSummary about) {
    List<NoiseRecord> records = history.records(about.rider(), about.trail());
    List<String> elsewhere = elsewhere(history, about);
    Optional<NoiseRecord> first = records.stream().filter(r -> r.pooled().isPresent()).findFirst();
    if (first.isEmpty()) {
      return new NoiseNote(
          NoiseWords.say("title", about.rider(), about.trail()),
          NoiseWords.say("nothing", about.rider(), about.trail()),
          Optional.empty(),
          List.of(),
          elsewhere);
    }
    NoiseRecord record = first.get();
    List<Shows> shows = new ArrayList<>();
    for (int stints : STINTS) {
      NoiseWords.canShow(record, stints)
          .ifPresent(
              difference -> shows.add(new Shows(NoiseWords.say("shows.row", stints), difference)));
    }
    return new NoiseNote(
        NoiseWords.title(record),
        NoiseWords.pooled(record),
        NoisePictures.history(record),
        shows,
        elsewhere);
  }

  private static List<String> elsewhere(RiderHistory history, SessionSummary about) {
    return history.everywhere().stream()
        .filter(w -> !(w.rider().equals(about.rider()) && w.trail().equals(about.trail())))
        .limit(MOST_ELSEWHERE)
        .map(NoiseNote::line)
        .toList();
  }

  private static String line(RiderHistory.Where where) {
    return NoiseWords.say(
        where.sessions() == 1 ? "elsewhere.one" : "elsewhere.row",
        where.rider(),
        where.trail(),
        where.sessions());
  }
}
