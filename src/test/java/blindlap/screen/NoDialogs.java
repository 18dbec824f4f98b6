package blindlap.screen;

import blindlap.screen.part.Dialogs;
import java.nio.file.Path;
import java.util.Optional;

/** Nobody chooses anything; tests override what is chosen after all. */
public class NoDialogs implements Dialogs {
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
