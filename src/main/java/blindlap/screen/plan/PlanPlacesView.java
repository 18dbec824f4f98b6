package blindlap.screen.plan;

import blindlap.screen.part.TypedForm;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Control;
import javafx.scene.control.TitledPane;

/** Finds the fields of a draft on the page by the paths they have in a plan file. */
final class PlanPlacesView {
  private record Place(Control control, String path, List<TitledPane> folds) {}

  private PlanPlacesView() {}

  /**
   * Puts the focus on the field at a path, opening what it is folded into. Where there is no such
   * field, on the first of the part of the plan that it would belong to.
   */
  static void go(Parent page, TypedForm form, String path) {
    List<Place> places = new ArrayList<>();
    walk(page, form.paths(), new ArrayDeque<>(), places);
    for (String at = path; !at.isEmpty(); at = shorter(at)) {
      Optional<Place> place = find(places, at);
      if (place.isPresent()) {
        place.get().folds().forEach(fold -> fold.setExpanded(true));
        // Only what is laid out can be scrolled to.
        page.applyCss();
        page.layout();
        place.get().control().requestFocus();
        return;
      }
    }
  }

  private static Optional<Place> find(List<Place> places, String path) {
    return places.stream()
        .filter(place -> place.path().equals(path))
        .findFirst()
        .or(
            () ->
                places.stream()
                    .filter(
                        place ->
                            place.path().startsWith(path + ".")
                                || place.path().startsWith(path + "["))
                    .findFirst());
  }

  private static String shorter(String path) {
    int cut = Math.max(path.lastIndexOf('.'), path.lastIndexOf('['));
    return cut < 0 ? "" : path.substring(0, cut);
  }

  private static void walk(
      Node node, Map<TypedForm.Entry, String> paths, Deque<TitledPane> folds, List<Place> places) {
    if (!node.isVisible() && folds.isEmpty()) {
      return;
    }
    if (node instanceof Control control
        && control.getProperties().get(TypedForm.Entry.class) instanceof TypedForm.Entry entry
        && paths.containsKey(entry)) {
      places.add(new Place(control, paths.get(entry), List.copyOf(folds)));
    }
    if (node instanceof TitledPane fold) {
      folds.push(fold);
      walk(fold.getContent(), paths, folds, places);
      folds.pop();
    } else if (node instanceof Parent parent) {
      parent.getChildrenUnmodifiable().forEach(child -> walk(child, paths, folds, places));
    }
  }
}
