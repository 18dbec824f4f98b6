package blindlap.screen.part;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import javafx.stage.DirectoryChooser;
import javafx.stage.FileChooser;
import javafx.stage.Window;
import org.jspecify.annotations.Nullable;

/** The system's own dialogs. */
public final class FileDialogs implements Dialogs {
  private final Supplier<@Nullable Window> owner;

  /**
   * @param owner the window they belong to
   */
  public FileDialogs(Supplier<@Nullable Window> owner) {
    this.owner = owner;
  }

  @Override
  public Optional<Path> openFile(String title) {
    FileChooser chooser = new FileChooser();
    chooser.setTitle(title);
    return path(chooser.showOpenDialog(owner.get()));
  }

  @Override
  public List<Path> openFiles(String title) {
    FileChooser chooser = new FileChooser();
    chooser.setTitle(title);
    List<File> chosen = chooser.showOpenMultipleDialog(owner.get());
    return chosen == null ? List.of() : chosen.stream().map(File::toPath).toList();
  }

  @Override
  public Optional<Path> saveFile(String title, String name) {
    FileChooser chooser = new FileChooser();
    chooser.setTitle(title);
    chooser.setInitialFileName(name);
    return path(chooser.showSaveDialog(owner.get()));
  }

  @Override
  public Optional<Path> saveFile(String title, Path suggested) {
    FileChooser chooser = new FileChooser();
    chooser.setTitle(title);
    Path folder = suggested.toAbsolutePath().getParent();
    if (folder != null && Files.isDirectory(folder)) {
      chooser.setInitialDirectory(folder.toFile());
    }
    chooser.setInitialFileName(String.valueOf(suggested.getFileName()));
    return path(chooser.showSaveDialog(owner.get()));
  }

  @Override
  public Optional<Path> folder(String title) {
    DirectoryChooser chooser = new DirectoryChooser();
    chooser.setTitle(title);
    return path(chooser.showDialog(owner.get()));
  }

  private static Optional<Path> path(@Nullable File file) {
    return Optional.ofNullable(file).map(File::toPath);
  }
}
