package blindlap.screen.part;

import blindlap.wording.day.Words;
import java.util.List;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.DoubleBinding;
import javafx.beans.value.ObservableValue;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Control;
import javafx.scene.control.Label;
import javafx.scene.control.TextArea;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;
import org.jspecify.annotations.Nullable;

/** Fields of a page: a label, what is typed, and what is wrong with it, one below the other. */
public final class Fields {
  private static final Words WORDS = Words.of("plan");

  /** Between a field and the words above and below it: the frame of the focus lies within. */
  private static final double RING = 5;

  private Fields() {}

  /** A line to type in, about so many characters wide. */
  public static VBox text(TypedForm.Entry entry, String title, String help, int columns) {
    TextField field = new TextField();
    field.setPrefColumnCount(columns);
    field.setPromptText(help);
    field.textProperty().bindBidirectional(entry.textProperty());
    return labelled(title, field, entry);
  }

  /** Several lines to type in. Tab leaves the field. */
  public static VBox area(TypedForm.Entry entry, String title, String help) {
    TextArea area = new TextArea();
    area.setPrefRowCount(2);
    area.setWrapText(true);
    area.setPromptText(help);
    area.textProperty().bindBidirectional(entry.textProperty());
    leaveByTab(area);
    VBox box = labelled(title, area, entry);
    box.setMaxWidth(Double.MAX_VALUE);
    return box;
  }

  /** Lets Tab leave a text of several lines, as it leaves every other field. */
  public static void leaveByTab(TextArea area) {
    area.addEventFilter(KeyEvent.KEY_PRESSED, e -> leave(area, e));
  }

  private static void leave(TextArea area, KeyEvent event) {
    if (event.getCode() == KeyCode.TAB && !event.isControlDown() && event.getTarget() == area) {
      KeyEvent away =
          new KeyEvent(
              event.getSource(),
              event.getTarget(),
              event.getEventType(),
              "",
              "",
              KeyCode.TAB,
              event.isShiftDown(),
              true,
              false,
              false);
      event.consume();
      area.fireEvent(away);
    }
  }

  /** One of several words, with a label of its own. */
  public static VBox choice(TypedForm.Entry entry, String title, List<String> words, String usual) {
    ComboBox<String> box = new ComboBox<>();
    box.getItems().setAll(words);
    box.setConverter(new Shown(usual));
    box.valueProperty().bindBidirectional(entry.textProperty());
    return labelled(title, box, entry);
  }

  /** One of several words, where what is usual goes by something else. */
  public static VBox choice(
      TypedForm.Entry entry, String title, List<String> words, ObservableValue<String> usual) {
    VBox made = choice(entry, title, words, usual.getValue());
    @SuppressWarnings("unchecked")
    ComboBox<String> box = (ComboBox<String>) made.getChildren().get(1);
    usual.addListener((o, before, now) -> box.setConverter(new Shown(now)));
    // Held as long as the box is, so that it is still told.
    box.setUserData(usual);
    return made;
  }

  /** Plan files may say true and false, or nothing for what is usual; people read words. */
  private static final class Shown extends StringConverter<String> {
    private final String usual;

    Shown(String usual) {
      this.usual = usual;
    }

    @Override
    public String toString(@Nullable String typed) {
      if (typed == null || typed.isEmpty()) {
        return usual;
      }
      if ("true".equals(typed)) {
        return WORDS.say("option.yes");
      }
      return "false".equals(typed) ? WORDS.say("option.no") : typed;
    }

    @Override
    public String fromString(String shown) {
      return shown;
    }
  }

  private static VBox labelled(String title, Control control, TypedForm.Entry entry) {
    Label label = new Label(title);
    label.setLabelFor(control);
    label.setWrapText(true);
    label.setMinHeight(Region.USE_PREF_SIZE);
    label.getStyleClass().add("note");
    FieldMessage error = new FieldMessage(entry, title);
    error.maxWidthProperty().bind(control.widthProperty());
    control.accessibleTextProperty().set(title);
    control.getProperties().put(TypedForm.Entry.class, entry);
    control.accessibleHelpProperty().bind(entry.errorProperty());
    VBox box = new SteadyBox(RING, label, control, error);
    box.setFillWidth(true);
    return box;
  }

  /** Fields side by side, folding where there is no room. */
  public static FlowPane row(Node... fields) {
    return new FieldRow(fields);
  }

  /** Fields of one thing side by side, closer together. */
  public static FlowPane tight(Node... fields) {
    FlowPane row = row(fields);
    row.setHgap(6);
    return row;
  }

  /** One line on what a field is for, under what is typed; the box becomes as wide as it needs. */
  public static VBox helped(VBox field, String help) {
    if (help.isEmpty()) {
      return field;
    }
    Label line = words(help, "note", "second");
    field.getChildren().add(2, line);
    if (!(field.getChildren().get(1) instanceof TextArea)) {
      line.getStyleClass().add("field-help");
      // As wide as the column at least, and as wide as a long title makes the field.
      line.setMaxWidth(Double.MAX_VALUE);
    }
    if (field.getChildren().get(1) instanceof Control control
        && control.getProperties().get(TypedForm.Entry.class) instanceof TypedForm.Entry entry) {
      ObservableValue<String> error = entry.errorProperty();
      control.accessibleHelpProperty().unbind();
      control
          .accessibleHelpProperty()
          .bind(Bindings.createStringBinding(() -> help + " " + error.getValue(), error));
    }
    return field;
  }

  /** Running text. */
  public static Label words(String text, String... styles) {
    Label label = new Label(text);
    label.getStyleClass().addAll(styles);
    label.setWrapText(true);
    label.setMinHeight(Region.USE_PREF_SIZE);
    return label;
  }

  /** A section of a page. */
  public static VBox section(Node... parts) {
    VBox box = new SteadyBox(parts);
    box.getStyleClass().add("section");
    return box;
  }

  /** A button with its work. */
  public static Button button(String words, Runnable work) {
    Button button = new Button(words);
    button.setOnAction(e -> work.run());
    return button;
  }

  /**
   * A button that is so high at least, and high enough for its words in as many lines as it takes.
   */
  public static void holdsWords(Button button, DoubleBinding high) {
    button.setWrapText(true);
    button
        .minHeightProperty()
        .bind(
            Bindings.createDoubleBinding(
                () -> Math.max(high.get(), button.prefHeight(button.getWidth())),
                high,
                button.widthProperty(),
                button.textProperty(),
                button.fontProperty()));
  }

  /** A part as wide as its page lets it be. */
  public static <T extends Region> T wide(T part) {
    part.setMaxWidth(Double.MAX_VALUE);
    return part;
  }
}
