package blindlap.screen.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.desk.Keys;
import blindlap.plot.Qr;
import blindlap.screen.Models;
import blindlap.screen.NoDialogs;
import blindlap.screen.SceneText;
import blindlap.screen.ShellView;
import blindlap.screen.Window;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Shell;
import blindlap.session.SessionState;
import blindlap.session.StoredEntry;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import java.util.regex.Pattern;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.canvas.Canvas;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Whoever commits a plan learns nothing of the order from the pages, the log, the draft or the
 * notebook. Clock, codes, nonce, warm-up setup, salt, IV and phrase are the same in all runs; only
 * the seed of the order differs.
 */
class PlanBlindnessTest {
  private static final Path SAMPLE = Path.of("sample-sessions/shocks-on-quarry-loop/plan.yaml");
  private static final int ORDERS = 4;
  private static final int WIDTH = 1280;
  private static final int HEIGHT = 1100;

  /** Ciphertext, fingerprint and the hashes of the chain, which the order goes into. */
  private static final Pattern SECRET =
      Pattern.compile("[0-9a-f]{24,}|[A-Za-z0-9+/=]{40,}|\"[0-9a-f]{8,}\"");

  @TempDir Path folder;

  @BeforeAll
  static void startWindowSystem() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  /**
   * What could be seen of one commit, and the order that was drawn in it.
   *
   * @param pages scene graph of every step, the fingerprint masked
   * @param pictures hash of the pixels of every step, fingerprint and code masked
   * @param codeSize modules along a side of the code
   * @param kept drafts while the commit was under way, entries and size of the file
   */
  private record Seen(
      List<String> pages,
      List<Integer> pictures,
      int codeSize,
      List<String> log,
      List<String> kept,
      String order,
      String fingerprint) {}

  @Test
  void nothingOnThePagesInTheLogInTheDraftOrInTheNotebookDiffersByTheOrder() throws IOException {
    List<Seen> all = new ArrayList<>();
    for (long seed = 1; seed <= ORDERS; seed++) {
      all.add(run(seed, null));
    }

    assertThat(all).extracting(Seen::order).doesNotHaveDuplicates();
    assertThat(all).extracting(Seen::fingerprint).doesNotHaveDuplicates();
    Seen first = all.get(0);
    assertThat(first.pages()).hasSize(10);
    // Blank pages look alike whether anything is sealed or not.
    assertThat(first.pages().get(3)).isEqualTo(first.pages().get(7));
    assertThat(first.pages().stream().distinct()).hasSize(9);
    assertThat(first.kept()).hasSizeGreaterThan(4);
    for (Seen other : all.subList(1, ORDERS)) {
      same(other, first, 0);
    }
  }

  @Test
  void aConcealedNullRunLooksLikeAnyOtherSessionOnceItIsSealed() throws IOException {
    Seen ordinary = run(1, null);
    Seen nullRun = run(1, 1);

    assertThat(nullRun.fingerprint()).isNotEqualTo(ordinary.fingerprint());
    assertThat(ordinary.pages().get(SEALED)).contains("#fingerprint");
    same(nullRun, ordinary, PHRASE);
  }

  private static final int PHRASE = 4;
  private static final int SEALED = 6;

  private static void same(Seen other, Seen first, int from) {
    for (int page = from; page < first.pages().size(); page++) {
      assertThat(other.pages().get(page)).as("page %d", page).isEqualTo(first.pages().get(page));
    }
    assertThat(other.pictures().subList(from, first.pictures().size()))
        .isEqualTo(first.pictures().subList(from, first.pictures().size()));
    assertThat(other.codeSize()).isEqualTo(first.codeSize());
    assertThat(other.log()).isEqualTo(first.log());
    assertThat(other.kept()).isEqualTo(first.kept());
  }

  private Seen run(long seed, @Nullable Integer nullRun) throws IOException {
    Path own = Files.createDirectories(folder.resolve("run" + seed + "-" + nullRun));
    Files.copy(SAMPLE, own.resolve("plan.yaml"));
    return Window.call(() -> commit(own, seed, nullRun));
  }

  private static Seen commit(Path own, long seed, @Nullable Integer nullRun) {
    List<String> log = new ArrayList<>();
    Handler listener = listener(log);
    Logger root = Logger.getLogger("");
    root.addHandler(listener);
    try (Desk desk = PlanDesk.open(own, seed)) {
      return new Commit(desk, own).seen(nullRun, log);
    } finally {
      root.removeHandler(listener);
    }
  }

  /** One commit, looked at from step to step. */
  private static final class Commit {
    private final Desk desk;
    private final Path own;
    private final Scene scene;
    private final PlanModel model;
    private final CommitModel commit;
    private final List<String> pages = new ArrayList<>();
    private final List<Integer> pictures = new ArrayList<>();
    private int codeSize;

    Commit(Desk desk, Path own) {
      this.desk = desk;
      this.own = own;
      Look look = new Look();
      Shell shell = new Shell();
      model = Models.plan(desk, shell, Background.immediate(), 0);
      commit = model.commit();
      PlanPage page = new PlanPage(look, model, new NoDialogs());
      ShellView view =
          new ShellView(look, shell, Map.of(Shell.Page.PLAN, () -> page), List.of("quarry"));
      shell.go(Shell.Page.PLAN);
      scene = new Scene(view, WIDTH, HEIGHT);
      look.dress(scene);
    }

    Seen seen(@Nullable Integer nullRun, List<String> log) {
      model.startFromFile(own.resolve("plan.yaml"));
      see();
      commit.begin();
      see();
      commit.handedOver("4711");
      commit.signedProperty().set("R. Lind");
      commit.concealNullRun(nullRun);
      see();
      commit.cover().hide();
      see();
      commit.cover().reopen("4711");
      List<String> kept = new ArrayList<>(List.of("drafts " + desk.planning().drafts()));
      commit.sign();
      see();
      String phrase = commit.phrase().shownProperty().get();
      commit.phraseNoted();
      String question = commit.phrase().questionProperty().get();
      commit.phrase().typedProperty().set(HelperTypes.words(question, phrase));
      see();
      assertThat(desk.planning().drafts().toString()).doesNotContain(phrase);
      assertThat(log.toString()).doesNotContain(phrase);
      commit.seal();
      see();
      String fingerprint = commit.handOut().sealingProperty().get().orElseThrow().fingerprint();
      commit.handOut().givenToProperty().set("M. Oster");
      commit.handOut().fingerprintGiven();
      commit.cover().hide();
      see();
      commit.cover().reopen("4711");
      commit.goOn();
      see();
      commit.writeSheet(own, "A4");
      commit.finish();
      see();
      kept.addAll(kept());
      SessionState state = desk.sessions().all().get(0);
      Keys.Result.Open open = (Keys.Result.Open) desk.keys().helper(state, phrase);
      String order =
          open.schedule().fits().stream().map(f -> String.valueOf(f.named())).toList().toString();
      return new Seen(pages, pictures, codeSize, log, kept, order, fingerprint);
    }

    private List<String> kept() {
      List<String> kept = new ArrayList<>(List.of("drafts " + desk.planning().drafts()));
      for (StoredEntry stored : desk.notebook().entries(desk.sessions().all().get(0).id())) {
        String text = stored.text();
        kept.add(text.length() + " " + SECRET.matcher(text).replaceAll("*"));
      }
      try {
        kept.add("file of " + Files.size(own.resolve("quarry.blindlap")) + " bytes");
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
      return kept;
    }

    /** The scene as text and as pixels, what must differ by the order left out. */
    private void see() {
      String text = SceneText.of(scene);
      Optional<CommitHandOut.Sealing> sealing = commit.handOut().sealingProperty().get();
      if (sealing.isPresent()) {
        String fingerprint = sealing.get().fingerprint();
        // The letters of a fingerprint have widths of their own.
        text =
            Pattern.compile("( -?[0-9]+\\.[0-9]+){4}(?=[^\n]*" + fingerprint + ")")
                .matcher(text)
                .replaceAll("")
                .replace(fingerprint, "F".repeat(fingerprint.length()));
        code(sealing.get());
      }
      pages.add(text);
      pictures.add(pixels());
    }

    /** The code says the fingerprint and nothing else. */
    private void code(CommitHandOut.Sealing sealing) {
      Qr shown = sealing.code();
      Qr expected = Qr.of(sealing.fingerprint(), shown.spoken());
      codeSize = shown.size();
      assertThat(expected.size()).isEqualTo(codeSize);
      for (int row = 0; row < codeSize; row++) {
        for (int column = 0; column < codeSize; column++) {
          assertThat(shown.dark(column, row)).isEqualTo(expected.dark(column, row));
        }
      }
    }

    private int pixels() {
      WritableImage image = scene.snapshot(null);
      int[] pixels = new int[WIDTH * HEIGHT];
      image
          .getPixelReader()
          .getPixels(0, 0, WIDTH, HEIGHT, PixelFormat.getIntArgbInstance(), pixels, 0, WIDTH);
      Node text = scene.lookup("#fingerprint");
      Node code = scene.lookup("#fingerprint-code");
      if (text != null && code != null) {
        Bounds words = text.localToScene(text.getLayoutBounds());
        Canvas canvas = (Canvas) code.lookup("Canvas");
        Bounds picture = canvas.localToScene(canvas.getLayoutBounds());
        cover(pixels, words.getMinX(), words.getMinY(), WIDTH, words.getMaxY());
        cover(pixels, picture.getMinX(), picture.getMinY(), picture.getMaxX(), picture.getMaxY());
      }
      return Arrays.hashCode(pixels);
    }

    private static void cover(int[] pixels, double x1, double y1, double x2, double y2) {
      for (int y = Math.max(0, (int) y1); y < Math.min(HEIGHT, Math.ceil(y2)); y++) {
        int from = y * WIDTH + Math.max(0, (int) x1);
        int to = y * WIDTH + Math.min(WIDTH, (int) Math.ceil(x2));
        Arrays.fill(pixels, from, Math.max(from, to), 0);
      }
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
}
