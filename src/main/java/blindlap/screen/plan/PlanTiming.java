package blindlap.screen.plan;

import blindlap.desk.Planning;
import blindlap.plan.Plan;
import blindlap.plan.TrailGate;
import blindlap.plan.TrailVersion;
import blindlap.screen.part.TypedForm;
import blindlap.wording.TimingWords;
import java.util.List;
import java.util.Optional;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;

/** What a recording could time: versions of the trail in the trail book, and gates of one. */
final class PlanTiming {
  private final Planning planning;
  private final TypedForm form;
  private final TypedForm.Entry number;
  private final ObservableList<String> gates = FXCollections.observableArrayList();
  private final ReadOnlyStringWrapper words = new ReadOnlyStringWrapper("");
  private final ReadOnlyBooleanWrapper offered = new ReadOnlyBooleanWrapper();

  /**
   * @param plan the draft as read, with its gates; empty while it cannot be read
   */
  PlanTiming(Planning planning, TypedForm form, ReadOnlyObjectProperty<Optional<Plan>> plan) {
    this.planning = planning;
    this.form = form;
    this.number = form.part("trail_version").field("number");
    plan.addListener((o, before, now) -> look(now.map(Plan::trailVersion)));
  }

  private void look(Optional<TrailVersion> version) {
    List<Integer> versions = planning.trailVersions(form.field("trail").get());
    List<String> names =
        version.map(TrailVersion::gates).orElse(List.of()).stream().map(TrailGate::name).toList();
    if (!names.equals(gates)) {
      gates.setAll(names);
    }
    offered.set(!versions.isEmpty() || !number.get().isBlank());
    words.set(TimingWords.offered(versions, names));
  }

  /** The number of the version as typed. */
  TypedForm.Entry number() {
    return number;
  }

  /** Names of the gates of the version that was chosen; none while none is. */
  ObservableList<String> gates() {
    return gates;
  }

  /** Which versions there are, and which gates the chosen one has, in a sentence or two. */
  ReadOnlyStringProperty wordsProperty() {
    return words.getReadOnlyProperty();
  }

  /** True if there is a version to choose, or one was typed. */
  ReadOnlyBooleanProperty offeredProperty() {
    return offered.getReadOnlyProperty();
  }
}
