package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plan.Plan;
import blindlap.plan.Setting;
import blindlap.seal.HelperPhrase;
import blindlap.seal.Masks;
import blindlap.seal.SealParameters;
import blindlap.session.DayCommands;
import blindlap.session.HelperEntry;
import blindlap.session.LifeCommands;
import blindlap.session.SafetyCheck;
import blindlap.session.SessionState;
import blindlap.session.SessionSummary;
import blindlap.session.StoredEntry;
import blindlap.session.day.LapId;
import blindlap.session.day.LapInput;
import blindlap.session.day.Source;
import blindlap.store.SqliteNotebook;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What lies on the disk of a day alone tells nothing but what was shown. With every source of
 * chance fixed but one, two days that were shown the same so far have the same entries, list, file
 * size and count of changes, but for hashes, fingerprints and what is encrypted, all of one length.
 */
class AloneLeaksNothingTest {
  private static final Pattern HASH = Pattern.compile("[0-9a-f]{64}");
  private static final Pattern SEALED = Pattern.compile("\"ciphertext\":\"([^\"]+)\"");
  private static final int STINTS_SHOWN = 3;

  @TempDir Path folder;

  /** A day as far as it went: what was shown, and all that anyone can look at. */
  private record Seen(List<Integer> shown, List<String> all) {}

  private Desk desk(Path file, SetClock clock, long order) {
    return new Desk(
        SqliteNotebook.open(file, FixedSources.stream(50).exactly(16), clock.instant()),
        clock,
        FixedSources.order(order),
        new SealParameters(1),
        FixedSources.stream(60));
  }

  private static SessionState commit(Desk desk, String level) {
    Plan plan = desk.planning().preview(AloneDayTest.text(level)).plan().orElseThrow();
    return ((Committing.Result.Covered) desk.committing().cover(plan, List.of("R. Lind"))).state();
  }

  private static void done(Sessions.Result result) {
    assertThat(result).as(String.valueOf(result)).isInstanceOf(Sessions.Result.Done.class);
  }

  private static void mountAndRide(Desk desk, AloneDay day, SetClock clock) {
    AloneDay.Shown.Setup shown = (AloneDay.Shown.Setup) day.show();
    int stint = shown.work().stint();
    Map<String, String> measured = new LinkedHashMap<>();
    for (Setting setting : day.settings(stint, shown.work().setup())) {
      measured.put(setting.name(), setting.value());
    }
    done(
        day.mount(
            HelperEntry.untouched(stint, "R. Lind", shown.work().setup())
                .withMeasured(measured, List.of())
                .withConfirmed(EnumSet.allOf(SafetyCheck.class))
                .withFit(shown.state().lapsSoFar(), true)));
    clock.move(Duration.ofMinutes(5));
    if (stint > 0) {
      LapInput lap =
          LapInput.of(new LapId(stint, 1), Map.of("lap time", new BigDecimal(180 + stint % 3)));
      done(
          desk.sessions()
              .act(day.id(), s -> new DayCommands(s).record(List.of(lap), Source.SCREEN)));
    }
  }

  private static List<String> visible(Desk desk, SessionState state, Path file) throws IOException {
    List<String> all = new ArrayList<>();
    for (StoredEntry stored : desk.notebook().entries(state.id())) {
      String text = HASH.matcher(stored.text()).replaceAll("*");
      all.add(SEALED.matcher(text).replaceAll(found -> String.valueOf(found.group(1).length())));
    }
    for (SessionSummary summary : desk.notebook().summaries()) {
      all.add(summary.toString());
    }
    byte[] bytes = Files.readAllBytes(file);
    all.add("size " + bytes.length);
    all.add("changes " + ByteBuffer.wrap(bytes, 24, 4).getInt());
    all.add("drafts " + desk.notebook().drafts().keySet());
    return all;
  }

  @Test
  void aDrawnDayTellsNothingOfStintsThatWereNotShown() throws IOException {
    Map<List<Integer>, Seen> seen = new HashMap<>();
    Set<String> orders = new TreeSet<>();
    int pairs = 0;
    for (long seed = 1; seed <= 24; seed++) {
      SetClock clock = new SetClock(Instant.parse("2026-11-14T08:00:00Z"));
      Path file = folder.resolve("day-" + seed + ".blindlap");
      try (Desk desk = desk(file, clock, seed)) {
        SessionState state = commit(desk, "drawn");
        AloneDay day = desk.aloneDays().day(state).orElseThrow();
        for (int stint = 0; stint <= STINTS_SHOWN; stint++) {
          mountAndRide(desk, day, clock);
        }
        SessionState now = desk.sessions().state(state.id()).orElseThrow();
        Seen here = new Seen(List.copyOf(now.shown().values()), visible(desk, now, file));
        Seen before = seen.putIfAbsent(here.shown(), here);
        if (before != null) {
          assertThat(here.all()).as("seed %d", seed).isEqualTo(before.all());
          pairs++;
        }
        orders.add(
            String.valueOf(
                desk.notebook().cover(state.id()).orElseThrow().key().orElseThrow().order()));
      }
    }
    assertThat(pairs).as("days shown the same").isGreaterThan(5);
    assertThat(orders).as("orders drawn").hasSizeGreaterThan(seen.size());
  }

  @Test
  void aMaskedDayIsTheSameUnderBothMappingsButForWhatIsSealed() throws IOException {
    List<List<String>> days = new ArrayList<>();
    for (List<Integer> mapping : List.of(List.of(0, 1), List.of(1, 0))) {
      SetClock clock = new SetClock(Instant.parse("2026-11-14T08:00:00Z"));
      Path file = folder.resolve("masked-" + mapping.get(0) + ".blindlap");
      try (Desk desk = desk(file, clock, 7)) {
        SessionState state = commit(desk, "masked");
        HelperPhrase phrase = desk.masks().phrase().unasked();
        Masks masks = desk.masks().typed(state, mapping).orElseThrow();
        assertThat(masks).hasToString("Masks[2 labels]");
        done(desk.masks().seal(state, masks, phrase));
        AloneDay day = desk.aloneDays().day(state).orElseThrow();
        for (int stint = 0; stint <= 8; stint++) {
          mountAndRide(desk, day, clock);
        }
        done(desk.sessions().act(state.id(), s -> new LifeCommands(s).closeDay()));
        done(desk.keys().closeReview(state.id()));
        days.add(visible(desk, state, file));
      }
    }
    assertThat(days.get(0)).hasSizeGreaterThan(30).isEqualTo(days.get(1));
  }
}
