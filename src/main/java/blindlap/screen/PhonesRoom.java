package blindlap.screen;

import blindlap.screen.part.DayEventsModel;
import blindlap.screen.part.Look;
import blindlap.screen.part.PhonesDoor;
import blindlap.screen.part.Shell;
import blindlap.screen.phones.PhonesModel;
import blindlap.screen.phones.PhonesPage;
import blindlap.wording.day.PhonesWords;
import java.util.Optional;
import java.util.function.LongSupplier;
import javafx.animation.Animation;
import javafx.animation.KeyFrame;
import javafx.animation.Timeline;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.StringBinding;
import javafx.scene.Node;
import javafx.scene.layout.StackPane;
import javafx.util.Duration;

/**
 * The Phones page stands beside the Ride page, under its name. Whoever comes from Swap leaves it,
 * and so leaves it closed; the way back leads to where one came from.
 */
final class PhonesRoom {
  private final Shell shell;
  private final PhonesModel model;
  private final PhonesPage page;
  private final StringBinding state;
  private Shell.Page from = Shell.Page.RIDE;
  private StackPane place = new StackPane();
  private Optional<Node> ridden = Optional.empty();
  private boolean entered;

  /** Once a second, whichever page is in view: who came, and whether the day is over. */
  private final Timeline beats;

  PhonesRoom(Look look, Shell shell, PhonesModel model, LongSupplier monotonic) {
    this.shell = shell;
    this.model = model;
    this.page = new PhonesPage(look, model, this::back, monotonic);
    this.state =
        Bindings.createStringBinding(
            () -> PhonesWords.say("door", model.stateProperty().get()), model.stateProperty());
    shell.whenShown(Shell.Page.RIDE, model::open);
    shell.whenShown(Shell.Page.SWAP, model::open);
    shell
        .pageProperty()
        .addListener(
            (o, before, now) -> {
              if (before == Shell.Page.RIDE) {
                leave();
              }
            });
    shell.beforeClosing(this::alone);
    beats = new Timeline(new KeyFrame(Duration.seconds(1), e -> beat()));
    beats.setCycleCount(Animation.INDEFINITE);
    beats.play();
  }

  private void beat() {
    Shell.Page now = shell.pageProperty().get();
    if (now == Shell.Page.RIDE || now == Shell.Page.SWAP) {
      model.tick();
    } else {
      model.tickUnseen();
    }
  }

  /**
   * The Ride page, beside which the Phones page stands.
   *
   * @param where holds one of the two
   * @param events of the Ride page, where the day can be closed
   */
  void beside(StackPane where, Node ride, DayEventsModel events) {
    place = where;
    ridden = Optional.of(ride);
    waitedForBy(events);
  }

  /** Whoever closes the day is told first what is waited for. */
  void waitedForBy(DayEventsModel events) {
    events.awaits(model::awaited);
  }

  /** The way here from a page of the day. */
  PhonesDoor door(Shell.Page page) {
    return new PhonesDoor(state, () -> open(page));
  }

  private void open(Shell.Page cameFrom) {
    shell.go(Shell.Page.RIDE);
    if (shell.pageProperty().get() == Shell.Page.RIDE) {
      from = cameFrom;
      entered = true;
      place.getChildren().setAll(page);
      page.enter();
    }
  }

  private void back() {
    leave();
    if (from != Shell.Page.RIDE) {
      shell.go(from);
    }
  }

  private void leave() {
    if (entered) {
      entered = false;
      ridden.ifPresent(ride -> place.getChildren().setAll(ride));
    }
  }

  /** A closing window says once that phones are left alone. */
  private Optional<Shell.Question> alone() {
    long connected = model.connected();
    return connected == 0
        ? Optional.empty()
        : Shell.Question.of(
            PhonesWords.say("closing", connected), PhonesWords.say("closing.leave"));
  }

  /** The window closes: phones are off. */
  void close() {
    beats.stop();
    model.close();
  }
}
