package blindlap.architecture;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Circles of classes that need each other, across rooms and inside them. Nested classes count as
 * the class around them. Found by the path-based algorithm for strong components (Gabow 2000).
 */
final class Circles {
  private final Map<String, Set<String>> needs = new TreeMap<>();
  private final Map<String, Integer> order = new LinkedHashMap<>();
  private final Deque<String> path = new ArrayDeque<>();
  private final Deque<String> roots = new ArrayDeque<>();
  private final Set<String> closed = new TreeSet<>();
  private final List<Set<String>> found = new ArrayList<>();

  private Circles(String root, JavaClasses classes) {
    for (JavaClass type : classes) {
      if (Code.under(root, type)) {
        String from = Code.topLevel(root, type);
        Set<String> others = needs.computeIfAbsent(from, name -> new TreeSet<>());
        type.getDirectDependenciesFromSelf().stream()
            .map(dependency -> dependency.getTargetClass())
            .filter(target -> Code.under(root, target))
            .map(target -> Code.topLevel(root, target))
            .filter(name -> !name.equals(from))
            .forEach(others::add);
      }
    }
  }

  /** Every circle, as the names of its classes relative to the root. */
  static List<Set<String>> of(String root, JavaClasses classes) {
    Circles circles = new Circles(root, classes);
    circles.needs.keySet().forEach(circles::visit);
    return circles.found;
  }

  private void visit(String name) {
    if (order.containsKey(name)) {
      return;
    }
    order.put(name, order.size());
    path.push(name);
    roots.push(name);
    for (String next : needs.getOrDefault(name, Set.of())) {
      if (!order.containsKey(next)) {
        visit(next);
      } else if (!closed.contains(next)) {
        while (order.get(roots.element()) > order.get(next)) {
          roots.pop();
        }
      }
    }
    if (roots.element().equals(name)) {
      roots.pop();
      close(name);
    }
  }

  private void close(String name) {
    Set<String> circle = new TreeSet<>();
    String last;
    do {
      last = path.pop();
      closed.add(last);
      circle.add(last);
    } while (!last.equals(name));
    if (circle.size() > 1) {
      found.add(circle);
    }
  }
}
