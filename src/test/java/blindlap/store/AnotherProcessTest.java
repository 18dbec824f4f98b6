package blindlap.store;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.screen.Models;
import blindlap.screen.NoDialogs;
import blindlap.screen.Window;
import blindlap.screen.book.NotebookModel;
import blindlap.screen.book.NotebookPage;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Shell;
import blindlap.screen.plan.PlanDesk;
import blindlap.session.day.Step;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import javafx.scene.Scene;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a process of its own writes to a notebook whose list a window shows. */
class AnotherProcessTest {
  @TempDir private Path folder;

  private Path file() {
    return folder.resolve("quarry.blindlap");
  }

  private void write(String what, int from, int before) throws Exception {
    Process child =
        new ProcessBuilder(
                Kills.command(SessionsChild.class, file().toString(), what, "" + from, "" + before))
            .redirectErrorStream(true)
            .start();
    String said = new String(child.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(child.waitFor()).as(said).isZero();
  }

  @Test
  void the_model_sees_a_new_session_at_its_next_look_and_not_before() throws Exception {
    ManySessions.add(file(), 0, 3);
    try (Desk desk = PlanDesk.open(folder, 1)) {
      NotebookModel model = Models.notebook(desk, new Shell(), Background.immediate());
      model.refresh();
      int before = shown(model);
      write("add", 3, 5);
      assertThat(shown(model)).isEqualTo(before);
      model.look();
      assertThat(shown(model)).isEqualTo(before + 2);
    }
  }

  @Test
  void a_look_at_a_notebook_to_which_nobody_wrote_reads_no_list() throws Exception {
    ManySessions.add(file(), 0, 3);
    try (Desk desk = PlanDesk.open(folder, 1)) {
      NotebookModel model = Models.notebook(desk, new Shell(), Background.immediate());
      model.refresh();
      List<NotebookModel.Row> before = List.copyOf(model.rows());
      // The rows alone are emptied: whoever reads the list again fills them.
      model.rows().clear();
      model.look();
      assertThat(model.rows()).isEmpty();
      model.refresh();
      assertThat(model.rows()).isEqualTo(before);
    }
  }

  @Test
  void the_page_in_a_window_follows_by_itself() throws Exception {
    ManySessions.add(file(), 0, 3);
    Window.start();
    AtomicReference<Scene> scene = new AtomicReference<>();
    ExecutorService worker = Executors.newSingleThreadExecutor();
    try (Desk desk = PlanDesk.open(folder, 1)) {
      NotebookModel model =
          Window.call(
              () -> {
                Fonts.load();
                NotebookModel made = Models.notebook(desk, new Shell(), Background.on(worker));
                NotebookPage page =
                    new NotebookPage(
                        new Look(), made, PlanDesk.keeping(desk, file()), new NoDialogs());
                scene.set(new Scene(page, 1200, 768));
                made.refresh();
                return made;
              });
      until("the list is read", () -> shown(model) == 3);
      write("add", 3, 5);
      until("new sessions are seen", () -> shown(model) == 5);
      write("abandon", 1, 2);
      until(
          "an abandoned one is seen",
          () ->
              model.rows().stream()
                  .anyMatch(
                      row ->
                          row.id().equals(ManySessions.session(1))
                              && row.step() == Step.ABANDONED
                              && row.detail().equals("fog on the hill")));
    } finally {
      Window.run(() -> scene.get().setRoot(new javafx.scene.layout.Pane()));
      worker.shutdown();
      assertThat(worker.awaitTermination(20, TimeUnit.SECONDS)).isTrue();
    }
  }

  /** Sessions in sight: the one in hand stands above the list. */
  private static int shown(NotebookModel model) {
    return model.rows().size() + (model.answerProperty().get().stints() > 0 ? 1 : 0);
  }

  private static void until(String what, Callable<Boolean> there) throws InterruptedException {
    for (int tenths = 0; tenths < 200; tenths++) {
      if (Window.call(there)) {
        return;
      }
      Thread.sleep(100);
    }
    assertThat(false).as(what).isTrue();
  }
}
