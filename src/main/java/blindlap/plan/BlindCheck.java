package blindlap.plan;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * Checks of what a blind level needs (docs/method.md#blind-levels): a level that the setups or the
 * people of a day cannot have is refused, since its words would claim what nobody did.
 */
final class BlindCheck {
  private final Plan plan;
  private final FoundProblems problems;
  private final BlindLevel level;
  private final Preparation friend;

  BlindCheck(Plan plan, FoundProblems problems) {
    this.plan = plan;
    this.problems = problems;
    this.level = plan.blinding().level();
    this.friend = plan.blinding().preparation();
  }

  void all() {
    if (friend.units() != null && friend.units() < 1) {
      problems.add(PlanFault.NOT_POSITIVE, "blinding.units", friend.units());
    }
    if (plan.kind() != Plan.Kind.COMPARISON) {
      return;
    }
    switch (level) {
      case OPEN, DRAWN, HELPER -> {}
      case MASKED -> {
        masked();
        limits();
      }
      case PREPARED -> {
        prepared();
        limits();
      }
    }
    if (friend.on() != null && friend.on().isAfter(plan.day()) && !plan.day().equals(Plan.NO_DAY)) {
      problems.add(PlanFault.PREPARED_AFTER, "blinding.prepared_on", friend.on(), plan.day());
    }
    if (level != BlindLevel.HELPER && !plan.looks().isEmpty()) {
      // Whoever asks for a look holds the phrase, and the rider must not be that person.
      problems.add(PlanFault.LOOKS_NEED_HELPER, "looks", PlanJson.word(level));
    }
  }

  private void masked() {
    List<String> dials = dials();
    if (friend.by().isBlank() && !dials.isEmpty()) {
      problems.add(PlanFault.MASKED_DIAL, "blinding.level", String.join(", ", dials));
    } else if (friend.by().isBlank() && friend.masks() == Preparation.Masks.FRIEND) {
      problems.add(PlanFault.FRIEND_MISSING, "blinding.prepared_by", PlanJson.word(level));
    }
    if (plan.change() == ChangeMethod.TWO_BIKES) {
      problems.add(PlanFault.BIKES_TOLD_APART, "blinding.level", PlanJson.word(level));
    }
  }

  private void prepared() {
    if (friend.by().isBlank()) {
      problems.add(PlanFault.FRIEND_MISSING, "blinding.prepared_by", PlanJson.word(level));
    }
    if (plan.change() == ChangeMethod.TWO_BIKES && !friend.recovers()) {
      problems.add(PlanFault.BIKES_TOLD_APART, "blinding.level", PlanJson.word(level));
    }
  }

  /**
   * Whoever mounts a part without knowing which it is can keep one list of limits only; two lists
   * would either be kept wrongly or tell which part it is.
   */
  private void limits() {
    List<Map<String, String>> lists =
        plan.setups().stream().map(setup -> valuesByKey(setup.limits())).toList();
    List<String> differing =
        plan.setups().stream()
            .flatMap(setup -> setup.limits().stream())
            .map(Setup.Limit::what)
            .filter(
                what ->
                    lists.stream()
                            .map(list -> list.getOrDefault(Setting.key(what), ""))
                            .distinct()
                            .count()
                        > 1)
            .collect(
                Collectors.toMap(
                    Setting::key, what -> what, (first, next) -> first, LinkedHashMap::new))
            .values()
            .stream()
            .toList();
    if (!differing.isEmpty()) {
      problems.add(
          PlanFault.LIMITS_DIFFER, "setups", String.join(", ", differing), PlanJson.word(level));
    }
  }

  /** Values of each limit in any order; a limit may be given for more than one state of a part. */
  private static Map<String, String> valuesByKey(List<Setup.Limit> limits) {
    return limits.stream()
        .collect(
            Collectors.groupingBy(
                limit -> Setting.key(limit.what()),
                Collectors.mapping(
                    limit -> Setting.key(limit.value()),
                    Collectors.collectingAndThen(
                        Collectors.toCollection(TreeSet::new),
                        values -> String.join("; ", values)))));
  }

  /**
   * The settings that differ where all of them are positions of a dial on one and the same part: of
   * such setups there are no two parts that could bear labels. Empty where anything else differs.
   */
  private List<String> dials() {
    Differences differences = Differences.of(plan);
    boolean onePart = plan.setups().stream().map(Setup::component).distinct().count() == 1;
    boolean all =
        differences.bikes().isEmpty()
            && differences.differing().stream().allMatch(BlindCheck::dial);
    return onePart && all ? differences.names() : List.of();
  }

  private static boolean dial(Differences.Row row) {
    return row.values().stream()
        .flatMap(java.util.Optional::stream)
        .anyMatch(s -> s.range() != null || s.step() != null || clicks(s));
  }

  private static boolean clicks(Setting setting) {
    String unit = Setting.key(setting.unit());
    return unit.startsWith("click") || unit.startsWith("turn") || unit.startsWith("position");
  }
}
