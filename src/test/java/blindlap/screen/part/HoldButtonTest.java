package blindlap.screen.part;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.screen.Window;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import javafx.scene.Scene;
import javafx.scene.layout.StackPane;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A button that is held stays where the pointer is. */
class HoldButtonTest {
  private final AtomicLong clock = new AtomicLong();
  private final AtomicInteger held = new AtomicInteger();
  private final AtomicInteger tooShort = new AtomicInteger();

  @BeforeAll
  static void toolkit() throws InterruptedException {
    Window.start();
  }

  @Test
  void itIsAsWideOnceItsWordsAreShorter() throws InterruptedException {
    CountDownLatch said = new CountDownLatch(1);
    HoldButton[] button = new HoldButton[1];
    double[] wide = new double[1];
    Window.run(
        () -> {
          HoldButton hold =
              new HoldButton(
                  "Hold: the bike has been handed over",
                  "Let go",
                  clock::get,
                  held::incrementAndGet,
                  tooShort::incrementAndGet);
          button[0] = hold;
          new Scene(new StackPane(hold), 900, 300);
          lay(hold);
          wide[0] = hold.getWidth();
          hold.textProperty().addListener((o, before, now) -> said.countDown());
          hold.arm();
          clock.addAndGet(HoldButton.LONG.toNanos());
        });
    assertThat(said.await(20, TimeUnit.SECONDS)).isTrue();
    Window.run(
        () -> {
          HoldButton hold = button[0];
          lay(hold);
          assertThat(hold.getText()).isEqualTo("Let go");
          assertThat(hold.getWidth()).isEqualTo(wide[0]);
          hold.fire();
          hold.disarm();
          lay(hold);
          assertThat(hold.getText()).startsWith("Hold");
          assertThat(hold.getWidth()).isEqualTo(wide[0]);
        });
    assertThat(held).hasValue(1);
    assertThat(tooShort).hasValue(0);
  }

  private static void lay(HoldButton button) {
    button.getScene().getRoot().applyCss();
    button.getScene().getRoot().layout();
  }
}
