package blindlap.review;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** How days lead from one setup to another. */
final class FieldWays {
  private FieldWays() {}

  /**
   * The setups between two, over as few days as possible; none where a day holds both, empty where
   * no days lead from one to the other. Of equally short ways the one whose days are earlier.
   *
   * @param days ids of the setups of every day, the earliest first
   */
  static Optional<List<String>> between(List<List<String>> days, String from, String to) {
    Map<String, String> before = new HashMap<>();
    ArrayDeque<String> open = new ArrayDeque<>(List.of(from));
    before.put(from, from);
    while (!open.isEmpty()) {
      String here = open.remove();
      for (List<String> day : days) {
        if (day.contains(here)) {
          day.stream().filter(id -> before.putIfAbsent(id, here) == null).forEach(open::add);
        }
      }
    }
    String at = before.get(to);
    if (at == null) {
      return Optional.empty();
    }
    List<String> way = new ArrayList<>();
    for (; !at.equals(from); at = java.util.Objects.requireNonNull(before.get(at))) {
      way.add(at);
    }
    Collections.reverse(way);
    return Optional.of(way);
  }
}
