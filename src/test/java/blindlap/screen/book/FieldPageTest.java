package blindlap.screen.book;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.FieldSeason;
import blindlap.screen.Keyboard;
import blindlap.screen.SceneText;
import blindlap.screen.Window;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Theme;
import java.nio.file.Path;
import java.util.Locale;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The room of fields: what it shows, in every theme, with large text, by keys alone. */
class FieldPageTest {
  @TempDir Path folder;
  private FieldSeason season;

  @BeforeAll
  static void startWindowSystem() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  @BeforeEach
  void open() {
    season = new FieldSeason(folder);
  }

  @AfterEach
  void close() {
    season.close();
  }

  private FieldView view() {
    FieldModel model = new FieldModel(season.desk().field(), Background.immediate());
    model.refresh();
    return model.viewProperty().get();
  }

  private Book room() {
    return Window.call(
        () -> {
          Book made = new Book(season.desk(), folder, Theme.PAPER, 1, 1280, 800);
          made.rooms.go(Rooms.Room.FIELD);
          return made;
        });
  }

  private void photograph(String name) {
    Book book = room();
    for (Theme theme : Theme.values()) {
      book.take(
          new Book.Shot(theme, 1, 1366, 1600), name + "-" + theme.name().toLowerCase(Locale.ROOT));
    }
    book.take(new Book.Shot(Theme.PAPER, 1, 1366, 768), name + "-768");
    book.take(new Book.Shot(Theme.PAPER, 2, 1366, 4400), name + "-200");
    book.take(new Book.Shot(Theme.PAPER, 2, 900, 768), name + "-900-200");
  }

  @Test
  void theFieldIsPhotographedWithProfilesBelow() {
    season.desk().profiles().keep("Fast and steep: lap time, grip");
    season.whole();
    season.later();
    season.desk().profiles().keep("Long days: climbing time, mass");
    photograph("field");
    assertThat(view().profiles()).hasSize(2);
  }

  @Test
  void daysThatDoNotAgreeArePhotographed() {
    season.ride("KL", "2026-08-29");
    season.ride("KM", "2026-09-12");
    season.rideChanged("LM", "2026-09-26", "M", 4);
    photograph("field-withheld");
    FieldView view = view();
    assertThat(view.picture()).isEmpty();
    assertThat(view.rows()).isEmpty();
    assertThat(view.others()).isEmpty();
    assertThat(view.own()).hasSize(3).allMatch(line -> line.contains("by itself:"));
    assertThat(String.join(" ", view.cautions())).contains("The days do not agree");
  }

  @Test
  void anEmptyNotebookTeaches() {
    photograph("field-none");
    assertThat(view().headline().text()).isEqualTo("No day enters a field yet.");
    assertThat(view().lead()).hasSize(1);
  }

  private String odd(String plan) {
    return plan.replace("R. Lind", "Rosalind Lindenhofer-Achleitner of the Northern Quarries")
        .replace("Quarry loop", "Quarry loop from the upper hut down to the second bridge")
        .replace("name: Shock", "name: Rebuilt and revalved prototype damper Shock")
        .replace("lap time, kind", "time of a whole lap with the last gate left out, kind");
  }

  @Test
  void longNamesStayWholeInSmallWindowsAndLargeText() {
    season.unseal(season.close(odd(FieldSeason.plan("KL", "2026-08-29"))));
    season.unseal(season.close(odd(FieldSeason.plan("LM", "2026-09-12"))));
    season.unseal(season.close(odd(FieldSeason.plan("MP", "2026-09-26"))));
    assertThat(view().question()).contains("damper Shock", "Achleitner");
    Book book = room();
    book.take(new Book.Shot(Theme.PAPER, 1, 1366, 768), "field-long");
    book.take(new Book.Shot(Theme.DARK, 1, 1366, 2600), "field-long-whole");
    book.take(new Book.Shot(Theme.PAPER, 1, 900, 768), "field-long-900");
    book.take(new Book.Shot(Theme.SUNLIGHT, 2, 1366, 6000), "field-long-200");
  }

  @Test
  void ratiosNameTheSetupThatTookLonger() {
    for (String[] day :
        new String[][] {{"KL", "2026-08-29"}, {"LM", "2026-09-12"}, {"KM", "2026-09-26"}}) {
      season.unseal(
          season.close(
              FieldSeason.plan(day[0], day[1])
                  .replace("worthwhile: 0.5", "worthwhile: 0.5, scale: ratio")));
    }
    FieldView view = view();
    assertThat(view.picture()).isPresent();
    assertThat(view.rows().get(1).get(1)).matches("Shock K \\d\\.\\d % longer");
    assertThat(view.headline().text()).contains("took less time");
    room().take(new Book.Shot(Theme.PAPER, 1, 1366, 1800), "field-ratio");
  }

  @Test
  void countsAreSaidAsFewerAndMore() {
    for (String[] day : new String[][] {{"KL", "2026-08-29"}, {"KM", "2026-09-12"}}) {
      season.unseal(
          season.close(
              FieldSeason.plan(day[0], day[1])
                  .replace(
                      "{name: lap time, kind: lap time, unit: s,",
                      "{name: missed lines, kind: count, unit: a lap, better: lower,"),
              true));
    }
    FieldView view = view();
    assertThat(view.headline().text()).contains("had fewer missed lines");
    assertThat(view.rows().get(1).get(1)).matches("\\d\\.\\d+ fewer");
    room().take(new Book.Shot(Theme.PAPER, 1, 1366, 1800), "field-counts");
  }

  /** What is spoken of the picture: a sentence a row, and that one only follows before it. */
  @Test
  void thePictureIsSpokenInASentenceARowWithItsCautions() {
    season.whole();
    FieldView view = view();
    String spoken = view.picture().orElseThrow().spoken().table();
    assertThat(spoken)
        .contains("Shock K: the reference, ridden on 3 of 5 days.")
        .contains("Follows only, over Shock M: Shock P was")
        .contains("at one noise SD 4 in 10");
    assertThat(view.rows().get(0)).contains("EUR 420", "742 g");
    assertThat(view.rows())
        .extracting(row -> row.get(0))
        .containsExactly("Shock K", "Shock N", "Shock L", "Shock M", "Shock P");
    assertThat(view.cautions().get(0))
        .startsWith("All days together hold only if a setup's lead does not");
  }

  @Test
  void theReferenceIsChosenWithKeysAlone() {
    season.whole();
    Book book = Window.call(() -> new Book(season.desk(), folder, Theme.PAPER, 1, 1280, 800));
    Stage stage = Window.call(book::window);
    Keyboard keys = new Keyboard(book.scene);
    try {
      keys.choose("The field");
      ScrollPane page = Window.call(() -> (ScrollPane) book.scene.getRoot().lookup("PageGrid"));
      assertThat(keys.here()).contains("Back to the notebook");
      keys.press(KeyCode.PAGE_DOWN);
      double one = Window.call(page::getVvalue);
      assertThat(one).isBetween(0.1, 0.9);
      keys.press(KeyCode.PAGE_DOWN);
      assertThat(Window.call(page::getVvalue)).isGreaterThan(one);
      keys.press(KeyCode.PAGE_UP);
      keys.press(KeyCode.PAGE_UP);
      assertThat(Window.call(page::getVvalue)).isZero();
      assertThat(book.field.viewProperty().get().question()).contains("Shock K");
      keys.goTo("Against");
      keys.press(KeyCode.DOWN);
      assertThat(book.field.viewProperty().get().question()).contains("Shock L");
      assertThat(SceneText.of(book.scene))
          .contains("How do they stand to Shock L, for R. Lind on Quarry loop?");
      keys.choose("Write the report");
      assertThat(book.field.noticeProperty().get()).contains("field-R_Lind-Quarry_loop.pdf");
      assertThat(folder.resolve("field-R_Lind-Quarry_loop.html")).isNotEmptyFile();
      keys.press(KeyCode.ESCAPE);
      assertThat(book.rooms.roomProperty().get()).isEqualTo(Rooms.Room.NOTEBOOK);
    } finally {
      Window.run(stage::close);
    }
  }
}
