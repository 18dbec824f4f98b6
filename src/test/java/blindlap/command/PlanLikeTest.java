package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.exchange.PlanText;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Another day like an earlier one, and a series from there on. */
class PlanLikeTest {
  @TempDir Path folder;
  private CommandLineSession day;
  private String session = "";

  @BeforeEach
  void rideADay() {
    day = new CommandLineSession(folder);
    session = day.commit(Plans.SMALL);
    assertThat(day.run("record", session, day.file("l.csv", Plans.laps(8)).toString()).code())
        .isZero();
    assertThat(day.run("close-day", session).code()).isZero();
    assertThat(day.run("close-review", session).code()).isZero();
  }

  private Map<String, Object> planFile(String... more) throws Exception {
    Path out = folder.resolve("again.yaml");
    Files.deleteIfExists(out);
    String[] all = new String[5 + more.length];
    String[] first = {"plan", "--like", session, "--out", out.toString()};
    System.arraycopy(first, 0, all, 0, 5);
    System.arraycopy(more, 0, all, 5, more.length);
    CommandLineSession.Ran ran = day.run(all);
    assertThat(ran.code()).as(ran.err()).isZero();
    return PlanText.read(Files.readString(out)).fields();
  }

  @Test
  void theNoiseOfADayIsTakenOnlyOnceItIsUnsealed() throws Exception {
    Object declared = planFile().get("noise");
    assertThat(day.run("plan", "--like", session).out()).contains("tell no noise");

    assertThat(day.run("unseal", session).code()).isZero();

    Object known = planFile().get("noise");
    assertThat(known).isNotEqualTo(declared).asString().contains("sd=", "df=5");
    assertThat(day.run("plan", "--like", session).out())
        .contains("Noise from opened days: ")
        .contains("Another order is drawn at commit.");
  }

  @Test
  void aSeriesFromHereOnIsDeclaredAndTheFindingStaysOutsideItsPool() throws Exception {
    assertThat(day.run("unseal", session).code()).isZero();
    Map<String, Object> fields = planFile("--series-of", "3");
    String series = String.valueOf(fields.get("series"));

    assertThat(fields).containsEntry("series_sessions", "3").containsEntry("day", null);
    String again = Files.readString(folder.resolve("again.yaml"));
    Path dated = day.file("dated.yaml", again.replaceFirst("(?m)^day:", "day: 2026-11-21"));
    assertThat(day.run("plan", "--days", "20", dated.toString()).out())
        .contains("A session of the series " + series + ", declared to have 3.")
        .contains("stays outside its pool");
    assertThat(day.run("commit", dated.toString()).code()).isZero();
    CommandLineSession.Ran found = day.run("series", series);
    assertThat(found.code()).as(found.err()).isZero();
    assertThat(day.run("series").out()).contains(series);
    // The pool has the one session that was committed under the declaration.
    assertThat(day.run("series", series, "--json").out()).doesNotContain(session);
  }

  @Test
  void aSecondSeriesFromTheSameDayHasAnotherName() throws Exception {
    String first =
        day.run("plan", "--like", session, "--series-of", "2").after("declares the series ");
    String second =
        day.run("plan", "--like", session, "--series-of", "2").after("declares the series ");

    assertThat(second).isNotEqualTo(first).startsWith(first);
  }

  @Test
  void whatCannotBeMadeIsRefusedAndNothingIsMade() throws Exception {
    Path there = day.file("there.yaml", "keep me");

    assertThat(day.run("plan").err()).contains("one of the three");
    assertThat(day.run("plan", there.toString(), "--like", session).err())
        .contains("one of the three");
    assertThat(day.run("plan", "--series-of", "3", there.toString()).err())
        .contains("go with --like only");
    assertThat(day.run("plan", "--like", session, "--series-of", "1").err())
        .contains("2 to 100 sessions, not 1");
    assertThat(day.run("plan", "--like", "ffff").code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(day.run("plan", "--like", session, "--out", there.toString()).err())
        .contains("It was kept");
    assertThat(Files.readString(there)).isEqualTo("keep me");
  }
}
