package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.exchange.SessionFile;
import blindlap.seal.SealParameters;
import blindlap.session.PhonesHeard;
import blindlap.session.PlateRead;
import blindlap.session.SessionState;
import blindlap.session.StoredEntry;
import blindlap.session.day.LapId;
import blindlap.store.SqliteFiles;
import blindlap.store.SqliteNotebook;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Entries by phone in a second notebook: the same day, whichever of the two was asked first. */
class PhoneExchangeTest {
  private static final LapId LAP = new LapId(1, 1);
  private static final String GRIP = "grip in the rocks";

  @TempDir Path folder;

  /** A day in one notebook and a second notebook that has it. */
  private static final class Two implements AutoCloseable {
    private final Path folder;
    final TestDay day;
    final Desk other;
    private int files;

    Two(Path folder) {
      this.folder = folder;
      day = new TestDay(folder, TestDay.EIGHT, 4);
      byte[] id = new byte[16];
      Arrays.fill(id, (byte) 9);
      other =
          new Desk(
              SqliteNotebook.open(folder.resolve("other.blindlap"), id, day.clock().instant()),
              day.clock(),
              FixedSources.order(5),
              new SealParameters(1),
              FixedSources.stream(8));
    }

    private SessionExchange exchange(Desk desk, String file) {
      SqliteFiles sqlite = new SqliteFiles(day.clock(), () -> new byte[16]);
      return desk.exchange(new SafeKeeping(sqlite, folder.resolve(file)));
    }

    SessionExchange here() {
      return exchange(day.desk(), "day-4.blindlap");
    }

    SessionExchange there() {
      return exchange(other, "other.blindlap");
    }

    void bring(SessionExchange from, SessionExchange to) {
      files++;
      Path file = folder.resolve(files + ".session.txt");
      from.write(day.id(), file);
      assertThat(to.bringIn(file).refused()).isEmpty();
    }

    /** What is not in the other notebook when the phone comes back. */
    void ride() {
      day.desk().riderDays().handedOver(day.id(), 1);
      PhoneHand phone = new PhoneHand(day, 1, Duration.ofMinutes(3));
      bring(here(), there());
      PhoneHand.Kept grip =
          phone.say(a -> a.score(day.id(), LAP, GRIP, BigDecimal.valueOf(64), false));
      PhoneHand.Kept note = phone.say(a -> a.note(day.id(), LAP, "from the phone"));
      PhoneHand.Kept read = phone.say(a -> a.plateRead(day.id(), 2));
      day.clock().move(Duration.ofMinutes(2));
      other.riderDays().score(day.id(), LAP, GRIP, BigDecimal.valueOf(50), false);
      day.desk().riderDays().note(day.id(), LAP, "typed later");
      day.clock().move(Duration.ofMinutes(2));
      List.of(grip, note, read).forEach(PhoneHand.Kept::send);
    }

    SessionState there(TestDay of) {
      return other.sessions().state(of.id()).orElseThrow();
    }

    @Override
    public void close() {
      other.close();
      day.close();
    }
  }

  private static void same(SessionState one, SessionState two) {
    assertThat(two.entries()).isEqualTo(one.entries());
    assertThat(two.day()).isEqualTo(one.day());
    assertThat(two.phones()).isEqualTo(one.phones());
    assertThat(two.notApplied()).isEqualTo(one.notApplied());
  }

  @Test
  void twoNotebooksAndAPhoneTellTheSameWhateverTheOrderOfExchange() throws IOException {
    try (Two first = new Two(Files.createDirectory(folder.resolve("a")));
        Two second = new Two(Files.createDirectory(folder.resolve("b")))) {
      first.ride();
      first.bring(first.here(), first.there());
      first.bring(first.there(), first.here());
      second.ride();
      second.bring(second.there(), second.here());
      second.bring(second.here(), second.there());
      SessionState state = first.day.state();
      same(state, first.there(first.day));
      same(state, second.day.state());
      same(state, second.there(second.day));
      assertThat(state.lap(LAP).orElseThrow().twice().get(GRIP).values())
          .extracting(value -> value.value().intValue())
          .containsExactly(64, 50);
      assertThat(state.lap(LAP).orElseThrow().note()).isEqualTo("typed later");
      assertThat(state.phones().conflicts())
          .extracting(PhonesHeard.Conflict::kind)
          .containsExactly(PhonesHeard.Kind.OUTDATED);
    }
  }

  @Test
  void aSessionFileWithAHandOverSaidByTheRiderIsRead() throws IOException {
    try (Two two = new Two(Files.createDirectory(folder.resolve("c")))) {
      two.ride();
      Path file = folder.resolve("out.session.txt");
      two.here().write(two.day.id(), file);
      assertThat(Files.readString(file))
          .contains("\"kind\":\"PlateRead\"", "\"form\":\"blindlap-entry-2\"");
      SessionFile.Reading reading = SessionFile.read(Files.readAllBytes(file));
      assertThat(reading.problems()).isEmpty();
      StoredEntry read =
          reading.entries().stream()
              .filter(each -> each.entry().fact().equals(new PlateRead(2)))
              .findFirst()
              .orElseThrow();
      assertThat(read.text()).contains("\"form\":\"blindlap-entry-2\"");
      assertThat(read.entry().phone()).isNotNull();
    }
  }
}
