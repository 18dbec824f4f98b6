package blindlap.screen;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.desk.TestDay;
import blindlap.ride.RideSheet;
import blindlap.screen.part.Background;
import blindlap.screen.ride.RideModel;
import blindlap.screen.swap.SwapModel;
import blindlap.screen.swap.SwapWork;
import blindlap.seal.SealParameters;
import blindlap.seal.SealingSources;
import blindlap.seal.SecureBytes;
import blindlap.session.NotebookReport;
import blindlap.session.SafetyCheck;
import blindlap.session.day.LapId;
import blindlap.store.SqliteNotebook;
import blindlap.timing.TimeRecord;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Objects;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Helper and rider in two windows, each with a connection of its own, on one notebook file. */
class TwoWindowsTest {
  private static final String GRIP = "grip in the rocks";

  private @TempDir Path folder;
  private TestDay day;
  private Desk other;
  private RideModel ride;
  private SwapModel swap;

  @BeforeEach
  void open() {
    day = new TestDay(folder, TestDay.EIGHT, 9);
    Random random = new Random(4);
    SecureBytes bytes =
        count -> {
          byte[] next = new byte[count];
          random.nextBytes(next);
          return next;
        };
    other =
        new Desk(
            SqliteNotebook.open(
                folder.resolve("day-9.blindlap"), bytes.exactly(16), day.clock().instant()),
            day.clock(),
            SealingSources.allFrom(bytes),
            new SealParameters(1_000),
            bytes);
    ride =
        new RideModel(
            other.riderDays(),
            other.notebook()::dataVersion,
            Background.immediate(),
            day.clock(),
            day.clock()::nanos);
    swap = Models.swap(day);
    ride.open(day.id());
    swap.open(day.id());
    ride.tick();
  }

  @AfterEach
  void close() {
    other.close();
    day.close();
  }

  private void handle() {
    swap.tick();
    SwapWork work = swap.work();
    int stint = work.stint();
    work.begin();
    day.helper().work(stint).settings().forEach(s -> work.measured(s.name(), s.value()));
    for (SafetyCheck check : SafetyCheck.values()) {
      work.confirm(check.name(), true);
    }
    if (Objects.requireNonNull(work.sheetProperty().get()).fitAsked()) {
      work.riderFit(true);
    }
    day.clock().move(Duration.ofMinutes(7));
    swap.touch();
    work.handOver();
    assertThat(work.troubleProperty().get()).isEmpty();
  }

  private void bikeIsBack() {
    swap.bikeReturned();
    swap.reopen("2580");
  }

  @Test
  void oneTickAfterTheHelperHandsOverTheRidersWindowAsksForTheLap() {
    swap.phrase(day.phrase());
    swap.choosePin("2580");
    assertThat(ride.sheetProperty().get().stage()).isEqualTo(RideSheet.Stage.HAND_OVER);
    handle();
    assertThat(ride.sheetProperty().get().stage()).isEqualTo(RideSheet.Stage.HAND_OVER);
    ride.tick();
    assertThat(ride.sheetProperty().get().stage()).isEqualTo(RideSheet.Stage.WARM_UP);
  }

  @Test
  void bothWriteAtTheSameTimeAndNothingIsLost() throws Exception {
    swap.phrase(day.phrase());
    swap.choosePin("2580");
    handle();
    ride.tick();
    ride.warmUpRidden();
    bikeIsBack();
    handle();
    bikeIsBack();
    ride.tick();
    int answers = 60;
    ExecutorService pool = Executors.newFixedThreadPool(2);
    Callable<Boolean> rider =
        () -> {
          for (int i = 1; i <= answers; i++) {
            ride.answer(GRIP, BigDecimal.valueOf(i));
            assertThat(ride.troubleProperty().get()).isEmpty();
          }
          return true;
        };
    Callable<Boolean> helper =
        () -> {
          while (swap.phaseProperty().get() == SwapModel.Phase.OPEN) {
            handle();
            bikeIsBack();
          }
          return true;
        };
    try {
      Future<Boolean> one = pool.submit(rider);
      Future<Boolean> two = pool.submit(helper);
      assertThat(one.get() && two.get()).isTrue();
    } finally {
      pool.shutdown();
    }
    LapId lap = new LapId(1, 1);
    for (Desk desk : new Desk[] {day.desk(), other}) {
      var state = desk.sessions().state(day.id()).orElseThrow();
      assertThat(state.helperRecords()).hasSize(9);
      assertThat(state.lap(lap).orElseThrow().values().get(GRIP)).isEqualByComparingTo("60");
      long given =
          desk.notebook().entries(day.id()).stream()
              .filter(e -> e.text().contains("\"" + GRIP + "\""))
              .filter(e -> e.text().contains("Score"))
              .count();
      assertThat(given).isEqualTo(answers);
      assertThat(desk.notebook().verify()).extracting(NotebookReport::sound).isEqualTo(true);
    }
  }

  @Test
  void aWatchStartedInOneWindowIsStoppedInTheOtherWithADoubtfulTime() {
    day.desk().riderDays().handedOver(day.id(), 0);
    day.desk().riderDays().warmUp(day.id());
    day.desk().riderDays().handedOver(day.id(), 1);
    RideModel first = Models.ride(day);
    first.watches().timedBy("STARTER");
    first.watches().start("lap time");
    day.clock().move(Duration.ofSeconds(93));
    ride.tick();
    ride.watches().timedBy("STARTER");
    ride.watches().stop("lap time");
    TimeRecord time = day.state().lap(new LapId(1, 1)).orElseThrow().times().get("lap time");
    assertThat(time).isNotNull();
    assertThat(time.doubtful()).isTrue();
    assertThat(time.wallNanos()).isEqualTo(93_000_000_000L);
  }
}
