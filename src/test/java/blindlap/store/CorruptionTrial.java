package blindlap.store;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.session.NotebookException.Kind;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The long version of {@link CorruptionTest}: {@code mvn test -Dtest=CorruptionTrial -Dflips=1000}.
 * Each damaged file is opened, checked in full and recovered.
 */
class CorruptionTrial {
  @TempDir private Path folder;

  @Test
  void many_flips_and_cuts() throws IOException {
    Damage damage = new Damage(folder);
    Random random = new Random(20_261_115);
    int wanted = Integer.getInteger("flips", 1000);
    for (int i = 0; i < wanted; i++) {
      byte[] bytes = damage.any(random, i);
      Kind opened = damage.open(bytes);
      damage.verify(bytes, opened);
      damage.recover(bytes);
    }
    System.out.println(damage.counts);
  }

  /** Every byte of the file's header, each in several ways; SQLite reads them before all else. */
  @Test
  void every_byte_of_the_header() throws IOException {
    Damage damage = new Damage(folder);
    int[] bits = {1, 2, 3, 4, 8, 16, 32, 64, 128, 255};
    for (int at = 0; at < 100; at++) {
      for (int change : bits) {
        byte[] bytes = damage.flipped(at, change);
        try {
          Kind opened = damage.open(bytes);
          damage.verify(bytes, opened);
          damage.recover(bytes);
        } catch (AssertionError | RuntimeException e) {
          throw new AssertionError("byte " + at + " changed by " + change, e);
        }
      }
    }
    assertThat(new TreeMap<>(damage.counts)).doesNotContainKey("sessions not touched, lost");
    System.out.println(damage.counts);
  }
}
