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
  private final DialogFolder folder;

  /**
   * @param owner the window they belong to
   * @param folder where they begin
   */
  public FileDialogs(Supplier<@Nullable Window> owner, DialogFolder folder) {
    this.owner = owner;
    this.folder = folder;
  }

  @Override
  public Optional<Path> openFile(String title) {
    return file(chooser(title).showOpenDialog(owner.get()));
  }

  @Override
  public List<Path> openFiles(String title) {
    List<File> chosen = chooser(title).showOpenMultipleDialog(owner.get());
    List<Path> files = chosen == null ? List.of() : chosen.stream().map(File::toPath).toList();
    files.stream().findFirst().ifPresent(folder::chosenFile);
    return files;
  }

  @Override
  public Optional<Path> saveFile(String title, String name) {
    FileChooser chooser = chooser(title);
    chooser.setInitialFileName(name);
    return file(chooser.showSaveDialog(owner.get()));
  }

  @Override
  public Optional<Path> saveFile(String title, Path suggested) {
    FileChooser chooser = chooser(title);
    Path beside = suggested.toAbsolutePath().getParent();
    if (beside != null && Files.isDirectory(beside)) {
      chooser.setInitialDirectory(beside.toFile());
    }
    chooser.setInitialFileName(String.valueOf(suggested.getFileName()));
    return file(chooser.showSaveDialog(owner.get()));
  }

  @Override
  public Optional<Path> folder(String title) {
    Optional<Path> chosen = coveredFolder(title);
    chosen.ifPresent(folder::chosenFolder);
    return chosen;
  }

  @Override
  public Optional<Path> coveredFolder(String title) {
    DirectoryChooser chooser = new DirectoryChooser();
    chooser.setTitle(title);
    folder.begin().map(Path::toFile).ifPresent(chooser::setInitialDirectory);
    return Optional.ofNullable(chooser.showDialog(owner.get())).map(File::toPath);
  }

  private FileChooser chooser(String title) {
    FileChooser chooser = new FileChooser();
    chooser.setTitle(title);
    folder.begin().map(Path::toFile).ifPresent(chooser::setInitialDirectory);
    return chooser;
  }

  private Optional<Path> file(@Nullable File chosen) {
    Optional<Path> file = Optional.ofNullable(chosen).map(File::toPath);
    file.ifPresent(folder::chosenFile);
    return file;
  }
}
