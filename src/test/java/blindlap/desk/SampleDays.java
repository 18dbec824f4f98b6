package blindlap.desk;

import blindlap.sample.SampleClock;
import blindlap.sample.SampleSession;
import blindlap.sample.SampleSources;
import blindlap.seal.SealParameters;
import blindlap.session.SessionState;
import blindlap.session.day.LapId;
import blindlap.store.SqliteNotebook;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Map;
import java.util.function.BiConsumer;

/**
 * The invented sessions, taken through their whole lives in a notebook of their own. As a program
 * it writes what comes of them (text, JSON, report, data package) to a folder, one folder a sample.
 */
public final class SampleDays {
  private static final ZoneId ZONE = ZoneId.of("Europe/Vienna");

  private static final String ONE_MEASURE =
      TestDay.SIXTEEN.replaceAll(" *- \\{name: (grip|harshness|trust|feet)[^\n]*\n", "");

  private SampleDays() {}

  /** Rides a sample in a fresh notebook and looks at it while the desk is open. */
  public static void ride(String name, BiConsumer<Desk, SessionState> look) {
    with(name, (desk, sample) -> look.accept(desk, sample.whole()));
  }

  /** Looks at a sample whose day is closed and whose key is sealed, knowing the helper's phrase. */
  public interface SealedLook {
    void at(Desk desk, SessionState state, String phrase);
  }

  /** Rides a sample up to the closed day. */
  public static void sealed(String name, SealedLook look) {
    with(
        name,
        (desk, sample) -> {
          Committing.Result.Committed committed = sample.commit();
          SessionState state =
              sample.closeDay(
                  sample.happenings(sample.record(committed.state()), committed.sealed()));
          look.at(desk, state, committed.sealed().phrase().text());
        });
  }

  /** A desk and a sample not yet committed. */
  static void with(String name, BiConsumer<Desk, SampleSession> look) {
    try {
      Path notebook = Files.createTempDirectory("sample").resolve("sample.blindlap");
      Clock clock =
          new SampleClock(day(name).atTime(LocalTime.of(9, 0)).atZone(ZONE).toInstant(), ZONE);
      var ids = SampleSources.stream(name, "id");
      try (Desk desk =
          new Desk(
              SqliteNotebook.open(notebook, ids.exactly(16), clock.instant()),
              clock,
              SampleSources.of(name),
              new SealParameters(1_000),
              ids)) {
        look.accept(desk, new SampleSession(name, desk));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static java.time.LocalDate day(String name) {
    return PlanPreview.of(
            BundledProtocols.text("/blindlap/sample-sessions/" + name + "/plan.yaml"),
            BundledProtocols.load())
        .plan()
        .orElseThrow()
        .day();
  }

  /** Writes everything of every sample to the folder given. */
  public static void main(String[] arguments) {
    for (String name : SampleSession.ALL) {
      ride(name, (desk, state) -> write(Path.of(arguments[0]).resolve(name), desk, state));
    }
    timed(Path.of(arguments[0]).resolve("day-with-timed-handlings"));
  }

  /** No sample has a helper's page: one day more has waits that are tested. */
  private static void timed(Path folder) {
    try (TestDay day = new TestDay(Files.createTempDirectory("waits"), ONE_MEASURE, 3)) {
      DayWaitsTest.ride(
          day,
          stint -> {
            LapId lap = new LapId(stint, 1);
            day.watched(lap, "lap time", 95 + stint * stint % 7);
            day.desk().riderDays().ridden(day.id(), lap);
          });
      write(folder, day.desk(), day.state());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void write(Path folder, Desk desk, SessionState state) {
    try {
      Files.createDirectories(folder);
      Files.writeString(
          folder.resolve("finding.txt"), String.join("\n", desk.reviews().text(state)) + "\n");
      Files.writeString(folder.resolve("review.json"), desk.reviews().json(state));
      for (boolean black : new boolean[] {false, true}) {
        for (Map.Entry<String, byte[]> file : desk.reviews().report(state, black).entrySet()) {
          String ending = file.getKey().substring(file.getKey().lastIndexOf('.'));
          Files.write(
              folder.resolve((black ? "report-black" : "report") + ending), file.getValue());
        }
      }
      Path packed = Files.createDirectories(folder.resolve("package"));
      for (Map.Entry<String, byte[]> file : desk.reviews().export(state).entrySet()) {
        Files.write(packed.resolve(file.getKey()), file.getValue());
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
