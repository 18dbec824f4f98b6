package blindlap.screen.part;

import blindlap.wording.day.Words;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import javafx.geometry.Pos;
import javafx.scene.control.DatePicker;
import javafx.scene.control.TextField;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** A date: typed as 2026-11-14, or taken from a calendar. Nothing typed is changed or lost. */
public final class DateField {
  private static final int COLUMNS = 10;

  private DateField() {}

  /** A line to type a date in, with a calendar beside it. */
  public static VBox of(TypedForm.Entry entry, String title, String help) {
    VBox box = Fields.text(entry, title, help, COLUMNS);
    TextField typed = (TextField) box.getChildren().get(1);
    DatePicker calendar = new DatePicker();
    calendar.getStyleClass().add("calendar");
    calendar.setEditable(false);
    calendar.setShowWeekNumbers(false);
    calendar.setAccessibleText(Words.of("plan").say("calendar", title));
    // Only what is chosen there is written: what is typed stays as it is, date or not.
    calendar.setOnShowing(e -> calendar.setValue(date(entry.get())));
    calendar
        .valueProperty()
        .addListener(
            (o, before, now) -> {
              if (now != null && !now.equals(date(entry.get()))) {
                entry.set(now.toString());
                typed.requestFocus();
              }
            });
    HBox row = new HBox(4, typed, calendar);
    row.setAlignment(Pos.CENTER_LEFT);
    box.getChildren().add(1, row);
    return box;
  }

  private static @Nullable LocalDate date(String typed) {
    try {
      return LocalDate.parse(typed.strip());
    } catch (DateTimeParseException noDate) {
      return null;
    }
  }
}
