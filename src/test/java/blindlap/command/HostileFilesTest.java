package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Packages and files of sessions that somebody made to break or to deceive, thirty of each; more of
 * them with {@code -Dhostile=1000}.
 */
class HostileFilesTest {
  @TempDir Path folder;

  @Test
  void everyHostileFileIsRefusedBySentencesOrGivesTheRightAnswer() throws IOException {
    int wanted = Integer.getInteger("hostile", 30);
    HostileFiles files = new HostileFiles(folder, 20_261_127);
    for (int i = 0; i < wanted; i++) {
      files.onePackage();
      files.oneSession();
    }
    if (wanted > 30) {
      System.out.println(files.counts + " broken: " + files.broken.size());
    }
    assertThat(files.broken).isEmpty();
    assertThat(files.counts)
        .containsKeys(
            "packages refused with 1", "packages refused with 2", "sessions refused with 1");
  }
}
