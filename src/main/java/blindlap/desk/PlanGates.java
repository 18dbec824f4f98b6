package blindlap.desk;

import blindlap.fault.Problem;
import blindlap.plan.Plan;
import blindlap.plan.Trail;
import blindlap.plan.TrailVersion;
import blindlap.session.KeptTrail;
import blindlap.session.TrailTitle;
import blindlap.session.Trails;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;

/**
 * The gates of plans, from the trail book: a person types the number of a version, and the plan
 * that is committed holds its gates, so that it stands alone.
 */
@FunctionalInterface
interface PlanGates {
  /** Without a trail book: what stands in the plan is all there is. */
  PlanGates NONE = plan -> new Filled(plan, Optional.empty(), List.of());

  /**
   * A plan with its gates.
   *
   * @param trail the trail of the book whose gates they are, if the book has it
   * @param problems why they could not be filled in, at the field {@code trail_version}
   */
  record Filled(Plan plan, Optional<Trail> trail, List<Problem> problems) {
    public Filled {
      problems = List.copyOf(problems);
    }
  }

  Filled of(Plan plan);

  /** By the trail book of a notebook. */
  static PlanGates of(Trails book) {
    // A page asks at every letter that is typed, and a version never changes.
    AtomicReference<@Nullable KeptTrail> last = new AtomicReference<>();
    return plan -> {
      TrailVersion asked = plan.trailVersion();
      if (asked == null || asked.number() < 1) {
        return NONE.of(plan);
      }
      Optional<KeptTrail> kept = find(book, plan.trail(), asked.number(), last);
      if (kept.isEmpty()) {
        return asked.gates().isEmpty()
            ? new Filled(plan, Optional.empty(), List.of(unknown(book, plan.trail(), asked)))
            : NONE.of(plan);
      }
      TrailVersion version = kept.get().version();
      boolean other =
          !asked.gates().isEmpty()
              && !(asked.sameGates(version) && asked.sha256().equals(version.sha256()));
      return other
          ? new Filled(plan, Optional.empty(), List.of(differs(plan.trail(), asked)))
          : new Filled(plan.with(version), Optional.of(kept.get().trail()), List.of());
    };
  }

  private static Optional<KeptTrail> find(
      Trails book, String trail, int number, AtomicReference<@Nullable KeptTrail> last) {
    KeptTrail known = last.get();
    if (known != null && known.title().name().equals(trail) && known.title().number() == number) {
      return Optional.of(known);
    }
    Optional<KeptTrail> found = book.find(trail, number);
    found.ifPresent(last::set);
    return found;
  }

  private static Problem unknown(Trails book, String trail, TrailVersion asked) {
    List<String> versions =
        book.titles().stream()
            .filter(title -> title.name().equals(trail))
            .map(title -> String.valueOf(title.number()))
            .toList();
    if (!versions.isEmpty()) {
      return Problem.of(
          DeskFault.NO_SUCH_TRAIL_VERSION,
          "trail_version.number",
          asked.number(),
          trail,
          String.join(", ", versions));
    }
    List<String> names = book.titles().stream().map(TrailTitle::name).distinct().toList();
    return names.isEmpty()
        ? Problem.of(DeskFault.TRAIL_BOOK_EMPTY, "trail_version.number", trail)
        : Problem.of(
            DeskFault.NO_SUCH_TRAIL, "trail_version.number", trail, String.join(", ", names));
  }

  private static Problem differs(String trail, TrailVersion asked) {
    return Problem.of(
        DeskFault.TRAIL_VERSION_DIFFERS, "trail_version.number", asked.number(), trail);
  }
}
