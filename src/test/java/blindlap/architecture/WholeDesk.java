package blindlap.architecture;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.lang.ArchRule;
import java.util.Set;

/** Who may be handed every use case at once. */
final class WholeDesk {
  /**
   * Commands call one thing each, a sample plays everybody; the window and the root put pages and
   * use cases together.
   */
  private static final Set<String> ROOMS = Set.of("command", "sample", "screen", "");

  private WholeDesk() {}

  /** Use cases and pages are given the use cases they need, by name. */
  static ArchRule rule(String root) {
    return noClasses()
        .that(
            describe(
                "neither are commands nor put the parts together",
                type ->
                    !ROOMS.contains(Code.part(root, type))
                        && !Code.topLevel(root, type).equals("desk.Desk")))
        .should()
        .dependOnClassesThat(
            describe(
                "are the whole desk",
                type -> Code.under(root, type) && Code.topLevel(root, type).equals("desk.Desk")));
  }
}
