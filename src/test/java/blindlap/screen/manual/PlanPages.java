package blindlap.screen.manual;

import blindlap.phone.FakeMaker;
import blindlap.screen.ManualWindow;
import blindlap.screen.plan.HelperTypes;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/** The Plan page from a draft to the sealed session, by what is pressed and typed there. */
final class PlanPages {
  private static final String DIGITS = "4711";

  private PlanPages() {}

  static void take(Path folder, Album album) {
    try (ForkDay day = new ForkDay(folder, "plan");
        ManualWindow window =
            ManualWindow.open(day.desk(), day.notebook(), day.clock(), new FakeMaker(), Map.of())) {
      window.draft(day.draft());
      for (ManualPicture part :
          List.of(
              ManualPicture.PLAN_TOP,
              ManualPicture.PLAN_ANSWER,
              ManualPicture.PLAN_CURVE,
              ManualPicture.PLAN_ODDS,
              ManualPicture.PLAN_SETUPS,
              ManualPicture.PLAN_DIFFERS,
              ManualPicture.PLAN_MEASURES,
              ManualPicture.PLAN_DAY,
              ManualPicture.PLAN_LEVEL,
              ManualPicture.PLAN_END)) {
        album.take(window, part);
      }
      commit(window, album);
    }
  }

  private static void commit(ManualWindow window, Album album) {
    window.press("#commit-begin");
    album.take(window, ManualPicture.COMMIT_HAND_OVER);
    window.type("#secret", DIGITS);
    window.press("#secret-open");
    window.type("#signed", "K. Vogt\nM. Oster");
    album.take(window, ManualPicture.COMMIT_SIGN);
    window.press("#sign");
    album.take(window, ManualPicture.COMMIT_PHRASE);
    String phrase = window.said("#phrase");
    window.press("#phrase-noted");
    window.type("#typed-words", HelperTypes.words(window.said("#typed-words"), phrase));
    album.take(window, ManualPicture.COMMIT_WORDS);
    window.press("#seal");
    album.take(window, ManualPicture.COMMIT_SEALED);
    window.press("Hide now");
    album.take(window, ManualPicture.COMMIT_BLANK);
    window.type("#secret", DIGITS);
    window.press("#secret-open");
    window.press("#go-on");
    album.take(window, ManualPicture.COMMIT_SHEET);
  }
}
