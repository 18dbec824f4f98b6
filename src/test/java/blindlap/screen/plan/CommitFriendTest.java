package blindlap.screen.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.desk.TestDay;
import blindlap.screen.Models;
import blindlap.screen.NoDialogs;
import blindlap.screen.SceneText;
import blindlap.screen.Window;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Shell;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import javafx.scene.Scene;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Where a friend prepares the parts, the pages of the commit speak to the friend. */
class CommitFriendTest {
  @TempDir Path folder;

  @BeforeAll
  static void start() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  @Test
  void everyPageOfTheCommitSpeaksToTheFriendWhoPrepares() throws Exception {
    Path plan = folder.resolve("plan.yaml");
    String level = "level: prepared, prepared_by: M. Oster, units: 8";
    Files.writeString(plan, TestDay.at(level).replace("helper: M. Oster, ", ""));
    List<String> pages = new ArrayList<>();
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 1)) {
      Window.run(() -> pages.addAll(commit(day.desk(), plan)));
    }
    assertThat(pages).hasSize(6);
    for (String page : pages) {
      assertThat(page.replace("--helper", ""))
          .doesNotContainIgnoringCase("helper")
          .contains("Friend");
    }
    assertThat(pages.get(0)).contains("to the friend", "Friend: choose");
    assertThat(pages.get(1)).contains("Sign, and show the friend's phrase");
    assertThat(pages.get(2)).contains("Friend's phrase: write it down");
    assertThat(pages.get(4)).contains("Go on to the packing sheet");
    assertThat(pages.get(5)).contains("The packing sheet");
  }

  private static List<String> commit(Desk desk, Path plan) {
    Look look = new Look();
    Shell shell = new Shell();
    PlanModel model = Models.plan(desk, shell, Background.immediate(), 0);
    model.startFromFile(plan);
    shell.go(Shell.Page.PLAN);
    CommitModel commit = model.commit();
    PlanPage pane = new PlanPage(look, model, new NoDialogs());
    Scene scene = new Scene(pane, 1280, 1600);
    look.dress(scene);
    List<String> pages = new ArrayList<>();
    Runnable seen =
        () -> {
          scene.getRoot().applyCss();
          scene.getRoot().layout();
          // What stands in quotes is said; the rest are names of nodes.
          pages.add(
              Pattern.compile("'(.*)'")
                  .matcher(SceneText.of(scene))
                  .results()
                  .map(said -> said.group(1))
                  .collect(Collectors.joining("\n")));
        };
    assertThat(model.completeProperty().get()).as(model.problems().toString()).isTrue();
    commit.begin();
    seen.run();
    commit.handedOver("4711");
    seen.run();
    commit.signedProperty().set("R. Lind");
    commit.sign();
    seen.run();
    String phrase = commit.phrase().shownProperty().get();
    commit.phraseNoted();
    seen.run();
    String question = commit.phrase().questionProperty().get();
    commit.phrase().typedProperty().set(HelperTypes.words(question, phrase));
    commit.seal();
    seen.run();
    commit.goOn();
    seen.run();
    return pages;
  }
}
