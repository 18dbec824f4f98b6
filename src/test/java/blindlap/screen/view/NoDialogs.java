package blindlap.screen.view;

import blindlap.screen.model.Dialogs;
import java.nio.file.Path;
import java.util.Optional;

/** Nobody chooses anything; tests override what is chosen after all. */
class NoDialogs implements Dialogs {
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
