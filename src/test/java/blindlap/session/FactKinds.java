package blindlap.session;

import java.util.ArrayList;
import java.util.List;

/** Every kind of fact there is, those in files of their own included. */
public final class FactKinds {
  private FactKinds() {}

  /** The records that are facts. */
  public static List<Class<?>> all() {
    List<Class<?>> kinds = new ArrayList<>();
    add(Fact.class, kinds);
    return kinds;
  }

  private static void add(Class<?> kind, List<Class<?>> kinds) {
    if (kind.isSealed()) {
      for (Class<?> each : kind.getPermittedSubclasses()) {
        add(each, kinds);
      }
    } else {
      kinds.add(kind);
    }
  }
}
