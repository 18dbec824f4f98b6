package blindlap.screen.plan;

import blindlap.plan.BlindLevel;
import blindlap.screen.part.TypedForm;
import java.util.Locale;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;

/**
 * How blind the day of a draft is. One field says it; older drafts and plan files say yes or no,
 * which is read as one of the levels and replaced by the first choice.
 */
public final class PlanLevel {
  private static final String YES_OR_NO = "blinded";

  private final TypedForm blinding;
  private final Consumer<Runnable> step;
  private final ReadOnlyObjectWrapper<BlindLevel> level;

  /**
   * @param blinding the part of the draft
   * @param step makes what is changed in it one step that can be taken back
   */
  PlanLevel(TypedForm blinding, Consumer<Runnable> step) {
    this.blinding = blinding;
    this.step = step;
    this.level = new ReadOnlyObjectWrapper<>(read());
    entry().textProperty().addListener((o, before, now) -> level.set(read()));
    blinding.field(YES_OR_NO).textProperty().addListener((o, before, now) -> level.set(read()));
  }

  /** The field of the plan file. */
  TypedForm.Entry entry() {
    return blinding.field("level");
  }

  /** What is chosen; a helper where nothing that can be read is said. */
  public ReadOnlyObjectProperty<BlindLevel> levelProperty() {
    return level.getReadOnlyProperty();
  }

  /** Chooses a level. */
  public void choose(BlindLevel wanted) {
    step.accept(
        () -> {
          blinding.field(YES_OR_NO).set("");
          entry().set(wanted.name().toLowerCase(Locale.ROOT));
        });
  }

  private BlindLevel read() {
    String typed = entry().get().strip().toUpperCase(Locale.ROOT);
    for (BlindLevel each : BlindLevel.values()) {
      if (each.name().equals(typed)) {
        return each;
      }
    }
    String yesOrNo = blinding.field(YES_OR_NO).get().strip().toLowerCase(Locale.ROOT);
    return yesOrNo.equals("no") || yesOrNo.equals("false") ? BlindLevel.OPEN : BlindLevel.HELPER;
  }
}
