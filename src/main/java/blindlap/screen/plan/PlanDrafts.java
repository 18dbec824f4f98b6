package blindlap.screen.plan;

import blindlap.desk.Planning;
import blindlap.wording.PlanWords;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;

/** Drafts that are kept, those that were deleted, and which one is on the page. */
public final class PlanDrafts {
  private final Set<String> begun = new HashSet<>();
  private final Planning planning;
  private final ObservableList<Draft> kept = FXCollections.observableArrayList();
  private final ObservableList<Deleted> deleted = FXCollections.observableArrayList();

  /**
   * A draft in the list.
   *
   * @param name its name in the notebook
   * @param title what its tester would call it
   */
  public record Draft(String name, String title) {
    @Override
    public String toString() {
      return title;
    }
  }

  /**
   * A draft that was deleted.
   *
   * @param name its name in the notebook
   * @param title what its tester would call it
   * @param fields as they were typed
   */
  public record Deleted(String name, String title, Map<String, Object> fields) {}

  PlanDrafts(Planning planning) {
    this.planning = planning;
  }

  ObservableList<Draft> kept() {
    return kept;
  }

  ObservableList<Deleted> deleted() {
    return deleted;
  }

  /** The name of the draft that was kept last. */
  Optional<String> latest() {
    List<String> names = new ArrayList<>(planning.drafts().keySet());
    return names.isEmpty() ? Optional.empty() : Optional.of(names.get(names.size() - 1));
  }

  Optional<Map<String, Object>> fields(String name) {
    return Optional.ofNullable(planning.drafts().get(name));
  }

  /**
   * A name that no draft has, nor one that was deleted and can still be brought back, nor one that
   * was begun here: a draft in which nothing was typed is not kept, but its steps are.
   */
  String freshName() {
    String fresh = planning.freshName();
    while (deletedAs(fresh) || fields(fresh).isPresent() || begun.contains(fresh)) {
      fresh += "+";
    }
    begun.add(fresh);
    return fresh;
  }

  private boolean deletedAs(String name) {
    return deleted.stream().anyMatch(draft -> draft.name().equals(name));
  }

  /** Reads the list anew. */
  void list() {
    List<Draft> rows = new ArrayList<>();
    planning
        .drafts()
        .forEach((draft, fields) -> rows.add(new Draft(draft, PlanWords.title(fields))));
    kept.setAll(rows);
  }

  void delete(String name, Map<String, Object> fields) {
    deleted.add(0, new Deleted(name, PlanWords.title(fields), fields));
    planning.forget(name);
  }
}
