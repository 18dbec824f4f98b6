package blindlap.screen.manual;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.phone.FakeMaker;
import blindlap.screen.ManualWindow;
import blindlap.screen.part.Shell;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import javafx.scene.control.Label;
import javafx.scene.text.Text;

/** The day once it is ridden: blind review, finding, and the pages beside them. */
final class ReviewPages {
  private ReviewPages() {}

  static void take(Path folder, Album album) {
    try (ForkDay day = new ForkDay(folder, "review").profiles().commit().ride(16).record().over();
        ManualWindow window =
            ManualWindow.open(day.desk(), day.notebook(), day.clock(), new FakeMaker(), Map.of())) {
      window.go(Shell.Page.TRAIL);
      album.take(window, ManualPicture.TRAIL);
      window.go(Shell.Page.NOTEBOOK);
      window.press("Profiles");
      album.take(window, ManualPicture.PROFILES);
      window.open(Shell.Page.REVIEW, day.id());
      album.take(window, ManualPicture.BLIND_REVIEW);
      window.with(Label.class, "1:01.0", ReviewPages::inOneLine);
      window.press("Close the review");
      window.press("Close the review");
      album.take(window, ManualPicture.BLIND_REVIEW_CLOSED);
      window.type("Helper phrase", day.phrase());
      window.enter("Helper phrase");
      for (ManualPicture part :
          List.of(
              ManualPicture.REVIEW,
              ManualPicture.REVIEW_CURVE,
              ManualPicture.WHERE,
              ManualPicture.REVIEW_OTHERS,
              ManualPicture.REVIEW_PROFILES,
              ManualPicture.REVIEW_BLIND)) {
        album.take(window, part);
      }
      card(day, album);
    }
  }

  /** Seven measures, and none of their values broken: a time in three lines is no time. */
  private static void inOneLine(Label value) {
    assertThat(value.getHeight()).isLessThan(2 * value.getFont().getSize());
    assertThat(((Text) value.lookup(".text")).getText()).isEqualTo(value.getText());
  }

  /** The card as its key writes it: the picture of one file, the words of the drawing beside it. */
  private static void card(ForkDay day, Album album) {
    Cards.put(
        album, ManualPicture.CARD_WIDE, day.desk().reviews().card(day.state(), false), "1600x900");
  }
}
