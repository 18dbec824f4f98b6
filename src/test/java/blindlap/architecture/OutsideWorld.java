package blindlap.architecture;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.AccessTarget.CodeUnitAccessTarget;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.lang.ArchRule;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Clock, randomness, environment and standard streams: who may reach for them. */
final class OutsideWorld {
  /** Methods that reach out whatever they are given; "new" is a constructor, "x*" a prefix. */
  private static final Map<String, Set<String>> ALWAYS =
      Map.ofEntries(
          Map.entry("java.time.Clock", Set.of("system*")),
          Map.entry("java.lang.Math", Set.of("random")),
          Map.entry("java.lang.StrictMath", Set.of("random")),
          Map.entry("java.security.SecureRandom", Set.of("new", "getInstance*", "getSeed")),
          Map.entry("java.util.UUID", Set.of("randomUUID")),
          Map.entry("java.util.concurrent.ThreadLocalRandom", Set.of("current")),
          Map.entry("java.util.random.RandomGenerator", Set.of("of", "getDefault")),
          Map.entry("java.util.random.RandomGeneratorFactory", Set.of("getDefault")),
          Map.entry(
              "java.lang.System",
              Set.of("currentTimeMillis", "nanoTime", "getenv", "getProperty", "getProperties")),
          Map.entry("java.lang.Integer", Set.of("getInteger")),
          Map.entry("java.lang.Long", Set.of("getLong")),
          Map.entry("java.lang.Boolean", Set.of("getBoolean")),
          Map.entry("java.time.ZoneId", Set.of("systemDefault")),
          Map.entry("java.util.TimeZone", Set.of("getDefault")),
          Map.entry("java.util.Locale", Set.of("getDefault")),
          Map.entry("java.util.Calendar", Set.of("getInstance")),
          Map.entry("java.nio.charset.Charset", Set.of("defaultCharset")),
          Map.entry(
              "org.apache.commons.rng.simple.RandomSource",
              Set.of("createInt", "createIntArray", "createLong", "createLongArray")));

  /** Methods that reach out only in the form without any argument. */
  private static final Map<String, Set<String>> WITHOUT_ARGUMENTS =
      Map.of(
          "java.util.Date", Set.of("new"),
          "java.util.Random", Set.of("new"),
          "java.util.SplittableRandom", Set.of("new"),
          "java.util.random.RandomGeneratorFactory", Set.of("create"),
          "org.apache.commons.rng.simple.RandomSource", Set.of("create"),
          "java.lang.String", Set.of("toLowerCase", "toUpperCase"));

  /** Methods that fall back on a default unless they are given this type. */
  private static final Map<String, Map<String, String>> UNLESS_GIVEN =
      Map.of(
          "java.time.Clock", Map.of("tick*", "java.time.Clock"),
          "java.util.Collections", Map.of("shuffle", "java.util.Random"),
          "java.util.ResourceBundle", Map.of("getBundle", "java.util.Locale"),
          "java.text.NumberFormat", Map.of("get*Instance", "java.util.Locale"),
          "java.time.format.DateTimeFormatter", Map.of("ofPattern", "java.util.Locale"));

  private static final Set<String> STREAMS = Set.of("out", "err", "in");

  private static final Map<String, Set<String>> ENDS_AND_STREAMS =
      Map.of(
          "java.lang.System", Set.of("exit", "setOut", "setErr", "setIn", "console"),
          "java.lang.Runtime", Set.of("exit", "halt"),
          "java.lang.Thread", Set.of("dumpStack"));

  private OutsideWorld() {}

  /** Only the composition root reads clock, chance and environment; all others are given them. */
  static ArchRule sources(String root) {
    return noClasses()
        .that(resideInAPackage(root).negate())
        .should()
        .accessTargetWhere(
            describe("clock, chance or environment is asked", OutsideWorld::readsSource));
  }

  /** Only commands and the composition root talk to the terminal or end the process. */
  static ArchRule streams(String root) {
    return noClasses()
        .that(resideInAnyPackage(root, root + ".command..").negate())
        .should()
        .accessTargetWhere(
            describe("a standard stream or the process's end is meant", OutsideWorld::usesStream));
  }

  private static boolean readsSource(JavaAccess<?> access) {
    if (!(access.getTarget() instanceof CodeUnitAccessTarget target)) {
      return false;
    }
    String owner = target.getOwner().getName();
    String name = target.getName().equals("<init>") ? "new" : target.getName();
    List<String> given = target.getRawParameterTypes().stream().map(JavaClass::getName).toList();
    return matches(ALWAYS.getOrDefault(owner, Set.of()), name)
        || given.isEmpty() && matches(WITHOUT_ARGUMENTS.getOrDefault(owner, Set.of()), name)
        || UNLESS_GIVEN.getOrDefault(owner, Map.of()).entrySet().stream()
            .anyMatch(one -> matches(one.getKey(), name) && !given.contains(one.getValue()))
        || isNow(owner, name) && !given.contains("java.time.Clock");
  }

  private static boolean isNow(String owner, String name) {
    return owner.startsWith("java.time.") && name.equals("now");
  }

  private static boolean usesStream(JavaAccess<?> access) {
    String owner = access.getTargetOwner().getName();
    String name = access.getTarget().getName();
    if (access.getTarget() instanceof CodeUnitAccessTarget target) {
      return matches(ENDS_AND_STREAMS.getOrDefault(owner, Set.of()), name)
          || name.equals("printStackTrace") && target.getRawParameterTypes().isEmpty();
    }
    return owner.equals("java.lang.System") && STREAMS.contains(name);
  }

  private static boolean matches(Set<String> patterns, String name) {
    return patterns.stream().anyMatch(pattern -> matches(pattern, name));
  }

  private static boolean matches(String pattern, String name) {
    int star = pattern.indexOf('*');
    return star < 0
        ? pattern.equals(name)
        : name.startsWith(pattern.substring(0, star)) && name.endsWith(pattern.substring(star + 1));
  }
}
