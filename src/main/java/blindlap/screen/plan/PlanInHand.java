package blindlap.screen.plan;

import blindlap.plan.DayAnswer;
import blindlap.plan.EarlierNoise;
import blindlap.plan.Plan;
import java.util.Map;
import java.util.Optional;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyObjectProperty;

/** The plan on the page, as the way to a sealed session needs it. */
interface PlanInHand {
  /** The plan as far as it can be read; empty while something is wrong. */
  ReadOnlyObjectProperty<Optional<Plan>> planProperty();

  /** True if nothing is left to mend. */
  ReadOnlyBooleanProperty completeProperty();

  /** The best answer so far on what the day can show; empty where there is none. */
  Optional<DayAnswer> answered();

  /** What earlier days tell of the noise of measures beside the primary, as far as is known yet. */
  EarlierNoise earlier();

  /** The fields as typed. */
  Map<String, Object> fields();

  /** Keeps the draft; on disk when this returns. */
  void keep();

  /** Forgets the draft, which has become a session, and starts another. */
  void forget();

  /** One sentence for the page. */
  void say(String words);
}
