package blindlap.screen.review;

import blindlap.desk.Reviews;
import blindlap.desk.WholeFiles;
import blindlap.screen.part.Background;
import blindlap.session.SessionState;
import blindlap.wording.WrittenWords;
import blindlap.wording.day.Words;
import java.nio.file.Path;
import java.util.Map;
import java.util.function.Consumer;

/** Writes what a review gives away: the report, the card, the data package. */
final class ReviewFiles {
  private static final Words WORDS = Words.of("review");

  private final Reviews reviews;
  private final Background background;
  private final Consumer<String> said;
  private final Consumer<Exception> failed;

  /**
   * @param said takes what was written
   * @param failed takes why nothing was
   */
  ReviewFiles(
      Reviews reviews, Background background, Consumer<String> said, Consumer<Exception> failed) {
    this.reviews = reviews;
    this.background = background;
    this.said = said;
    this.failed = failed;
  }

  /** The report, in a folder. */
  void report(SessionState session, Path folder) {
    background.run(
        () -> {
          Map<String, byte[]> files = reviews.report(session, false);
          boolean written = WholeFiles.written(folder, files);
          if (written) {
            files.keySet().forEach(name -> reviews.reported(session, name));
          }
          return WrittenWords.said(written, folder, files.keySet());
        },
        said,
        failed);
  }

  /** The card, in a folder. */
  void card(SessionState session, Path folder) {
    background.run(
        () -> {
          Map<String, byte[]> files = reviews.card(session, false);
          return WrittenWords.said(WholeFiles.written(folder, files), folder, files.keySet());
        },
        said,
        failed);
  }

  /** The data package, in a folder. */
  void export(SessionState session, Path folder) {
    background.run(
        () ->
            WholeFiles.written(folder, reviews.export(session))
                ? WORDS.say("written", folder)
                : WORDS.say("written.not", folder),
        said,
        failed);
  }
}
