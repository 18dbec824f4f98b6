package blindlap.screen.swap;

import blindlap.desk.HelperDay;
import blindlap.desk.Looking;
import blindlap.fault.Problem;
import blindlap.screen.part.Background;
import blindlap.session.LookCommands;
import blindlap.session.LookTaken;
import blindlap.session.SessionState;
import blindlap.wording.LookWords;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Trouble;
import java.util.List;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;

/**
 * The looks that the plan declares before its end: which is next, whether it can be taken now, and
 * what the last one said. What a look computes is never here.
 */
public final class SwapLook {
  private final Background background;
  private final Consumer<SessionState> handed;
  private final ReadOnlyBooleanWrapper due = new ReadOnlyBooleanWrapper();
  private final ReadOnlyBooleanWrapper settled = new ReadOnlyBooleanWrapper();
  private final ReadOnlyStringWrapper said = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper trouble = new ReadOnlyStringWrapper("");
  private @Nullable HelperDay day;
  private boolean busy;

  SwapLook(Background background, Consumer<SessionState> handed) {
    this.background = background;
    this.handed = handed;
  }

  /** True if a look can be taken now. */
  public ReadOnlyBooleanProperty dueProperty() {
    return due.getReadOnlyProperty();
  }

  /** True once a look has said "you may stop". */
  public ReadOnlyBooleanProperty settledProperty() {
    return settled.getReadOnlyProperty();
  }

  /** Which look is due, or else what the last one said; empty before the first. */
  public ReadOnlyStringProperty saidProperty() {
    return said.getReadOnlyProperty();
  }

  /** One sentence if something was refused; else empty. */
  public ReadOnlyStringProperty troubleProperty() {
    return trouble.getReadOnlyProperty();
  }

  void load(HelperDay open, SessionState latest) {
    day = open;
    LookCommands looks = new LookCommands(latest);
    due.set(looks.due().isPresent());
    settled.set(latest.looks().values().stream().anyMatch(LookTaken::settled));
    List<Problem> why =
        looks.meant().map(looks::problems).filter(p -> looks.waitsForALap()).orElse(List.of());
    trouble.set(String.join(" ", Problems.sentences(why)));
    said.set(looks.due().map(stint -> LookWords.say("head", stint)).orElseGet(() -> last(latest)));
  }

  private static String last(SessionState latest) {
    if (latest.looks().isEmpty()) {
      return "";
    }
    LookTaken look = latest.looks().get(latest.looks().lastKey());
    return look == null ? "" : LookWords.last(look.stint(), look.settled());
  }

  /** Takes the look that is due. */
  public void look() {
    HelperDay open = day;
    if (open == null || busy || !due.get()) {
      return;
    }
    busy = true;
    said.set(LookWords.say("working"));
    background.run(() -> new Looking(open).look(), this::looked, this::failed);
  }

  private void looked(Looking.Result result) {
    busy = false;
    if (result instanceof Looking.Result.Refused refused) {
      trouble.set(String.join(" ", Problems.sentences(refused.problems())));
    } else {
      handed.accept(((Looking.Result.Taken) result).state());
    }
  }

  private void failed(Exception problem) {
    busy = false;
    trouble.set(LookWords.say("not.taken", Trouble.sentence(problem)));
  }

  void close() {
    day = null;
    due.set(false);
    settled.set(false);
    said.set("");
    trouble.set("");
  }
}
