package blindlap.screen.part;

import blindlap.wording.day.SettingRow;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.binding.DoubleBinding;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.Pane;

/**
 * Fields for what is measured of settings, and for why one is ridden outside its tolerance; where
 * they stand is their page's.
 */
public final class SettingFields {
  private static final Words WORDS = Words.of("swap");

  /** Who is told what is typed. */
  public interface Taker {
    /** A value is being typed. */
    void typing(String setting, String typed);

    /** A value was typed: its field was left. */
    void measured(String setting, String typed);

    /** Why it is ridden outside its tolerance, as far as it is typed. */
    void accept(String setting, String reason);
  }

  /**
   * The fields of one setting.
   *
   * @param measured what was measured
   * @param outside by how much it lies outside its tolerance; empty if it does not
   * @param why why it is ridden all the same
   */
  public record Line(String name, TextField measured, Label outside, TextField why) {
    private Optional<Node> open() {
      if (measured.getText().isBlank()) {
        return Optional.of(measured);
      }
      return !outside.getText().isEmpty() && why.getText().isBlank()
          ? Optional.of(why)
          : Optional.empty();
    }

    /** Shows a part only while the value lies outside its tolerance. */
    public <T extends Pane> T onlyOutside(T part) {
      part.visibleProperty().bind(outside.textProperty().isNotEmpty());
      part.managedProperty().bind(part.visibleProperty());
      return part;
    }
  }

  private final DoubleBinding high;
  private final Taker taker;
  private final Runnable next;
  private final List<Line> lines = new ArrayList<>();

  /**
   * @param high height of a field, at least
   * @param next goes on to what is needed next
   */
  public SettingFields(DoubleBinding high, Taker taker, Runnable next) {
    this.high = high;
    this.taker = taker;
    this.next = next;
  }

  /** The fields of one more setting. */
  public Line add(SettingRow row) {
    String name = row.name();
    TextField measured =
        field(
            name + ", " + WORDS.say("measured"),
            row.measured(),
            typed -> taker.typing(name, typed),
            typed -> taker.measured(name, typed));
    Label outside = Fields.words(row.outside(), "strong", "note");
    Consumer<String> accept = typed -> taker.accept(name, typed);
    TextField why = field(name + ", " + WORDS.say("reason"), row.reason(), accept, accept);
    why.setPromptText(WORDS.say("reason.field"));
    Line line = new Line(name, measured, outside, why);
    lines.add(line);
    return line;
  }

  private TextField field(
      String name, String text, Consumer<String> typing, Consumer<String> left) {
    TextField field = Fields.wide(new TextField(text));
    field.setAccessibleText(name);
    field.minHeightProperty().bind(high);
    field.textProperty().addListener((o, before, now) -> typing.accept(now));
    field.setOnAction(
        e -> {
          left.accept(field.getText());
          next.run();
        });
    field
        .focusedProperty()
        .addListener(
            (o, before, now) -> {
              if (!now && field.getScene() != null) {
                left.accept(field.getText());
              }
            });
    return field;
  }

  /** Shows which values lie outside; what is typed stays as it stands. */
  public void show(List<SettingRow> rows) {
    for (Line line : lines) {
      rows.stream()
          .filter(row -> row.name().equals(line.name()))
          .findFirst()
          .ifPresent(row -> line.outside().setText(row.outside()));
    }
  }

  /** The first field that is still to be filled; empty if none is. */
  public Optional<Node> open() {
    return lines.stream().map(Line::open).flatMap(Optional::stream).findFirst();
  }
}
