package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plan.Plan;
import blindlap.plan.Setting;
import blindlap.seal.SealParameters;
import blindlap.seal.SessionKind;
import blindlap.session.DayCommands;
import blindlap.session.HelperEntry;
import blindlap.session.LifeCommands;
import blindlap.session.MountedUnit;
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
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What lies on the disk of a day with prepared units tells as little as that of a day with a
 * helper. With every source of chance fixed but the order, whole days up to the closed review have
 * the same entries, list, exported files, file size and count of changes, but for hashes,
 * fingerprints and what is encrypted, all of one length; also where the friend packed one unit
 * wrongly, measured one outside its tolerance, or concealed a null run.
 */
class PreparedLeaksNothingTest {
  private static final Pattern HASH = Pattern.compile("(?:[0-9a-f]{8}[ \n]?){8}");
  private static final Pattern SEALED = Pattern.compile("\"ciphertext\":\"([^\"]+)\"");

  @TempDir Path folder;

  private final Set<String> orders = new TreeSet<>();

  private static void done(Sessions.Result result) {
    assertThat(result).as(String.valueOf(result)).isInstanceOf(Sessions.Result.Done.class);
  }

  private static Map<String, String> measured(List<Setting> settings) {
    Map<String, String> measured = new LinkedHashMap<>();
    settings.forEach(setting -> measured.put(setting.name(), setting.value()));
    return measured;
  }

  /** What can go otherwise with the friend, and must not show. */
  private enum Friend {
    AS_PLANNED,
    ONE_WRONG,
    ONE_OUTSIDE,
    NULL_RUN
  }

  private static HelperEntry packed(PreparedUnits units, PreparedUnits.Unit unit, Friend friend) {
    HelperEntry entry = units.untouched(unit).withMeasured(measured(unit.settings()), List.of());
    if (unit.stint() != 3) {
      return entry;
    }
    return switch (friend) {
      case AS_PLANNED, NULL_RUN -> entry;
      case ONE_WRONG ->
          units
              .untouched(unit)
              .withFitted(1 - unit.setup())
              .withMeasured(
                  Map.of("sag", "28", "rebound", unit.setup() == 0 ? "7" : "9"), List.of());
      case ONE_OUTSIDE -> {
        Map<String, String> values = new LinkedHashMap<>(entry.measured());
        values.put("sag", "31");
        Setting sag = unit.settings().get(0);
        yield units
            .untouched(unit)
            .withMeasured(
                values,
                List.of(Tolerance.outside(sag, "31").orElseThrow().because("The pump was cold.")));
      }
    };
  }

  private List<String> day(long order, Friend friend) throws IOException {
    SetClock clock = new SetClock(Instant.parse("2026-11-14T08:00:00Z"));
    Path file = folder.resolve(friend + "-" + order + ".blindlap");
    try (Desk desk =
        new Desk(
            SqliteNotebook.open(file, FixedSources.stream(50).exactly(16), clock.instant()),
            clock,
            FixedSources.order(order),
            new SealParameters(1),
            FixedSources.stream(60))) {
      Plan plan = desk.planning().preview(AloneDayTest.text("prepared")).plan().orElseThrow();
      SessionKind kind =
          friend == Friend.NULL_RUN ? SessionKind.nullRun(1) : SessionKind.comparison();
      Committing.Result.Committed committed = Commits.commit(desk, plan, kind, List.of("R. Lind"));
      SessionState state = committed.state();
      String phrase = committed.sealed().phrase().text();
      HelperDay opened = ((HelperDays.Opened.Day) desk.helperDays().open(state, phrase)).day();
      PreparedUnits units = new PreparedUnits(opened);
      orders.add(units.units().stream().map(PreparedUnits.Unit::setup).toList().toString());
      done(units.write(units.units().stream().map(u -> packed(units, u, friend)).toList()));
      AloneDay day = desk.aloneDays().day(state).orElseThrow();
      for (int stint = 0; stint <= 8; stint++) {
        mountAndRide(desk, day, clock, stint);
      }
      done(desk.sessions().act(state.id(), s -> new LifeCommands(s).closeDay()));
      done(desk.keys().closeReview(state.id()));
      return visible(desk, desk.sessions().state(state.id()).orElseThrow(), file);
    }
  }

  private static void mountAndRide(Desk desk, AloneDay day, SetClock clock, int stint) {
    SessionState now = desk.sessions().state(day.id()).orElseThrow();
    AloneDay.Work work = ((AloneDay.Next.Mount) day.next(now)).work();
    assertThat(work.setup()).isNull();
    MountedUnit unit =
        stint == 5
            ? new MountedUnit(stint, false, "The tape was off.")
            : MountedUnit.asPlanned(stint);
    done(
        day.mount(
            HelperEntry.untouched(stint, "R. Lind", 0)
                .withMeasured(measured(work.settings()), List.of())
                .withConfirmed(EnumSet.allOf(SafetyCheck.class))
                .withFit(now.lapsSoFar(), true),
            unit));
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
      all.add(masked(stored.text()));
    }
    for (SessionSummary summary : desk.notebook().summaries()) {
      all.add(summary.toString());
    }
    for (Map.Entry<String, byte[]> each : desk.reviews().export(state).entrySet()) {
      String text = new String(each.getValue(), java.nio.charset.StandardCharsets.UTF_8);
      all.add(each.getKey() + "\n" + masked(text));
      assertThat(text).as(each.getKey()).doesNotContain("SealOpened");
    }
    byte[] bytes = Files.readAllBytes(file);
    all.add("size " + bytes.length);
    all.add("changes " + ByteBuffer.wrap(bytes, 24, 4).getInt());
    all.add("drafts " + desk.notebook().drafts().keySet());
    return all;
  }

  private static String masked(String text) {
    String sealed =
        SEALED.matcher(text).replaceAll(found -> String.valueOf(found.group(1).length()));
    return HASH.matcher(sealed).replaceAll("*");
  }

  @Test
  void aPreparedDayIsTheSameWhateverTheOrderAndWhateverTheFriendPacked() throws IOException {
    List<String> first = day(1, Friend.AS_PLANNED);
    assertThat(first).hasSizeGreaterThan(40);
    for (long order = 2; order <= 6; order++) {
      assertThat(day(order, Friend.AS_PLANNED)).as("order %d", order).isEqualTo(first);
    }
    assertThat(orders).as("orders drawn").hasSizeGreaterThan(3);
    for (Friend friend : List.of(Friend.ONE_WRONG, Friend.ONE_OUTSIDE, Friend.NULL_RUN)) {
      assertThat(day(3, friend)).as("%s", friend).isEqualTo(first);
    }
  }
}
