package blindlap.benchmark;

import javafx.application.Platform;

/**
 * Opens a window as {@link WindowStart} does and ends in the ordinary way, so that classes are
 * archived.
 */
public final class WindowOnce {
  private WindowOnce() {}

  public static void main(String[] args) {
    Thread end =
        new Thread(
            () -> {
              try {
                Thread.sleep(6_000);
              } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
              }
              Platform.runLater(() -> System.exit(0));
            },
            "end");
    end.setDaemon(true);
    end.start();
    WindowStart.open(args);
  }
}
