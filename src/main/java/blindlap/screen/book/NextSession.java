package blindlap.screen.book;

import blindlap.desk.AnotherDay;
import blindlap.screen.part.Background;
import blindlap.screen.part.Shell;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Trouble;
import java.util.Optional;
import java.util.function.Consumer;

/** The next session of a series, made as a draft and opened on the Plan page. */
public final class NextSession {
  private final AnotherDay another;
  private final Shell shell;
  private final Background background;

  public NextSession(AnotherDay another, Shell shell, Background background) {
    this.another = another;
    this.shell = shell;
    this.background = background;
  }

  private record Kept(Optional<String> draft, String refused) {}

  /**
   * Makes the draft and goes there.
   *
   * @param refused told in a sentence why nothing can be added to the series
   */
  void plan(String series, Consumer<String> refused) {
    background.run(
        () -> kept(another.next(series)),
        kept -> {
          refused.accept(kept.refused());
          kept.draft().ifPresent(shell::openDraft);
        },
        problem -> refused.accept(Trouble.sentence(problem)));
  }

  private Kept kept(AnotherDay.Next next) {
    if (next instanceof AnotherDay.Next.Refused refused) {
      return new Kept(Optional.empty(), String.join(" ", Problems.sentences(refused.problems())));
    }
    AnotherDay.Next.Begun begun = (AnotherDay.Next.Begun) next;
    return new Kept(Optional.of(another.keep(begun.made())), "");
  }
}
