package blindlap.screen.swap;

import blindlap.desk.LapWaits;
import blindlap.screen.part.DayEventsView;
import blindlap.screen.part.Deaf;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.screen.part.PhonesDoor;
import blindlap.screen.part.TickKeys;
import blindlap.screen.part.WholeInView;
import blindlap.wording.SwapWords;
import java.util.List;
import java.util.Optional;
import javafx.beans.InvalidationListener;
import javafx.geometry.Insets;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/**
 * The open Swap page: what to fit, what to do, set and confirm. All of it fits one window; with
 * large text or in a narrow window what lies between countdown and gate scrolls.
 */
final class SwapStintView extends VBox {
  /** A narrower page is stacked. */
  private static final double NARROW = 1000;

  private final Look look;
  private final SwapModel model;
  private final Deaf deaf;
  private final @Nullable PhonesDoor phones;

  @SuppressWarnings({"unused", "FieldCanBeLocal"}) // held so that the look can reach this view
  private final InvalidationListener watch;

  private @Nullable Object built;
  private @Nullable Parts parts;
  private @Nullable SwapNoteView note;
  private boolean events;
  private boolean later;

  /** What is on the page now. */
  private record Parts(
      SwapHeadView head,
      SwapStepsView steps,
      SwapSettingsView settings,
      SwapSafetyView safety,
      SwapFootView foot,
      @Nullable SwapOverrunView overrun,
      StackPane middle) {}

  /**
   * @param phones null where no phone comes
   */
  SwapStintView(Look look, SwapModel model, @Nullable PhonesDoor phones) {
    super(7);
    this.phones = phones;
    this.look = look;
    this.model = model;
    this.deaf = new Deaf(model.monotonic());
    getStyleClass().add("swap-stint");
    deaf.begin();
    deaf.guard(this);
    SwapWork work = model.work();
    work.sheetProperty().addListener((o, before, now) -> show(now));
    work.overrunProperty().addListener((o, before, now) -> show(work.sheetProperty().get()));
    work.waitsProperty().addListener((o, before, now) -> waits(now));
    model.timeProperty().addListener((o, before, now) -> time(now));
    widthProperty().addListener(o -> show(work.sheetProperty().get()));
    new TickKeys(this::letter, this::step).listen(this);
    show(work.sheetProperty().get());
    watch = look.watch(() -> show(work.sheetProperty().get()));
  }

  private boolean stacked() {
    return look.stacked() || getWidth() > 0 && getWidth() < NARROW * Math.max(1, look.textScale());
  }

  private void time(SwapClock.Time now) {
    Parts on = parts;
    if (on != null) {
      on.head().time(now);
    }
    SwapNoteView open = note;
    if (open != null) {
      open.time(now);
    }
  }

  private void waits(LapWaits now) {
    Parts on = parts;
    if (on != null) {
      on.foot().waits(now);
    }
    SwapNoteView open = note;
    if (open != null) {
      open.waits(now);
    }
  }

  /** What decides whether the page is built anew: never a value, or its focus would be lost. */
  private record Key(
      int stint,
      int fitted,
      String swap,
      boolean begun,
      boolean overrun,
      boolean events,
      boolean stacked) {}

  private void show(@Nullable SwapSheet now) {
    Object key =
        now == null
            ? "done"
            : new Key(
                now.stint(),
                now.fitted(),
                now.swap(),
                now.begun(),
                model.work().overrunProperty().get(),
                events,
                stacked());
    if (!key.equals(built)) {
      boolean again = built != null;
      built = key;
      build(now);
      if (again) {
        focus();
      }
    } else if (now != null && parts != null) {
      parts.steps().show(now);
      parts.settings().show(now);
      parts.safety().show(now);
      parts.foot().show(now);
    }
  }

  private void build(@Nullable SwapSheet now) {
    note = null;
    parts = null;
    if (now == null) {
      allDone();
      return;
    }
    SwapWork work = model.work();
    boolean asks = now.begun() && work.overrunProperty().get();
    Parts on =
        new Parts(
            new SwapHeadView(look, model),
            new SwapStepsView(look, work, now),
            new SwapSettingsView(look, work, now, this::next),
            new SwapSafetyView(look, work, now, this::next),
            new SwapFootView(look, work, now),
            asks ? new SwapOverrunView(look, work, this::openNote) : null,
            new StackPane());
    parts = on;
    on.middle().getChildren().setAll(SwapColumnsView.scrolled(on.settings()));
    on.head().time(model.timeProperty().get());
    on.head().leadsTo(() -> needed().isEmpty() ? on.foot().gate() : null);
    if (events) {
      happening(on, now);
    } else if (stacked()) {
      stack(on, now);
    } else {
      getChildren()
          .setAll(
              head(on, now),
              SwapColumnsView.rule(),
              new SwapLookView(look, model.looks()),
              grow(new SwapColumnsView(on.steps(), on.middle(), on.safety())),
              on.foot().row(happened(on), noted(on), on.foot().fitted()));
    }
  }

  private void allDone() {
    VBox all = new VBox(16, new SwapLaterView(look, model), events(false));
    getChildren()
        .setAll(
            Fields.words(SwapWords.say("all.done"), "lead"),
            grow(inView(SwapColumnsView.scrolled(all))));
  }

  /** In place of the columns: what may be said of the day. */
  private void happening(Parts on, SwapSheet now) {
    Button back = on.foot().side(SwapWords.say("less"), this::toggleEvents);
    Node all = later ? new SwapLaterView(look, model) : events(true);
    HBox.setHgrow(all, Priority.ALWAYS);
    deaf.after(all);
    Node top = stacked() ? on.head().countdown(now, on.overrun()) : head(on, now);
    Node body = // the focus rests on words
        stacked() ? new VBox(16, on.head().facts(now), back, all) : new HBox(24, all, back);
    getChildren()
        .setAll(
            top,
            SwapColumnsView.rule(),
            grow(
                inView(
                    stacked() ? SwapColumnsView.stacked(body) : SwapColumnsView.scrolled(body))));
  }

  private HBox head(Parts on, SwapSheet now) {
    HBox what = on.head().what(now);
    HBox.setHgrow(what, Priority.ALWAYS);
    HBox countdown = on.head().countdown(now, on.overrun());
    for (var width : List.of(countdown.minWidthProperty(), countdown.prefWidthProperty())) {
      width.bind(
          widthProperty().subtract(2 * SwapColumnsView.GAP).multiply(SwapColumnsView.LAST / 100));
    }
    return new HBox(SwapColumnsView.GAP, what, countdown);
  }

  /** Countdown and gate stay in sight; what lies between them scrolls. */
  private void stack(Parts on, SwapSheet now) {
    SwapNameView name = new SwapNameView(look, now.name());
    VBox between =
        new VBox(
            24,
            new SwapLookView(look, model.looks()),
            new VBox(10, name, on.head().facts(now)),
            on.steps(),
            on.middle(),
            on.safety(),
            on.foot().wide(),
            on.foot().beside(phones, happened(on), noted(on)),
            saved());
    on.middle().getChildren().setAll(on.settings());
    getChildren()
        .setAll(
            on.head().countdown(now, on.overrun()),
            SwapColumnsView.rule(),
            grow(inView(SwapColumnsView.stacked(between))),
            on.foot().row());
    getStyleClass().removeAll("stacked");
    getStyleClass().add("stacked");
  }

  /** With large text the band has no room for it. */
  private Label saved() {
    Label saved = new Label();
    saved.textProperty().bind(model.work().savedProperty());
    return saved;
  }

  private Button happened(Parts on) {
    return on.foot().side(SwapWords.say("more"), this::toggleEvents);
  }

  private Button noted(Parts on) {
    return on.foot().side(SwapWords.say("sheet"), this::toggleNote);
  }

  private DayEventsView events(boolean sealed) {
    DayEventsView view = new DayEventsView(look, model.events(), model::helperChanged, sealed);
    view.setSpacing(8);
    view.offerSettled(model.looks().settledProperty());
    return view;
  }

  private void toggleEvents() {
    later = false;
    events = !events;
    deaf.begin(); // another part stands under the finger that asked for it
    show(model.work().sheetProperty().get());
  }

  /** Wrong fits noticed later, stints kept on paper, the end of the helper's day. */
  private void openLater() {
    later = true;
    events = true;
    show(model.work().sheetProperty().get());
  }

  /** What else may be opened from the sheet; each in place of the page. */
  private List<SwapNoteView.Opens> opens() {
    return List.of(
        new SwapNoteView.Opens(SwapWords.say("later"), this::openLater),
        new SwapNoteView.Opens(SwapWords.say("more"), this::toggleEvents));
  }

  private void toggleNote() {
    deaf.begin();
    if (note == null) {
      openNote();
    } else {
      closeNote();
    }
  }

  private void openNote() {
    Parts on = parts;
    SwapSheet now = model.work().sheetProperty().get();
    if (on == null || now == null) {
      return;
    }
    SwapNoteView open = new SwapNoteView(look, model, now, opens(), this::closeNote);
    note = open;
    // What it lies over is taken away: a hidden field would still be read out.
    on.middle().getChildren().setAll(stacked() ? open : SwapColumnsView.scrolled(open));
    applyCss();
    layout();
    open.first().requestFocus();
  }

  private void closeNote() {
    Parts on = parts;
    note = null;
    if (on != null) {
      on.middle()
          .getChildren()
          .setAll(stacked() ? on.settings() : SwapColumnsView.scrolled(on.settings()));
      focus();
    }
  }

  private ScrollPane inView(ScrollPane scroll) {
    WholeInView.keep(scroll, deaf::begin);
    if (scroll.getContent() instanceof Region content) {
      double above = stacked() ? 7 : 0;
      content.setPadding(new Insets(above, 7, above, 7)); // the mark of the focus lies around
    }
    return scroll;
  }

  private static <T extends Node> T grow(T part) {
    VBox.setVgrow(part, Priority.ALWAYS);
    return part;
  }

  private boolean letter(String letter) {
    Parts on = parts;
    if (on == null || events || !on.safety().key(letter)) {
      return false;
    }
    if (needed().isEmpty()) {
      next();
    }
    return true;
  }

  private boolean step(int step) {
    Parts on = parts;
    if (on == null || events) {
      return false;
    }
    on.steps().toggle(step);
    return true;
  }

  /** What is needed next: a value, a reason, a tick, an answer. */
  private Optional<Node> needed() {
    Parts on = parts;
    SwapSheet now = model.work().sheetProperty().get();
    if (on == null || now == null || !now.begun() || events) {
      return Optional.empty();
    }
    Optional<Node> value = note == null ? on.settings().open() : Optional.empty();
    return value
        .or(on.safety()::open)
        .or(
            () ->
                Optional.ofNullable(on.overrun())
                    .map(SwapOverrunView::question)
                    .filter(SwapChoiceView::open)
                    .map(SwapChoiceView::first));
  }

  private void next() {
    needed()
        .or(this::rest)
        .ifPresent(
            node -> {
              if (node.getScene() == null) {
                applyCss(); // what scrolls is in the scene only once it has been laid out
                layout();
              }
              node.requestFocus();
            });
  }

  /** Words, which no key presses. */
  private Optional<Node> rest() {
    return Optional.ofNullable(parts).map(Parts::head).map(SwapHeadView::rest);
  }

  /** The focus starts where something is needed, never on a button. */
  void focus() {
    if (getScene() != null) {
      next();
    }
  }
}
