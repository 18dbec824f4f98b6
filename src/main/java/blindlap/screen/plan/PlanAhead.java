package blindlap.screen.plan;

import blindlap.desk.Planning;
import blindlap.plan.Plan;
import blindlap.plan.Protocol;
import blindlap.screen.part.Background;

/** Works out each rule once off the interface thread, so that choosing it answers at once. */
final class PlanAhead {
  private PlanAhead() {}

  static void prepare(Plan now, Planning planning, Background background) {
    boolean levels = now.kind() == Plan.Kind.STEPS_DAY;
    for (Protocol protocol : planning.protocols()) {
      if (protocol.levels() != levels) {
        continue;
      }
      Plan other = now.with(protocol, protocol.usualStints());
      // Where it fails nothing is lost: the answer is worked out when it is asked for.
      background.run(() -> planning.answers().quick(other), answer -> {}, reason -> {});
    }
  }
}
