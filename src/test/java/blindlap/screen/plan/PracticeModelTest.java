package blindlap.screen.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.SetClock;
import blindlap.screen.part.TypedForm;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class PracticeModelTest {
  private final SetClock clock = new SetClock(Instant.parse("2026-11-13T14:00:00Z"));
  private final TypedForm form = new TypedForm(() -> {});
  private final PracticeModel model = new PracticeModel(form, clock);

  @BeforeEach
  void setups() {
    form.add("setups", Map.of("name", "Shock K"));
    form.add("setups", Map.of("name", "Shock L"));
    model.say();
  }

  private void swap(int seconds) {
    model.begin();
    clock.move(Duration.ofSeconds(seconds));
    model.done();
  }

  private String times() {
    return form.part("timetable").field("practised").get();
  }

  @Test
  void threeSwapsEachWayAreAskedForInTurn() {
    assertThat(model.nowProperty().get()).isEqualTo("Swap 1 of 6: take off Shock K, fit Shock L.");
    swap(340);
    assertThat(model.nowProperty().get()).isEqualTo("Swap 2 of 6: take off Shock L, fit Shock K.");
    swap(380);
    assertThat(times()).isEqualTo("5:40, 6:20");
    assertThat(model.proposalProperty().get())
        .isEqualTo("Swap time 7 min: the longest practised swap, 6:20 (of 2), and a tenth.");
  }

  @Test
  void theProposalIsTakenOnlyWhenAskedFor() {
    swap(380);
    assertThat(form.part("timetable").field("swap").get()).isEmpty();
    model.take();
    assertThat(form.part("timetable").field("swap").get()).isEqualTo("7");
  }

  @Test
  void aSwapThatIsStoppedOrTakenBackDoesNotCount() {
    swap(300);
    model.begin();
    clock.move(Duration.ofSeconds(900));
    model.stop();
    model.done();
    assertThat(times()).isEqualTo("5:00");
    model.takeBack();
    assertThat(times()).isEmpty();
    assertThat(model.proposalProperty().get()).isEmpty();
  }

  @Test
  void timesThatWereTypedCountLikeTimedOnes() {
    form.part("timetable").field("practised").set("6:00 5:30");
    swap(400);
    assertThat(times()).isEqualTo("6:00, 5:30, 6:40");
  }
}
