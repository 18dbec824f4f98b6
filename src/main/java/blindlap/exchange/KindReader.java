package blindlap.exchange;

import blindlap.fault.Problem;
import blindlap.plan.Plan;
import blindlap.plan.Setup;
import blindlap.plan.StepsDay;
import blindlap.plan.TellingRun;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Reads what the kind of a plan adds to it, and its setups, which may be levels of one setting.
 *
 * @param steps of a steps day; null where nothing was said
 * @param telling of a telling run; null where nothing was said
 * @param setups the plan's setups
 */
record KindReader(@Nullable StepsDay steps, @Nullable TellingRun telling, List<Setup> setups) {

  static KindReader of(FieldReader f, Plan.Kind kind, List<Problem> problems) {
    List<Setup> typed = f.objects("setups", SetupReader::setup);
    StepsReader steps = f.object("steps_day", s -> StepsReader.read(s, typed, problems));
    TellingReader telling = f.object("telling_run", t -> TellingReader.read(t, typed, problems));
    List<Setup> setups = typed;
    if (kind == Plan.Kind.STEPS_DAY && steps != null) {
      setups = steps.setups();
    } else if (kind == Plan.Kind.TELLING_RUN && telling != null) {
      setups = telling.setups();
    }
    return new KindReader(
        steps == null ? null : steps.day(), telling == null ? null : telling.run(), setups);
  }
}
