package blindlap.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Process kill. Power loss is another matter: see {@link PowerLossTest}. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "there is no SIGKILL")
class KillTest {
  @TempDir private Path folder;

  @Test
  void after_fifty_kills_at_random_moments_every_chain_verifies_and_nothing_saved_is_missing()
      throws Exception {
    Kills kills = new Kills(folder, 20_261_114);
    for (int i = 0; i < 5; i++) {
      kills.killOnce("started", 400);
      kills.freshFile();
    }
    for (int i = 0; i < 30; i++) {
      kills.killOnce("saved", 150);
    }
    assertThat(kills.journalsLeft()).as(kills.counts()).isPositive();
  }

  /** Few kills in every build; {@link KillTrial} has as many as are asked for. */
  @Test
  void no_kill_parts_a_cover_from_its_chain() throws Exception {
    Kills kills = new Kills(folder, 20_261_128, CoveredChild.class);
    kills.killOnce("started", 400);
    for (int i = 0; i < 9; i++) {
      kills.killOnce("saved", 500);
    }
    assertThat(kills.shown()).as(kills.counts()).isPositive();
  }
}
