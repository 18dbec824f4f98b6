package blindlap.screen.review;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.SampleDays;
import blindlap.screen.Models;
import blindlap.screen.NoDialogs;
import blindlap.screen.Window;
import blindlap.screen.Within;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Theme;
import java.util.Locale;
import java.util.stream.Collectors;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Labeled;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Who should look at what, on the Review page: two setups, several, levels; themes and sizes. */
class ProfilesReviewTest {
  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  private static String words(Node part) {
    return part.lookupAll(".label").stream()
        .map(label -> ((Labeled) label).getText())
        .collect(Collectors.joining("\n"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"shocks-on-quarry-loop", "tyres-on-fern-trail", "rebound-on-heron-line"})
  void everyProfileHasARowAndNothingIsCutInAnyThemeOrSize(String sample) {
    SampleDays.ride(
        sample,
        (desk, state) -> {
          String first = state.plan().measures().get(0).name();
          String last = state.plan().measures().get(state.plan().measures().size() - 1).name();
          desk.profiles().keep("Fast and steep: " + first + "; " + last);
          desk.profiles().keep("Long days: climbing time, mass, price");
          Window.run(
              () -> {
                Look look = new Look();
                ReviewModel model = Models.review(desk, Background.immediate());
                model.open(state.id());
                for (Theme theme : Theme.values()) {
                  for (double scale : new double[] {1, 2}) {
                    look.themeProperty().set(theme);
                    look.textScaleProperty().set(scale);
                    Scene scene =
                        new Scene(new ReviewPage(look, model, new NoDialogs()), 1100, scale * 3600);
                    look.dress(scene);
                    scene.getRoot().applyCss();
                    scene.getRoot().layout();
                    Window.picture(
                        scene,
                        "review-profiles-"
                            + sample
                            + "-"
                            + theme.name().toLowerCase(Locale.ROOT)
                            + "-"
                            + (int) (100 * scale));
                    Node part = scene.getRoot().lookup("#profiles-found");
                    assertThat(part).isNotNull();
                    assertThat(Within.of((Parent) scene.getRoot(), sample).wrong()).isEmpty();
                    assertThat(words(part))
                        .contains("Who should look at what")
                        .contains("Fast and steep")
                        .contains("made after this day was opened")
                        .contains("climbing time: not measured on this day.")
                        .contains("No weights, no sum, no ranking, and no verdict of a profile.");
                  }
                }
              });
        });
  }
}
