package blindlap.screen.part;

import java.util.ArrayList;
import java.util.List;
import javafx.beans.InvalidationListener;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;
import javafx.scene.text.Font;
import javafx.scene.text.Text;
import javafx.scene.text.TextFlow;

/**
 * A page's question and its answer, the largest thing on the page. The words that carry the answer
 * have the highlighter stroke and stay on one line as long as the page is wide enough. Two lines
 * are always reserved, so that nothing below moves while the answer changes.
 */
public final class AnswerSentence extends VBox {
  // 47 px type at a line distance of 1.14.
  private static final double LINE = 47 * 1.2;
  // As .answer in the style sheet.
  private static final String FAMILY = "Source Serif 4 SemiBold";
  private static final double EM = 2.76;
  // As .answer, .answer.low, .answer.lower and .answer.lowest there.
  private static final List<Double> SIZES = List.of(EM, 2.2, 1.65, 1.3);
  private static final List<String> STYLES = List.of("", "low", "lower", "lowest");

  private final Look look;

  @SuppressWarnings({"unused", "FieldCanBeLocal"}) // held so that the look can reach this sentence
  private final InvalidationListener watch;

  private final ReadOnlyDoubleWrapper reserved = new ReadOnlyDoubleWrapper();
  private final TextFlow answer =
      new TextFlow() {
        /** What is reserved, and never less than the words need: nothing is set upon them. */
        @Override
        protected double computeMinHeight(double width) {
          return Math.max(reserved.get(), super.computeMinHeight(width));
        }

        @Override
        protected double computePrefHeight(double width) {
          return Math.max(reserved.get(), super.computePrefHeight(width));
        }
      };
  private final Label asked = new Label();
  private String marked = "";
  private String before = "";
  private String after = "";
  private boolean broken;
  private final int lines;
  private double em = EM;

  /** An answer to the question, still empty. */
  public AnswerSentence(Look look, String question) {
    this(look, question, 2);
  }

  /**
   * The same for a page whose answer does not change under someone's fingers.
   *
   * @param lines reserved
   */
  public AnswerSentence(Look look, String question, int lines) {
    super(4);
    this.look = look;
    watch = look.watch(this::fit);
    asked.setText(question);
    asked.getStyleClass().add("question");
    asked.setWrapText(true);
    answer.getStyleClass().add("answer");
    answer.setAccessibleRole(AccessibleRole.TEXT);
    this.lines = lines;
    low(false);
    reserved.addListener((property, old, now) -> answer.requestLayout());
    answer.widthProperty().addListener((property, old, now) -> fit());
    getChildren().setAll(asked, answer);
  }

  /** In smaller type where the window is low, so that what stands below is seen too. */
  public void low(boolean now) {
    shrink(now ? 1 : 0);
  }

  /**
   * In smaller type, by so many steps.
   *
   * @param steps 0 for the usual size, 2 for a low window with large text, 3 for one that is narrow
   *     as well: the question is left out there, its page's name says what is answered
   */
  public void shrink(int steps) {
    em = SIZES.get(steps);
    answer.getStyleClass().removeAll(STYLES);
    if (steps > 0) {
      answer.getStyleClass().add(STYLES.get(steps));
    }
    asked.setVisible(steps < STYLES.size() - 1);
    asked.setManaged(asked.isVisible());
    reserved.bind(look.px(lines * LINE * em / EM));
    fit();
  }

  /** Says the sentence "before marked after"; any of the three may be empty. */
  public void say(String before, String marked, String after) {
    boolean same = (before + marked + after).equals(answer.getAccessibleText());
    if (same && marked.equals(this.marked) && before.equals(this.before)) {
      return;
    }
    this.before = before;
    this.marked = marked;
    this.after = after;
    answer.setAccessibleText(before + marked + after);
    build();
    fit();
  }

  private void build() {
    List<Node> parts = new ArrayList<>();
    add(parts, before);
    if (!marked.isEmpty()) {
      for (String piece : broken ? marked.split(" ", -1) : new String[] {marked}) {
        if (!parts.isEmpty() && parts.get(parts.size() - 1) instanceof Label) {
          add(parts, " ");
        }
        Label stroke = new Label(piece);
        stroke.getStyleClass().add("highlit");
        stroke.setMinWidth(USE_PREF_SIZE);
        parts.add(stroke);
      }
    }
    add(parts, after);
    answer.getChildren().setAll(parts);
  }

  private static void add(List<Node> parts, String words) {
    if (!words.isEmpty()) {
      Text text = new Text(words);
      text.getStyleClass().add("words");
      parts.add(text);
    }
  }

  // Breaks the stroke into words only where it would not fit on a line of its own, with the comma
  // or full stop that may begin no line. Measured with the font itself, because the style sheet may
  // not have been applied yet.
  private void fit() {
    double size = Look.ROOT * look.textScale() * em;
    Text measured = new Text(marked + after.split(" ", 2)[0]);
    measured.setFont(new Font(FAMILY, size));
    double width = answer.getWidth();
    boolean now = width > 0 && measured.getLayoutBounds().getWidth() > width;
    if (now != broken) {
      broken = now;
      build();
    }
  }
}
