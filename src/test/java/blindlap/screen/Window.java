package blindlap.screen;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import javafx.application.Platform;
import javafx.embed.swing.SwingFXUtils;
import javafx.scene.Scene;
import javafx.scene.image.WritableImage;
import javax.imageio.ImageIO;

/** Runs tests on the interface thread and keeps pictures of scenes. */
public final class Window {
  private Window() {}

  public static void start() throws InterruptedException {
    CountDownLatch started = new CountDownLatch(1);
    try {
      Platform.startup(started::countDown);
    } catch (IllegalStateException alreadyRunning) {
      started.countDown();
    }
    if (!started.await(30, TimeUnit.SECONDS)) {
      throw new IllegalStateException("The window system did not start");
    }
    Platform.setImplicitExit(false);
  }

  public static <T> T call(Callable<T> work) {
    FutureTask<T> task = new FutureTask<>(work);
    Platform.runLater(task);
    try {
      return task.get(60, TimeUnit.SECONDS);
    } catch (InterruptedException | TimeoutException e) {
      throw new IllegalStateException(e);
    } catch (ExecutionException e) {
      throw new AssertionError(e.getCause());
    }
  }

  public static void run(Runnable work) {
    call(
        () -> {
          work.run();
          return true;
        });
  }

  /**
   * Lays the scene out and writes what it shows to target/pictures, or where the property
   * blindlap.pictures says.
   */
  public static void picture(Scene scene, String name) {
    scene.getRoot().applyCss();
    scene.getRoot().layout();
    WritableImage image = scene.snapshot(null);
    BufferedImage buffer = SwingFXUtils.fromFXImage(image, null);
    try {
      Path folder =
          Files.createDirectories(
              Path.of(System.getProperty("blindlap.pictures", "target/pictures")));
      ImageIO.write(buffer, "png", folder.resolve(name + ".png").toFile());
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }
}
