package blindlap.store;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.screen.Models;
import blindlap.screen.book.NotebookModel;
import blindlap.screen.part.Background;
import blindlap.screen.part.Shell;
import blindlap.screen.plan.PlanDesk;
import blindlap.screen.review.ReviewModel;
import blindlap.screen.ride.RideModel;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import java.lang.ref.WeakReference;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Sessions opened one after the other, as in a winter's evening with old notebooks. */
class OpenedInTurnTest {
  /** Enough that one held each time would be seen; more with {@code -Dopened=200}. */
  private static final int SESSIONS = Integer.getInteger("opened", 60);

  /** Sessions that a page, the desk and the thread at work may hold at once. */
  private static final int HELD = 3;

  @TempDir private Path folder;

  @Test
  void sessions_opened_in_turn_are_let_go_and_the_heap_does_not_grow() throws Exception {
    ManySessions.add(folder.resolve("quarry.blindlap"), 0, SESSIONS);
    try (Desk desk = PlanDesk.open(folder, 1)) {
      Opening opening = new Opening(desk);
      List<WeakReference<SessionState>> early = opening.inTurn(0, 20);
      long after20 = used();
      List<WeakReference<SessionState>> late = opening.inTurn(20, SESSIONS);
      long afterAll = used();
      assertThat(held(early)).as("of the first twenty").isZero();
      assertThat(held(late)).as("of the last").isBetween(1, HELD);
      long one = sizeOfOne(desk);
      assertThat(one).as("a session weighs something").isGreaterThan(20_000);
      assertThat(afterAll - after20).as("bytes more than after 20").isLessThan(10 * one);
      opening.assertShows(ManySessions.session(SESSIONS - 1));
    }
  }

  /** The pages of a window, each opening the same session. */
  private static final class Opening {
    private final Desk desk;
    private final NotebookModel notebook;
    private final ReviewModel review;
    private final RideModel ride;

    Opening(Desk desk) {
      this.desk = desk;
      notebook = Models.notebook(desk, new Shell(), Background.immediate());
      review = Models.review(desk, Background.immediate());
      ride =
          new RideModel(
              desk.riderDays(),
              desk.notebook()::dataVersion,
              Background.immediate(),
              desk.clock(),
              System::nanoTime);
    }

    List<WeakReference<SessionState>> inTurn(int from, int before) {
      List<WeakReference<SessionState>> opened = new ArrayList<>();
      for (int number = from; number < before; number++) {
        if (number % 10 == 0) {
          notebook.refresh();
        }
        review.open(ManySessions.session(number));
        ride.open(ManySessions.session(number));
        opened.add(
            new WeakReference<>(desk.sessions().state(ManySessions.session(number)).orElseThrow()));
      }
      return opened;
    }

    void assertShows(SessionId last) {
      assertThat(notebook.rows()).isNotEmpty();
      assertThat(review.stageProperty().get()).isNotNull();
      assertThat(review.troubleProperty().get()).isEmpty();
      assertThat(ride.troubleProperty().get()).isEmpty();
      assertThat(desk.sessions().state(last)).isPresent();
    }
  }

  /** What ten sessions kept on purpose take, a tenth of it: the measure sees what is held. */
  private static long sizeOfOne(Desk desk) throws InterruptedException {
    long before = used();
    List<SessionState> kept = new ArrayList<>();
    for (int number = 0; number < 10; number++) {
      kept.add(desk.sessions().state(ManySessions.session(number)).orElseThrow());
    }
    long after = used();
    assertThat(kept).hasSize(10);
    return (after - before) / kept.size();
  }

  private static int held(List<WeakReference<SessionState>> opened) {
    return (int) opened.stream().filter(each -> each.get() != null).count();
  }

  /** Bytes in use after the collector has run until nothing more is freed. */
  private static long used() throws InterruptedException {
    Runtime runtime = Runtime.getRuntime();
    long least = Long.MAX_VALUE;
    for (int i = 0; i < 4; i++) {
      System.gc();
      Thread.sleep(30);
      least = Math.min(least, runtime.totalMemory() - runtime.freeMemory());
    }
    return least;
  }
}
