package blindlap.architecture;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.lang.ArchRule;
import java.util.List;
import java.util.function.Function;

/**
 * One rule with the examples that show what it does.
 *
 * @param sentence what holds
 * @param rule the rule over a root package
 * @param broken classes under the broken root that the rule must name
 * @param spared classes there that come close and that the rule must not name
 */
record Border(
    String sentence,
    Function<String, ArchRule> rule,
    List<Class<?>> broken,
    List<Class<?>> spared) {

  Border {
    if (broken.isEmpty()) {
      throw new IllegalArgumentException("nothing shows that this rule can fail: " + sentence);
    }
  }

  /** A border with its rule alone; examples follow. */
  static Border of(String sentence, Function<String, ArchRule> rule, Class<?>... broken) {
    return new Border(sentence, rule, List.of(broken), List.of());
  }

  /** The same border, with classes that must not be named. */
  Border sparing(Class<?>... classes) {
    return new Border(sentence, rule, broken, List.of(classes));
  }

  /** Throws an AssertionError that lists every violation. */
  void check(String root, JavaClasses classes) {
    rule.apply(root)
        .as(sentence)
        .because("docs/adr/0001-packages-and-borders.md says so, and why")
        .check(classes);
  }

  /** Every violation, one line each; a circle gives several. */
  List<String> violations(String root, JavaClasses classes) {
    return rule.apply(root).evaluate(classes).getFailureReport().getDetails().stream()
        .flatMap(String::lines)
        .toList();
  }
}
