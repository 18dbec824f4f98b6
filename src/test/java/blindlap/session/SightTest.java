package blindlap.session;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.session.day.ByPhone;
import blindlap.session.day.PhoneRole;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a phone without signal had seen of another notebook's entries. */
class SightTest {
  private static final NotebookId HERE = NotebookId.of(new byte[16]);
  private static final NotebookId THERE =
      NotebookId.of(new byte[] {1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0});
  private static final Instant AT = Instant.parse("2026-11-14T09:00:00Z");

  private static Entry entry(NotebookId notebook, long number, List<Head> seen) {
    return new Entry(
        Histories.SESSION, notebook, number, Hash.of(""), seen, AT, ZoneOffset.UTC, Histories.LAP);
  }

  private static Sight.Place late(long number, long knew) {
    ByPhone phone = new ByPhone("0".repeat(32), 1, PhoneRole.RIDER, AT, AT, Duration.ZERO, knew);
    return new Sight.Place(HERE, number, phone, AT);
  }

  /** The entry after the last that the phone had is the first that knew of the other notebook. */
  @Test
  void whatTheNextEntryLearnedOfAnotherNotebookWasNotSeen() {
    Sight sight = new Sight();
    sight.take(entry(HERE, 1, List.of()));
    Entry there = entry(THERE, 1, List.of());
    sight.take(there);
    sight.take(entry(HERE, 2, List.of(new Head(THERE, 1, Hash.of("")))));
    Sight.Place other = Sight.Place.of(there);
    assertThat(sight.saw(late(3, 1), other)).isFalse();
    assertThat(sight.saw(late(3, 2), other)).isTrue();
    assertThat(sight.saw(late(3, 1), Sight.Place.of(entry(HERE, 1, List.of())))).isTrue();
    assertThat(sight.saw(late(3, 1), Sight.Place.of(entry(HERE, 2, List.of())))).isFalse();
  }
}
