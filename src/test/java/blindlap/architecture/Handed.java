package blindlap.architecture;

import com.tngtech.archunit.core.domain.AccessTarget.CodeUnitAccessTarget;
import com.tngtech.archunit.core.domain.AccessTarget.FieldAccessTarget;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaType;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * Which types a class has to do with: those it names, those that calls hand to it or take from it
 * without naming them (parameters, returns, fields, arrays, generics), and those that lie behind
 * its own signature however far one follows it.
 */
final class Handed {
  private Handed() {}

  /** Every place where a class names such a type or where one passes through it; one line each. */
  static List<String> mentions(JavaClass type, Predicate<JavaClass> such) {
    List<String> found = new ArrayList<>();
    type.getDirectDependenciesFromSelf().stream()
        .filter(dependency -> such.test(dependency.getTargetClass()))
        .forEach(dependency -> found.add(dependency.getDescription()));
    // A value passed on unnamed (a call as an argument of another) leaves no dependency on its
    // type.
    type.getAccessesFromSelf().stream()
        .filter(access -> handled(access).anyMatch(such))
        .forEach(access -> found.add(access.getDescription()));
    return found;
  }

  /** The types that an access hands over: what is read, returned or asked for. */
  static Stream<JavaClass> handled(JavaAccess<?> access) {
    Stream<JavaType> types =
        access.getTarget() instanceof FieldAccessTarget field
            ? Stream.concat(
                Stream.of(field.getRawType()),
                field.resolveMember().stream().map(JavaField::getType))
            : handledByCall((CodeUnitAccessTarget) access.getTarget());
    return types.flatMap(Handed::involved);
  }

  /**
   * The way from a class to the first such type behind its signature: fields, parameters, returns,
   * generics, supertypes, and theirs in turn, within the root package; empty if there is none.
   */
  static List<String> wayTo(String root, JavaClass from, Predicate<JavaClass> such) {
    List<List<JavaClass>> open = new ArrayList<>();
    Set<JavaClass> seen = new HashSet<>(Set.of(from));
    open.add(List.of(from));
    while (!open.isEmpty()) {
      List<JavaClass> way = open.remove(0);
      for (JavaClass next : (Iterable<JavaClass>) behind(way.get(way.size() - 1))::iterator) {
        if (Code.under(root, next) && seen.add(next)) {
          List<JavaClass> longer = new ArrayList<>(way);
          longer.add(next);
          if (such.test(next)) {
            return longer.stream().map(JavaClass::getName).toList();
          }
          open.add(longer);
        }
      }
    }
    return List.of();
  }

  /** The types in a class's own signature, and the classes inside it. */
  private static Stream<JavaClass> behind(JavaClass type) {
    Stream<JavaType> fields = type.getFields().stream().map(JavaField::getType);
    Stream<JavaType> units = type.getCodeUnits().stream().flatMap(Handed::signature);
    Stream<JavaType> above =
        Stream.concat(type.getSuperclass().stream(), type.getInterfaces().stream());
    return Stream.of(fields, units, above).flatMap(types -> types).flatMap(Handed::involved);
  }

  private static Stream<JavaClass> involved(JavaType type) {
    // An array of a library's type, which is not read, cannot be asked for its parts.
    return type instanceof JavaClass plain
        ? Stream.of(plain.tryGetComponentType().orElse(plain))
        : type.getAllInvolvedRawTypes().stream();
  }

  private static Stream<JavaType> handledByCall(CodeUnitAccessTarget call) {
    Stream<JavaType> raw =
        Stream.concat(Stream.of(call.getRawReturnType()), call.getRawParameterTypes().stream());
    Stream<JavaType> generic =
        call.resolveMember().stream().map(JavaCodeUnit.class::cast).flatMap(Handed::signature);
    return Stream.concat(raw, generic);
  }

  private static Stream<JavaType> signature(JavaCodeUnit unit) {
    return Stream.concat(Stream.of(unit.getReturnType()), unit.getParameterTypes().stream());
  }
}
