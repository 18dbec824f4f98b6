package blindlap.screen.swap;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.TestDay;
import blindlap.screen.Models;
import blindlap.session.DayCommands;
import blindlap.session.Fact;
import blindlap.session.day.LapId;
import blindlap.session.day.Source;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Looks before the end of a day, on the Swap page. */
class SwapLookTest {
  private @TempDir(factory = RamFolder.class) Path folder;
  private TestDay day;
  private SwapModel model;

  @BeforeEach
  void start() {
    String plan =
        TestDay.SIXTEEN
            .replace("stints: 16", "stints: 24\nlooks: [16]")
            .replace("16:38", "19:00")
            .replace("lap_budget: 20", "lap_budget: 40");
    day = new TestDay(folder, plan, 5);
    model = Models.swap(day);
  }

  @AfterEach
  void end() {
    day.close();
  }

  /** Laps from one stint to another; setup B is quicker by so many seconds. */
  private void rides(int from, int to, int quicker) {
    for (int stint = from; stint <= to; stint++) {
      LapId lap = new LapId(stint, 1);
      int gain = day.order().charAt(stint - 1) == 'B' ? quicker : 0;
      day.watched(lap, "lap time", 95 + stint * stint % 3 - gain);
      ridden(lap);
    }
  }

  private void ridden(LapId lap) {
    Fact fact = new Fact.LapRidden(lap, Source.SCREEN);
    day.desk().sessions().act(day.id(), latest -> new DayCommands(latest).note(lap, fact));
  }

  private void opens() {
    model.phrase(day.phrase());
    model.choosePin("0417");
  }

  private String said() {
    return model.looks().saidProperty().get();
  }

  @Test
  void aLookIsOfferedWhenItsBlockIsCompleteAndSaysTheDeclaredWordsOnly() {
    rides(1, 15, 12);
    opens();
    assertThat(model.looks().dueProperty().get()).isFalse();
    assertThat(said()).isEmpty();
    rides(16, 16, 12);
    model.tick();
    assertThat(model.looks().dueProperty().get()).isTrue();
    assertThat(said()).isEqualTo("Look after stint 16");
    model.looks().look();
    assertThat(said())
        .isEqualTo("Look after stint 16: You may stop: it is settled that they differ.");
    assertThat(model.looks().dueProperty().get()).isFalse();
    assertThat(model.looks().settledProperty().get()).isTrue();
    assertThat(day.state().looks()).containsOnlyKeys(16);
    model.hide();
    assertThat(said()).isEmpty();
    assertThat(model.looks().settledProperty().get()).isFalse();
  }

  @Test
  void withoutADifferenceItSaysRideOn() {
    rides(1, 16, 0);
    opens();
    model.looks().look();
    assertThat(said()).isEqualTo("Look after stint 16: Ride on.");
    assertThat(model.looks().settledProperty().get()).isFalse();
    model.looks().look();
    assertThat(day.state().looks()).hasSize(1);
  }

  @Test
  void aLapThatWaitsForAValueOrAVoidIsNamed() {
    rides(1, 15, 0);
    ridden(new LapId(16, 1));
    opens();
    assertThat(model.looks().dueProperty().get()).isFalse();
    assertThat(model.looks().troubleProperty().get())
        .contains("lap 16 (stint 16) has no value in lap time and is not void");
  }
}
