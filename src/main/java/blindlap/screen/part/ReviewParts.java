package blindlap.screen.part;

import blindlap.wording.day.Words;
import java.util.List;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** Small parts that both review pages are made of. */
public final class ReviewParts {
  public static final Words WORDS = Words.of("review");

  private ReviewParts() {}

  public static Label words(String text, String... classes) {
    Label label = new Label(text);
    label.setWrapText(true);
    label.setMinHeight(Region.USE_PREF_SIZE);
    label.getStyleClass().addAll(classes);
    return label;
  }

  public static Label h2(String key) {
    return words(WORDS.say(key), "h2");
  }

  /** Lines under one another; as high as they need. */
  public static VBox lines(List<String> texts) {
    VBox box = new VBox(6);
    texts.forEach(text -> box.getChildren().add(words(text)));
    return box;
  }

  /** A heading with lines under it. */
  public static VBox section(String key, List<String> texts) {
    return new VBox(10, h2(key), lines(texts));
  }

  /** A field with its words in it. */
  public static TextField field(String key) {
    TextField field = new TextField();
    field.setPromptText(WORDS.say(key));
    field.setAccessibleText(WORDS.say(key));
    field.setPrefColumnCount(16);
    return field;
  }
}
