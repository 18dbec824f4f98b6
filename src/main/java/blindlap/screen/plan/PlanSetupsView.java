package blindlap.screen.plan;

import blindlap.plan.PlanOptions;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.screen.part.SteadyBox;
import blindlap.screen.part.TypedForm;
import blindlap.wording.PlanWords;
import java.util.List;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.beans.value.ObservableIntegerValue;
import javafx.collections.ListChangeListener;
import javafx.collections.ObservableList;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.TitledPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/** The setups, what differs between them, and what stays the same. */
final class PlanSetupsView extends SteadyBox {
  private final PlanModel model;

  PlanSetupsView(Look look, PlanModel model) {
    super(16);
    this.model = model;
    TypedForm form = model.form();
    Button add = Fields.button(PlanWords.say("add.setup"), () -> form.add("setups"));
    add.setId("add-setup");
    VBox bike =
        new VBox(
            10,
            Fields.words(PlanWords.say("settings.legend"), "note", "second"),
            new PlanRowsView(form.list("bike"), PlanWords.field("bike.one"), "name", this::setting),
            Fields.button(PlanWords.say("add.setting"), () -> form.add("bike")));
    PlanStepsDay stepsDay = model.rules().stepsDay();
    PlanTelling telling = model.rules().telling();
    PlanStepsDayView levels = new PlanStepsDayView(form, stepsDay);
    PlanTellingView.shownWhile(levels, stepsDay.chosen());
    BooleanBinding two = telling.chosen().and(telling.levels());
    VBox compared =
        new VBox(
            16,
            add,
            new PlanDifferencesView(look, model.answer()),
            PlanFieldsView.area(form.field("differences_reason"), "differences_reason"));
    PlanTellingView.shownWhile(compared, stepsDay.chosen().or(two).not());
    PlanTellingView.shownWhile(add, telling.alone().not());
    VBox bikes = bikes(form.part("bikes"));
    PlanTellingView.shownWhile(bikes, telling.alone().not());
    getChildren()
        .setAll(
            PlanTellingView.between(telling),
            new PlanRowsView(form.list("setups"), PlanWords.field("setups.one"), this::setup),
            levels,
            twoLevels(two),
            compared,
            PlanFieldsView.choice(form, "change", PlanOptions.of("change")),
            bikes,
            PlanFieldsView.fold("head.bike", bike));
  }

  /** The setting whose two levels are told apart. */
  private Node twoLevels(BooleanBinding shown) {
    PlanStepsDayView levels =
        new PlanStepsDayView(
            model.form().part("telling_run").part("one_setting"),
            "one_setting",
            model.rules().stepsDay());
    PlanTellingView.shownWhile(levels, shown);
    return levels;
  }

  private VBox setup(TypedForm setup) {
    List<String> components = model.starters().componentNames();
    ComboBox<String> starters = new ComboBox<>();
    starters.getItems().setAll(components);
    starters.setPromptText(PlanWords.say("starter.component"));
    starters.setAccessibleText(PlanWords.say("starter.component"));
    starters.setOnAction(
        e -> {
          String chosen = starters.getValue();
          if (chosen != null) {
            model.starters().addStartingSet(setup, chosen);
          }
        });
    VBox ballast = PlanFieldsView.text(setup, "ballast_g", 5);
    FlowPane head =
        Fields.row(
            PlanFieldsView.text(setup, "setup", "name", 13),
            PlanFieldsView.text(setup, "component", 13),
            PlanFieldsView.text(setup, "mass", 7),
            PlanFieldsView.text(setup, "most_refits", 4),
            PlanFieldsView.text(setup.part("price"), "amount", 5),
            PlanFieldsView.text(setup.part("price"), "currency", 4),
            // At the end: no field stands behind the button as if it were the button's own.
            ballast,
            PlanFieldsView.beside(ballast, SettingAidView.ofBallast(setup)));
    VBox box =
        new VBox(
            10,
            head,
            Fields.words(PlanWords.say("settings.legend"), "note", "second"),
            new PlanRowsView(
                setup.list("settings"), PlanWords.field("settings.one"), "name", this::setting),
            PlanFieldsView.buttons(
                Fields.button(PlanWords.say("add.setting"), () -> setup.add("settings")),
                starters,
                take(setup)),
            more(setup));
    return box;
  }

  /** Takes over what the first setup has set: usually all but one thing is the same. */
  private Button take(TypedForm setup) {
    Button take = new Button();
    take.getStyleClass().add("quiet");
    take.setOnAction(e -> model.starters().takeSettings(setup));
    ObservableList<TypedForm> setups = model.form().list("setups");
    Runnable show =
        () -> {
          boolean later = !setups.isEmpty() && setups.get(0) != setup;
          take.setVisible(later);
          if (later) {
            take.textProperty()
                .bind(
                    Bindings.createStringBinding(
                        () -> settingsOf(setups.get(0).field("name").get()),
                        setups.get(0).field("name").textProperty()));
          }
        };
    take.managedProperty().bind(take.visibleProperty());
    setups.addListener((ListChangeListener<TypedForm>) change -> show.run());
    show.run();
    return take;
  }

  private static String settingsOf(String first) {
    return first.isBlank()
        ? PlanWords.say("copy.settings.unnamed")
        : PlanWords.say("copy.settings", first);
  }

  private TitledPane more(TypedForm setup) {
    VBox inside =
        new VBox(
            10,
            PlanFieldsView.area(setup.lines("steps"), "steps"),
            Fields.words(PlanWords.field("limits"), "note"),
            new PlanRowsView(
                setup.list("limits"),
                PlanWords.field("limits.one"),
                "what",
                (limit, number) ->
                    Fields.row(
                        PlanFieldsView.text(limit, "what", 14),
                        PlanFieldsView.text(limit, "value", 8),
                        PlanFieldsView.text(limit, "source", 20))),
            Fields.button(PlanWords.say("add.limit"), () -> setup.add("limits")),
            PlanFieldsView.area(setup.lines("consumables"), "consumables"),
            PlanFieldsView.area(setup.lines("cautions"), "cautions"));
    return PlanFieldsView.fold("more.fields", inside);
  }

  private Node setting(TypedForm setting, ObservableIntegerValue number) {
    BooleanBinding first = Bindings.equal(number, 1);
    FlowPane dial =
        Fields.row(
            PlanFieldsView.text(setting, "range", 6),
            PlanFieldsView.text(setting, "step", 5),
            PlanFieldsView.text(setting, "readings", 5));
    boolean used =
        !setting.field("range").get().isBlank() || !setting.field("step").get().isBlank();
    dial.setVisible(used);
    dial.managedProperty().bind(dial.visibleProperty());
    Button show = Fields.button(PlanWords.say("dial"), () -> dial.setVisible(!dial.isVisible()));
    show.getStyleClass().add("quiet");
    VBox name = PlanFieldsView.compact(setting, "name", 12, first);
    return Fields.tight(
        name,
        PlanFieldsView.compact(setting, "value", 5, first),
        PlanFieldsView.compact(setting, "unit", 10, first),
        PlanFieldsView.compact(setting, "tolerance", 3, first),
        PlanFieldsView.compactChoice(setting, "check", PlanOptions.of("check"), first),
        PlanFieldsView.compactChoice(
            setting,
            "equal",
            List.of(PlanWords.say("option.yes"), PlanWords.say("option.no")),
            first),
        PlanFieldsView.beside(name, SettingAidView.ofSetting(setting)),
        PlanFieldsView.beside(name, show),
        dial);
  }

  private static VBox bikes(TypedForm bikes) {
    VBox box =
        new VBox(
            10,
            Fields.row(
                PlanFieldsView.text(bikes, "first", 12),
                PlanFieldsView.text(bikes, "second", 12),
                PlanFieldsView.text(bikes, "change_after", 4)),
            new PlanRowsView(
                bikes.list("differences"),
                PlanWords.field("differences.one"),
                each ->
                    Fields.row(
                        PlanFieldsView.compact(each, "name", 14),
                        PlanFieldsView.compact(each, "first", 10),
                        PlanFieldsView.compact(each, "second", 10))),
            Fields.button(PlanWords.say("add.difference"), () -> bikes.add("differences")));
    return new VBox(PlanFieldsView.fold("field.bikes", box));
  }
}
