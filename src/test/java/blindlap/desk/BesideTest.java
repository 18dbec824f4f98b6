package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.exchange.QuarryTrail;
import blindlap.screen.plan.PlanDesk;
import blindlap.session.TrailTitle;
import blindlap.store.SqliteFiles;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a notebook that is brought in brings beside its sessions. */
class BesideTest {
  @TempDir Path folder;

  @Test
  void trailsProfilesAndPositionsComeWithANotebookAndAreTheSameInBothAfterwards() throws Exception {
    Path here = Files.createDirectory(folder.resolve("here"));
    Path there = Files.createDirectory(folder.resolve("there"));
    byte[] way = "0 11 -38".getBytes(StandardCharsets.UTF_8);
    try (Desk other = PlanDesk.open(there, 1, PlanDesk.CLOCK, 9)) {
      other.trails().keep(QuarryTrail.trail());
      other.trails().keep(QuarryTrail.trail("Quarry loop", 12, 690));
      other.trails().keep(QuarryTrail.trail("Ridge", 10, 600));
      other.notebook().contents().put(way);
      other.profiles().keep("Long days: climbing time, mass");
      other.profiles().remove("Long days");
    }
    try (Desk desk = PlanDesk.open(here, 1)) {
      desk.trails().keep(QuarryTrail.trail("Quarry loop", 12, 690));
      desk.profiles().keep("Fast and steep: lap time");
      SafeKeeping keeping =
          new SafeKeeping(
              new SqliteFiles(PlanDesk.CLOCK, () -> new byte[16]), here.resolve("quarry.blindlap"));
      for (int time = 0; time < 2; time++) {
        SessionExchange.Brought brought =
            desk.exchange(keeping).bringIn(there.resolve("quarry.blindlap"));
        assertThat(brought.refused()).isEmpty();
        assertThat(brought.trails()).isEqualTo(time == 0 ? 2 : 0);
        assertThat(brought.profiles()).isEqualTo(time == 0 ? 2 : 0);
        assertThat(desk.profiles().all())
            .extracting(kept -> kept.profile().name(), kept -> kept.profile().removed())
            .containsExactlyInAnyOrder(
                org.assertj.core.groups.Tuple.tuple("Fast and steep", false),
                org.assertj.core.groups.Tuple.tuple("Long days", false),
                org.assertj.core.groups.Tuple.tuple("Long days", true));
        assertThat(desk.trails().titles())
            .extracting(TrailTitle::name, TrailTitle::number)
            .containsExactly(
                org.assertj.core.groups.Tuple.tuple("Quarry loop", 1),
                org.assertj.core.groups.Tuple.tuple("Quarry loop", 2),
                org.assertj.core.groups.Tuple.tuple("Ridge", 1));
      }
      assertThat(desk.trails().find("Quarry loop", 2).orElseThrow().trail())
          .isEqualTo(QuarryTrail.trail());
      assertThat(desk.notebook().contents().names()).hasSize(1);
      String name = desk.notebook().contents().names().iterator().next();
      assertThat(desk.notebook().contents().find(name).orElseThrow()).isEqualTo(way);
      assertThat(desk.notebook().verify().sound()).isTrue();
    }
  }
}
