package blindlap.screen.book;

import blindlap.desk.SeriesBook;
import blindlap.picture.SeriesPictures;
import blindlap.plan.Measure;
import blindlap.plot.surface.Drawing;
import blindlap.review.SeriesFinding;
import blindlap.wording.Headline;
import blindlap.wording.SeriesWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What the page says of a series. Before its end it holds nothing that depends on a key.
 *
 * @param question as declared
 * @param headline the answer
 * @param lead why there is none, or what is waited for; then these riders and riders in general
 * @param circumstances what a reader must know before the numbers
 * @param picture every session or rider beside what is pooled
 * @param measures the measures beside the primary one
 * @param riders every rider in a line
 * @param agreement how riders rank three and more setups
 * @param declared what was declared before riding, name and value in turn
 * @param sessions a row a session: day, rider, standing, result
 * @param elsewhere other sessions that ask the same, outside the series
 * @param next what planning its next session is called; empty if none can be added
 * @param mayEnd true while it can be ended early
 * @param open true once the series is at its end
 */
public record SeriesView(
    String question,
    Headline headline,
    List<String> lead,
    List<String> circumstances,
    Optional<Drawing> picture,
    List<String> measures,
    List<String> riders,
    List<String> agreement,
    List<List<String>> declared,
    List<List<String>> sessions,
    List<String> elsewhere,
    String next,
    boolean mayEnd,
    boolean open) {
  private static final int MOST_LINES = 20;

  /** Where no session names a series. */
  static final SeriesView NONE =
      told(SeriesWords.say("page.none"), List.of(SeriesWords.say("page.none.lead")));

  /** Before anything is known. */
  static final SeriesView WAITING = told(SeriesWords.say("page.waiting"), List.of());

  /** A view that shows nothing of a series. */
  static SeriesView told(String headline, List<String> lead) {
    return new SeriesView(
        "",
        new Headline("", headline, ""),
        lead,
        List.of(),
        Optional.empty(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        "",
        false,
        false);
  }

  public SeriesView {
    lead = List.copyOf(lead);
    circumstances = List.copyOf(circumstances);
    measures = List.copyOf(measures);
    riders = List.copyOf(riders);
    agreement = List.copyOf(agreement);
    declared = List.copyOf(declared);
    sessions = List.copyOf(sessions);
    elsewhere = List.copyOf(elsewhere);
  }

  /** The view of a series; empty where no session names it. */
  static SeriesView of(SeriesBook book, String id) {
    return book.finding(id).map(f -> of(f, book.elsewhere(f))).orElse(NONE);
  }

  private static SeriesView of(SeriesFinding finding, List<String> elsewhere) {
    SeriesWords words = new SeriesWords(finding);
    List<String> lead = new ArrayList<>();
    if (!words.reason().isEmpty()) {
      lead.add(words.reason());
    }
    lead.addAll(words.lead());
    return new SeriesView(
        finding.question(),
        words.headline(),
        lead,
        words.circumstances(),
        new SeriesPictures(finding).pooled(),
        words.measures(),
        words.riders(),
        words.agreement(),
        declared(finding, words),
        words.rows().stream()
            .map(r -> List.of(r.day(), r.rider(), r.standing(), r.result()))
            .toList(),
        some(elsewhere),
        next(finding),
        mayEnd(finding.progress()),
        finding.open());
  }

  /** A declared series takes sessions until it has its number, ends early, or a seal is opened. */
  private static String next(SeriesFinding finding) {
    SeriesFinding.Progress progress = finding.progress();
    int number = progress.sessions() + 1;
    if (progress.declared().isEmpty()) {
      return SeriesWords.say("page.next.open", number);
    }
    boolean over =
        progress.ended()
            || finding.parts().stream().anyMatch(part -> !part.step().sealed())
            || number > progress.declared().get();
    return over ? "" : SeriesWords.say("page.next", number, progress.declared().get());
  }

  /** A complete series is unsealed, not ended. */
  private static boolean mayEnd(SeriesFinding.Progress progress) {
    return !progress.ended()
        && progress.declared().filter(declared -> progress.closed() < declared).isPresent();
  }

  /** At most some lines, and how many more there are; the report has them all. */
  static List<String> some(List<String> lines) {
    if (lines.size() <= MOST_LINES) {
      return lines;
    }
    List<String> some = new ArrayList<>(lines.subList(0, MOST_LINES));
    some.add(SeriesWords.say("page.more", lines.size() - MOST_LINES));
    return some;
  }

  private static List<List<String>> declared(SeriesFinding finding, SeriesWords words) {
    Measure measure = finding.measure();
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of(SeriesWords.say("page.setups"), words.setups()));
    rows.add(List.of(SeriesWords.say("page.measure"), measure.name()));
    if (measure.worthwhile() != null) {
      rows.add(List.of(SeriesWords.say("page.worthwhile"), words.worthwhile()));
    }
    rows.add(
        List.of(
            SeriesWords.say("page.declared"),
            finding.declared().map(String::valueOf).orElse(SeriesWords.say("page.undeclared"))));
    SeriesFinding.Progress progress = finding.progress();
    rows.add(
        List.of(
            SeriesWords.say("page.progress"),
            SeriesWords.say(
                "page.progress.value", progress.ridden(), progress.closed(), progress.unsealed())));
    return rows;
  }
}
