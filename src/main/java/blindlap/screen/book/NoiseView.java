package blindlap.screen.book;

import blindlap.picture.NoisePictures;
import blindlap.plot.surface.Drawing;
import blindlap.review.NoiseDay;
import blindlap.review.NoiseRecord;
import blindlap.wording.Headline;
import blindlap.wording.LapNoiseWords;
import blindlap.wording.NoiseWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What the page says of a rider's noise on a trail in one measure.
 *
 * @param headline the answer
 * @param lead what it means; also when nothing is known
 * @param picture noise over the days, if any has one
 * @param facts change over the days, void laps, drift, days by sort, sessions that tell nothing yet
 * @param days a row a day: date, sort, noise, interval, drift, void laps
 * @param shows what days there can show, each with its number of stints
 */
public record NoiseView(
    Headline headline,
    String lead,
    Optional<Drawing> picture,
    List<String> facts,
    List<List<String>> days,
    List<NoiseNote.Shows> shows) {
  /** Before anything is known. */
  static final NoiseView NONE =
      new NoiseView(
          new Headline("", NoiseWords.say("page.nothing"), ""),
          NoiseWords.say("page.nothing.lead"),
          Optional.empty(),
          List.of(),
          List.of(),
          List.of());

  private static final int[] STINTS = {12, 16, 20, 24};

  public NoiseView {
    facts = List.copyOf(facts);
    days = List.copyOf(days);
    shows = List.copyOf(shows);
  }

  /** A rider and trail of whom nothing is known. */
  static NoiseView nothing(String rider, String trail) {
    return new NoiseView(
        NONE.headline(),
        NoiseWords.say("nothing", rider, trail),
        Optional.empty(),
        List.of(),
        List.of(),
        List.of());
  }

  /**
   * The view of a record.
   *
   * @param sessions number of sessions of the rider and trail, whatever became of them
   */
  static NoiseView of(NoiseRecord record, int sessions) {
    List<List<String>> rows = new ArrayList<>();
    for (NoiseDay day : record.days()) {
      rows.add(NoiseWords.cells(record, day));
    }
    List<NoiseNote.Shows> shows = new ArrayList<>();
    for (int stints : STINTS) {
      NoiseWords.canShow(record, stints)
          .ifPresent(
              difference ->
                  shows.add(new NoiseNote.Shows(NoiseWords.say("shows.row", stints), difference)));
    }
    return new NoiseView(
        NoiseWords.headline(record),
        LapNoiseWords.lead(record),
        NoisePictures.overDays(record),
        LapNoiseWords.facts(record, sessions),
        rows,
        shows);
  }
}
