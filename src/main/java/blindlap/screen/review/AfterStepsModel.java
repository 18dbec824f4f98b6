package blindlap.screen.review;

import blindlap.desk.AfterSteps;
import blindlap.desk.AnotherDay;
import blindlap.review.Finding;
import blindlap.screen.part.Background;
import blindlap.session.SessionState;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Trouble;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;

/** From the steps day on the Review page into new plans, as drafts. */
public final class AfterStepsModel {
  private final AfterSteps steps;
  private final AnotherDay another;
  private final Consumer<String> openDraft;
  private final Consumer<String> said;
  private final Background background;
  private Optional<Shown> shown = Optional.empty();

  private record Shown(SessionState state, AfterSteps.Offer offer) {}

  private record Kept(Optional<String> draft, String refused) {}

  /**
   * @param openDraft goes to the Plan page with the draft of this name
   * @param said takes why nothing was made; nothing where something was
   */
  AfterStepsModel(
      AfterSteps steps,
      AnotherDay another,
      Consumer<String> openDraft,
      Consumer<String> said,
      Background background) {
    this.steps = steps;
    this.another = another;
    this.openDraft = openDraft;
    this.said = said;
    this.background = background;
  }

  /** The page has this finding. */
  void show(SessionState state, Finding finding) {
    shown = AfterSteps.offer(finding.day(), finding.primary()).map(o -> new Shown(state, o));
  }

  /** Another page than that of a finding is shown. */
  void clear() {
    shown = Optional.empty();
  }

  /** What the day offers; empty of other days, and before its finding is whole. */
  public Optional<AfterSteps.Offer> offer() {
    return shown.map(Shown::offer);
  }

  /** Makes a draft that compares the two best levels, and goes to the Plan page with it. */
  public void compareTwoBest() {
    shown.ifPresent(now -> draft(() -> steps.compareTwoBest(now.state())));
  }

  /** The same with the setup at a level. */
  public void take(String level) {
    shown.ifPresent(now -> draft(() -> steps.take(now.state(), level)));
  }

  private void draft(Supplier<AfterSteps.Taken> make) {
    background.run(
        () -> kept(make.get()),
        kept -> {
          said.accept(kept.refused());
          kept.draft().ifPresent(openDraft);
        },
        problem -> said.accept(Trouble.sentence(problem)));
  }

  private Kept kept(AfterSteps.Taken taken) {
    if (taken instanceof AfterSteps.Taken.Refused refused) {
      return new Kept(Optional.empty(), String.join(" ", Problems.sentences(refused.problems())));
    }
    AfterSteps.Taken.Drafted drafted = (AfterSteps.Taken.Drafted) taken;
    return new Kept(Optional.of(another.keep(drafted.made())), "");
  }
}
