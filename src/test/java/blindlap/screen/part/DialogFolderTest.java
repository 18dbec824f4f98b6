package blindlap.screen.part;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DialogFolderTest {
  @Test
  void aDialogBeginsWhereTheLastChoiceWasMadeAtFirstWhereTheProgramWasStarted(@TempDir Path start)
      throws Exception {
    Path plans = Files.createDirectory(start.resolve("plans"));
    DialogFolder folder = new DialogFolder(start);
    assertThat(folder.begin()).contains(start);
    folder.chosenFile(plans.resolve("plan.yaml"));
    assertThat(folder.begin()).contains(plans);
    folder.chosenFolder(start);
    assertThat(folder.begin()).contains(start);
  }

  @Test
  void aFolderThatIsGoneAndTheRootOfADiskAreLeftToTheSystem(@TempDir Path start) throws Exception {
    Path gone = Files.createDirectory(start.resolve("gone"));
    DialogFolder folder = new DialogFolder(gone);
    assertThat(folder.begin()).contains(gone);
    Files.delete(gone);
    assertThat(folder.begin()).isEmpty();
    assertThat(new DialogFolder(start.getRoot()).begin()).isEmpty();
  }
}
