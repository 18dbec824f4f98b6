package blindlap.store;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * The long version of {@link KillTest}: {@code mvn test -Dtest=KillTrial -Dkills=500}. A fresh
 * notebook every 50 kills, so that days of 24 stints are killed from their first entry to their
 * last.
 */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "there is no SIGKILL")
class KillTrial {
  @TempDir private Path folder;

  @Test
  void many_kills() throws Exception {
    Kills kills = new Kills(folder, 20_261_115);
    int wanted = Integer.getInteger("kills", 500);
    for (int i = 0; i < wanted; i++) {
      if (i % 50 == 49) {
        kills.freshFile();
      }
      if (i % 10 == 9) {
        kills.killOnce("started", 400);
      } else {
        kills.killOnce("saved", 2000);
      }
    }
    System.out.println(kills.counts());
  }

  @Test
  void many_kills_of_covered_days() throws Exception {
    Kills kills = new Kills(folder, 20_261_129, CoveredChild.class);
    int wanted = Integer.getInteger("kills", 500);
    for (int i = 0; i < wanted; i++) {
      if (i % 50 == 49) {
        kills.freshFile();
      }
      kills.killOnce(i % 10 == 9 ? "started" : "saved", i % 10 == 9 ? 400 : 2000);
    }
    System.out.println(kills.counts());
  }
}
