package blindlap.screen.cover;

import blindlap.screen.part.Look;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.DoubleBinding;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.css.PseudoClass;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/**
 * The root of a page that holds the key: a dark frame on all four sides and a band on top, in every
 * theme, so that a passing rider knows to look away. Blank, it shows nothing but the frame and what
 * opens it again.
 */
public final class HelperFrameView extends VBox {
  /**
   * The words of the band.
   *
   * @param who such as "Helper"
   * @param away such as "Rider: look away"
   * @param hide the big button that blanks the page
   */
  public record Words(String who, String away, String hide) {}

  /**
   * How much room the frame takes, at 100 %.
   *
   * @param side at left and right
   * @param below the page
   * @param band on top
   * @param low band where the window is low
   */
  public record Edges(double side, double below, double band, double low) {
    /** The usual frame. */
    public static final Edges USUAL = new Edges(28, 28, 92, 92);

    /** Where a whole page of work has to fit a small window. */
    public static final Edges NARROW = new Edges(22, 18, 76, 64);
  }

  private static final PseudoClass SLIM = PseudoClass.getPseudoClass("slim");

  /** With large text the big button is as high as the band, and margins leave room for the page. */
  private static final PseudoClass LARGE = PseudoClass.getPseudoClass("large");

  /** At 100 %: in a narrower window two labels of the band stand one below the other. */
  private static final double NARROW = 560;

  /** At 100 %: a narrower window has no room for more beside the big button. */
  private static final double WIDE = 1180;

  /** A window lower than this is low. */
  private static final double LOW = 720;

  private final Label idle = new Label();
  private final BooleanProperty blank = new SimpleBooleanProperty(true);
  private @Nullable Region aside;
  private Runnable arranged = () -> {};
  private final Look look;
  private final DoubleBinding high;

  /**
   * A frame, blank at first.
   *
   * @param page what only the helper may see
   * @param reopen what is shown while blank
   * @param onHide asked to blank the page; the caller sets {@link #blankProperty}
   */
  public HelperFrameView(Look look, Words words, Node page, Node reopen, Runnable onHide) {
    this(look, words, Edges.USUAL, page, reopen, onHide);
  }

  /** The same with another frame. */
  public HelperFrameView(
      Look look, Words words, Edges edges, Node page, Node reopen, Runnable onHide) {
    this.look = look;
    this.high = look.touch(Math.min(64, edges.low() - 8));
    getStyleClass().add("helper");
    HBox band = band(look, words, edges, onHide);
    StackPane paper = new StackPane(reopen);
    paper.getStyleClass().add("helper-page");
    VBox.setVgrow(paper, Priority.ALWAYS);
    Runnable margins = () -> paper.pseudoClassStateChanged(LARGE, look.stacked());
    margins.run();
    look.textScaleProperty().addListener((property, old, now) -> margins.run());
    // Only what is shown is in the scene: a hidden node would still be read out.
    blank.addListener((property, old, now) -> paper.getChildren().setAll(now ? reopen : page));
    VBox frame = new VBox(paper);
    frame.setPadding(new Insets(0, edges.side(), edges.below(), edges.side()));
    VBox.setVgrow(frame, Priority.ALWAYS);
    getChildren().setAll(band, frame);
  }

  private HBox band(Look look, Words words, Edges edges, Runnable onHide) {
    Button hide = new Button(words.hide());
    hide.minHeightProperty().bind(high);
    hide.setMinWidth(USE_PREF_SIZE);
    hide.setOnAction(event -> onHide.run());
    HBox band = new HBox();
    band.getStyleClass().add("helper-band");
    Runnable arrange = arrangement(look, words, hide, band);
    arranged = arrange;
    arrange.run();
    widthProperty().addListener((property, old, now) -> arrange.run());
    look.textScaleProperty().addListener((property, old, now) -> arrange.run());
    band.minHeightProperty()
        .bind(
            Bindings.createDoubleBinding(
                () ->
                    Math.max(
                        hide.getMinHeight(),
                        Math.min(1.3, look.textScale())
                            * (getHeight() > 0 && getHeight() < LOW ? edges.low() : edges.band())),
                look.textScaleProperty(),
                hide.minHeightProperty(),
                heightProperty()));
    return band;
  }

  /** Puts the band's parts side by side, or where there is no room two of them in one column. */
  private Runnable arrangement(Look look, Words words, Button hide, HBox band) {
    Label who = new Label(words.who());
    who.getStyleClass().add("who");
    Label away = new Label(words.away());
    away.getStyleClass().add("away");
    for (Label label : new Label[] {who, away, idle}) {
      label.setMinWidth(USE_PREF_SIZE);
    }
    Region between = new Region();
    HBox.setHgrow(between, Priority.ALWAYS);
    VBox both = new VBox();
    both.setAlignment(Pos.CENTER_LEFT);
    return () -> {
      boolean narrow = getWidth() > 0 && getWidth() < NARROW * look.textScale();
      band.pseudoClassStateChanged(SLIM, narrow);
      band.pseudoClassStateChanged(LARGE, look.stacked());
      both.getChildren().clear();
      if (narrow) {
        both.getChildren().setAll(away, idle);
        band.getChildren().setAll(who, both, between, hide);
      } else {
        band.getChildren().setAll(who, away, between, idle, hide);
      }
      Region more = aside;
      if (more != null && roomAside()) {
        band.getChildren().add(band.getChildren().indexOf(hide), more);
      }
    };
  }

  /** Stands beside the big button, quieter than that, as long as there is room. */
  public void aside(Region more) {
    more.getStyleClass().add("aside");
    more.minHeightProperty().bind(high);
    aside = more;
    arranged.run();
  }

  /** True where the band has room for more; with large text or in a narrow window it has none. */
  public boolean roomAside() {
    return !look.stacked() && (getWidth() == 0 || getWidth() >= WIDE * look.textScale());
  }

  /** Whether the page is blank. */
  public BooleanProperty blankProperty() {
    return blank;
  }

  /** Says when the page will blank itself, such as "closes itself in 1:52". */
  public void idle(String words) {
    idle.setText(words);
  }
}
