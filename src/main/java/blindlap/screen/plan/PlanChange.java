package blindlap.screen.plan;

import blindlap.wording.PlanWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;

/**
 * One thing that differs between two states of a draft.
 *
 * @param path where, as in a plan file, such as "setups[2].name"
 * @param kind how
 * @param name what a part that came or went is called; may be empty
 */
record PlanChange(String path, Kind kind, String name) {
  /** How it differs. */
  enum Kind {
    /** A field has another text. */
    TYPED,
    /** A part of a list has come. */
    ADDED,
    /** A part of a list has gone. */
    REMOVED
  }

  /** Everything that differs between two trees of fields. */
  static List<PlanChange> between(Map<String, ?> before, Map<String, ?> after) {
    List<PlanChange> changes = new ArrayList<>();
    maps("", before, after, changes);
    return changes;
  }

  private static void maps(
      String within, Map<?, ?> before, Map<?, ?> after, List<PlanChange> changes) {
    TreeSet<String> names = new TreeSet<>();
    before.keySet().forEach(name -> names.add(String.valueOf(name)));
    after.keySet().forEach(name -> names.add(String.valueOf(name)));
    for (String name : names) {
      String path = within.isEmpty() ? name : within + "." + name;
      Object one = before.get(name);
      Object other = after.get(name);
      if (one instanceof Map<?, ?> || other instanceof Map<?, ?>) {
        maps(path, map(one), map(other), changes);
      } else if (parts(one) || parts(other)) {
        lists(path, list(one), list(other), changes);
      } else if (!Objects.equals(one, other)) {
        changes.add(new PlanChange(path, Kind.TYPED, ""));
      }
    }
  }

  private static void lists(String path, List<?> before, List<?> after, List<PlanChange> changes) {
    int most = Math.min(before.size(), after.size());
    if (before.size() == after.size()) {
      for (int i = 0; i < most; i++) {
        maps(path + "[" + (i + 1) + "]", map(before.get(i)), map(after.get(i)), changes);
      }
      return;
    }
    int at = 0;
    while (at < most && before.get(at).equals(after.get(at))) {
      at++;
    }
    boolean gone = before.size() > after.size();
    Object what = map(gone ? before.get(at) : after.get(at)).get("name");
    changes.add(
        new PlanChange(
            path + "[" + (at + 1) + "]",
            gone ? Kind.REMOVED : Kind.ADDED,
            what == null ? "" : what.toString()));
  }

  private static boolean parts(@org.jspecify.annotations.Nullable Object value) {
    return value instanceof List<?> list
        && !list.isEmpty()
        && list.stream().allMatch(Map.class::isInstance);
  }

  private static Map<?, ?> map(@org.jspecify.annotations.Nullable Object value) {
    return value instanceof Map<?, ?> map ? map : Map.of();
  }

  private static List<?> list(@org.jspecify.annotations.Nullable Object value) {
    return value instanceof List<?> list ? list : List.of();
  }

  /** What was changed, for people: "Setup 2, Name". */
  static String words(List<PlanChange> changes) {
    if (changes.size() != 1) {
      return PlanWords.say("undo.several");
    }
    PlanChange only = changes.get(0);
    String place = PlanWords.placeOnly(only.path());
    String named =
        only.name().isBlank() ? place : PlanWords.say("undo.named", place, only.name().strip());
    return PlanWords.say("undo." + only.kind().name(), named);
  }
}
