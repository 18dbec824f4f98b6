package blindlap.screen.book;

import blindlap.desk.AnotherDay;
import blindlap.screen.part.Background;
import blindlap.screen.part.Shell;
import blindlap.session.day.SessionId;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Trouble;
import java.util.Optional;
import java.util.function.Consumer;

/** Another session, made as a draft from one that there is and opened on the Plan page. */
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

  /**
   * Makes a draft of a session's plan, without its day and override, and goes there.
   *
   * @param failed told in a sentence what went wrong
   */
  void copy(SessionId session, Consumer<String> failed) {
    background.run(
        () -> another.copy(session),
        draft -> draft.ifPresent(shell::openCopy),
        problem -> failed.accept(Trouble.sentence(problem)));
  }

  private Kept kept(AnotherDay.Next next) {
    if (next instanceof AnotherDay.Next.Refused refused) {
      return new Kept(Optional.empty(), String.join(" ", Problems.sentences(refused.problems())));
    }
    AnotherDay.Next.Begun begun = (AnotherDay.Next.Begun) next;
    return new Kept(Optional.of(another.keep(begun.made())), "");
  }
}
