package blindlap.screen;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.MistakeLog;
import blindlap.screen.part.Background;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import javafx.application.Platform;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What nobody foresaw in the window: one sentence and a log, whichever thread it was thrown on. */
class MistakesTest {
  @TempDir Path folder;

  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
  }

  @Test
  void whatIsThrownOnTheInterfaceThreadOrBesideItIsSaidAndKept() throws Exception {
    Path log = folder.resolve("mistakes.log");
    LinkedBlockingQueue<String> said = new LinkedBlockingQueue<>();
    Thread.UncaughtExceptionHandler everywhere = Thread.getDefaultUncaughtExceptionHandler();
    Thread.UncaughtExceptionHandler[] before = new Thread.UncaughtExceptionHandler[1];
    Window.run(
        () -> {
          before[0] = Thread.currentThread().getUncaughtExceptionHandler();
          Mistakes.catchAll(
              new MistakeLog(log, Clock.systemUTC(), "0"), Background.on(Runnable::run), said::add);
        });
    try {
      Platform.runLater(
          () -> {
            throw new IllegalStateException("order ABBA");
          });
      told(said, log);
      Thread beside =
          new Thread(
              () -> {
                throw new IllegalArgumentException("six secret words");
              });
      beside.start();
      beside.join();
      told(said, log);
    } finally {
      Thread.setDefaultUncaughtExceptionHandler(everywhere);
      Window.run(() -> Thread.currentThread().setUncaughtExceptionHandler(before[0]));
    }
    assertThat(Files.readString(log))
        .contains("IllegalStateException", "IllegalArgumentException")
        .doesNotContain("ABBA", "secret");
  }

  private static void told(LinkedBlockingQueue<String> said, Path log)
      throws InterruptedException, IOException {
    String sentence = said.poll(20, TimeUnit.SECONDS);
    assertThat(sentence)
        .startsWith("The program has made a mistake")
        .contains("What was saved is kept", log.toString())
        .doesNotContain("Exception", "ABBA", "secret");
    assertThat(List.of(sentence.split("\n"))).hasSize(1);
  }
}
