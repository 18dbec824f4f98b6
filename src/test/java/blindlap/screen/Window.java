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
import javafx.geometry.Rectangle2D;
import javafx.scene.Scene;
import javafx.scene.SnapshotParameters;
import javafx.scene.layout.Region;
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
    write(SwingFXUtils.fromFXImage(scene.snapshot(null), null), name);
  }

  /**
   * Lays the scene out to be measured; its picture is kept only where the property
   * blindlap.pictures names a folder, for drawing takes longer than all that is measured.
   */
  public static void look(Scene scene, String name) {
    for (int pass = 0; pass < 2; pass++) { // as often as drawing does: words may break anew
      scene.getRoot().applyCss();
      scene.getRoot().layout();
    }
    if (System.getProperty("blindlap.pictures") != null) {
      picture(scene, name);
    }
  }

  /**
   * Writes what a part of a scene, laid out, shows in its own size; and gives it to be measured.
   */
  public static BufferedImage picture(Region part, String name) {
    SnapshotParameters whole = new SnapshotParameters();
    whole.setViewport(new Rectangle2D(0, 0, part.getWidth(), part.getHeight()));
    BufferedImage image = SwingFXUtils.fromFXImage(part.snapshot(whole, null), null);
    write(image, name);
    return image;
  }

  private static void write(BufferedImage image, String name) {
    try {
      Path folder =
          Files.createDirectories(
              Path.of(System.getProperty("blindlap.pictures", "target/pictures")));
      ImageIO.write(image, "png", folder.resolve(name + ".png").toFile());
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }
}
