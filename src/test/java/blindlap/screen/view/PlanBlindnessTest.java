package blindlap.screen.view;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.desk.Keys;
import blindlap.screen.model.Background;
import blindlap.screen.model.CommitModel;
import blindlap.screen.model.Dialogs;
import blindlap.screen.model.PlanModel;
import blindlap.screen.model.Shell;
import blindlap.session.SessionState;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Labeled;
import javafx.scene.control.TextInputControl;
import javafx.scene.text.Text;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whoever commits a plan learns nothing of the order from the page, the log or the draft. */
class PlanBlindnessTest {
  private static final Path SAMPLE = Path.of("sample-sessions/shocks-on-quarry-loop/plan.yaml");

  @TempDir Path folder;

  @BeforeAll
  static void startWindowSystem() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  /** What could be seen of one commit, and the order that was drawn in it. */
  private record Seen(List<String> pages, List<String> log, Map<String, ?> drafts, String order) {}

  @Test
  void nothingOnThePageInTheLogOrInTheDraftDiffersByTheOrder() throws IOException {
    List<Seen> all = new ArrayList<>();
    for (long seed = 1; seed <= 3; seed++) {
      Path own = Files.createDirectories(folder.resolve("run" + seed));
      Files.copy(SAMPLE, own.resolve("plan.yaml"));
      long orderSeed = seed;
      all.add(Window.call(() -> commit(own, orderSeed)));
    }

    assertThat(all).extracting(Seen::order).doesNotHaveDuplicates();
    for (Seen other : all.subList(1, 3)) {
      assertThat(other.pages()).isEqualTo(all.get(0).pages());
      assertThat(other.log()).isEqualTo(all.get(0).log());
      assertThat(other.drafts()).isEqualTo(all.get(0).drafts());
    }
  }

  private static Seen commit(Path own, long seed) {
    List<String> log = new ArrayList<>();
    Handler listener = listener(log);
    Logger root = Logger.getLogger("");
    root.addHandler(listener);
    try (Desk desk = PlanDesk.open(own, seed)) {
      Look look = new Look();
      PlanModel model = new PlanModel(desk, new Shell(), Background.immediate());
      model.answer().simulate(0);
      Scene scene = new Scene(new PlanPage(look, model, new Nobody()), 1280, 3000);
      look.dress(scene);
      model.startFromFile(own.resolve("plan.yaml"));
      List<String> pages = new ArrayList<>();
      CommitModel commit = model.commit();
      see(scene, commit, pages);
      commit.begin();
      see(scene, commit, pages);
      commit.handedOver("4711");
      commit.signedProperty().set("R. Lind");
      see(scene, commit, pages);
      commit.seal();
      see(scene, commit, pages);
      String phrase = commit.phraseProperty().get();
      commit.typedPhraseProperty().set(phrase);
      commit.phraseNoted();
      see(scene, commit, pages);
      commit.finish();
      see(scene, commit, pages);
      SessionState state = desk.sessions().all().get(0);
      Keys.Result.Open open = (Keys.Result.Open) desk.keys().helper(state, phrase);
      String order =
          open.schedule().fits().stream().map(f -> String.valueOf(f.named())).toList().toString();
      return new Seen(pages, log, desk.planning().drafts(), order);
    } finally {
      root.removeHandler(listener);
    }
  }

  private static Handler listener(List<String> log) {
    Handler handler =
        new Handler() {
          @Override
          public void publish(LogRecord record) {
            log.add(record.getLoggerName() + " " + record.getMessage());
          }

          @Override
          public void flush() {}

          @Override
          public void close() {}
        };
    handler.setLevel(Level.ALL);
    return handler;
  }

  /**
   * Everything of the scene graph that can be read, heard or measured; the fingerprint left out.
   */
  private static void see(Scene scene, CommitModel commit, List<String> pages) {
    scene.getRoot().applyCss();
    scene.getRoot().layout();
    StringBuilder out = new StringBuilder();
    String fingerprint = commit.sealingProperty().get().map(s -> s.fingerprint()).orElse("-");
    dump(scene.getRoot(), out);
    pages.add(out.toString().replace(fingerprint, "F".repeat(fingerprint.length())));
  }

  private static void dump(Node node, StringBuilder out) {
    Bounds bounds = node.getBoundsInParent();
    out.append(node.getClass().getSimpleName())
        .append(' ')
        .append(node.getId())
        .append(' ')
        .append(node.getStyleClass())
        .append(' ')
        .append(node.getAccessibleText())
        .append(' ')
        .append(node.getAccessibleHelp())
        .append(' ')
        .append(node.isVisible())
        .append(' ')
        .append(node.isFocusTraversable());
    // The letters of a fingerprint have widths of their own; all else must lie at the same place.
    if (!(node instanceof Text text && text.getText().contains("-"))) {
      out.append(' ').append(Math.round(bounds.getMinX())).append(',');
      out.append(Math.round(bounds.getMinY()));
    }
    if (node instanceof Labeled labeled) {
      out.append(' ').append(labeled.getText());
    } else if (node instanceof TextInputControl input) {
      out.append(' ').append(input.getText());
    } else if (node instanceof Text text) {
      out.append(' ').append(text.getText());
    }
    out.append('\n');
    if (node instanceof Parent parent) {
      parent.getChildrenUnmodifiable().forEach(child -> dump(child, out));
    }
  }

  /** Nobody chooses anything. */
  private static final class Nobody implements Dialogs {
    @Override
    public Optional<Path> openFile(String title) {
      return Optional.empty();
    }

    @Override
    public Optional<Path> saveFile(String title, String name) {
      return Optional.empty();
    }

    @Override
    public Optional<Path> folder(String title) {
      return Optional.empty();
    }
  }
}
