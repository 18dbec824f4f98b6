package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Packages and files of sessions that somebody made to break or to deceive; more of them with
 * {@code -Dhostile=1000}.
 */
class HostileFilesTest {
  @TempDir Path folder;

  @Test
  void everyHostileFileIsRefusedBySentencesOrGivesTheRightAnswer() throws IOException {
    int wanted = Integer.getInteger("hostile", 60);
    HostileFiles files = new HostileFiles(folder, 20_261_127);
    for (int i = 0; i < wanted; i++) {
      if (i % 2 == 0) {
        files.onePackage();
      } else {
        files.oneSession();
      }
    }
    if (wanted > 60) {
      System.out.println(files.counts + " broken: " + files.broken.size());
    }
    assertThat(files.broken).isEmpty();
    assertThat(files.counts)
        .containsKeys(
            "packages refused with 1", "packages refused with 2", "sessions refused with 1");
  }
}
