package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.exchange.PlanReader;
import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What was committed can be read by anyone, and says nothing that is not theirs. */
class CommittedPlanTest {
  private static final String PLAN =
      Plans.SMALL
          + """
          expectations: {tester: Shock K by a second, rider: The soft one, helper: No idea}
          blinding: {helper: M. Oster, cover: Cloth over the shock}
          noise: {usual_difference: 0.75, source: a guess}
          """;

  @TempDir Path folder;
  private CommandLineSession day;

  @BeforeEach
  void start() {
    day = new CommandLineSession(folder);
  }

  private CommandLineSession.Ran read(String session, String... more) {
    String[] all = new String[3 + more.length];
    System.arraycopy(new String[] {"plan", "--committed", session}, 0, all, 0, 3);
    System.arraycopy(more, 0, all, 3, more.length);
    CommandLineSession.Ran ran = day.run(all);
    assertThat(ran.code()).as(ran.err()).isZero();
    return ran;
  }

  @Test
  void itIsReadWithItsFingerprintAndWithoutWhatAnyoneExpects() {
    String session = day.commit(PLAN);
    String fingerprint = day.run("fingerprint", session).out().lines().findFirst().orElseThrow();
    String out = read("latest").out();

    assertThat(out)
        .startsWith("Shock K against Shock L was fixed on 2026-11-14 09:00 CET.")
        .contains(session, fingerprint.substring("plan".length()).strip())
        .contains("Is Shock L quicker than Shock K?", "Cloth over the shock", "0.5 s would change")
        .contains(
            "Shown to nobody before the order is open.",
            "Once the order is open, amendments are made")
        .doesNotContain("by a second", "soft one", "No idea");
  }

  @Test
  void itsFileIsThePlanButForWhatAnyoneExpects() throws Exception {
    String session = day.commit(PLAN);
    Path file = folder.resolve("read.yaml");
    assertThat(read(session, "--out", file.toString()).out()).contains("was written to " + file);
    String text = Files.readString(file);
    Plan committed = plan(PLAN.replaceFirst("(?m)^expectations.*$", ""));

    assertThat(text).doesNotContain("by a second", "soft one", "No idea");
    assertThat(PlanJson.bytes(plan(text))).isEqualTo(PlanJson.bytes(committed));
    assertThat(day.run("plan", "--committed", session, "--out", file.toString()).code())
        .isEqualTo(ExitCode.FILE_TROUBLE);
    assertThat(file).hasContent(text);
  }

  @Test
  void aRuleOfThePlansOwnComesWithEveryCopy() throws Exception {
    String own = "rule: {stints: 6, block: 6, patterns: [ABBAAB, BAABBA, ABABAB, BABABA]}";
    day.commit(
        PLAN.replace("protocol: eight-stints\nstints: 8", own) + "override: only practice\n");
    Path file = folder.resolve("again.yaml");
    assertThat(day.run("plan", "--like", "latest", "--out", file.toString()).code()).isZero();
    String again = Files.readString(file);
    Plan copy = plan(again.replaceFirst("(?m)^day:", "day: 2026-12-01"));

    assertThat(copy.protocol().patterns()).hasSize(4);
    assertThat(copy.protocol().rule(2, 6).block()).isEqualTo(6);
    assertThat(copy.stints()).isEqualTo(6);
  }

  @Test
  void aConcealedNullRunReadsAsAnyOther() {
    String first = commit("", "a");
    String second = commit("Shock K", "b");

    assertThat(second).isEqualTo(first);
  }

  private String commit(String nullRun, String name) {
    CommandLineSession one = new CommandLineSession(folder.resolve(name));
    folder.resolve(name).toFile().mkdirs();
    one.answers.add(nullRun);
    String plan = one.file("plan.yaml", PLAN).toString();
    CommandLineSession.Ran ran = one.run("commit", "--yes", "--null-run", plan);
    assertThat(ran.code()).as(ran.err()).isZero();
    return one.run("plan", "--committed", "latest")
        .out()
        .replaceAll("(?m)^  ([0-9a-f]{8} ?)+$", "  *");
  }

  @Test
  void afterUnsealingItSaysWhatEveryoneExpected() {
    String session = day.commit(PLAN);
    String laps = day.file("l.csv", Plans.laps(8)).toString();
    assertThat(day.run("record", session, laps).code()).isZero();
    assertThat(day.run("close-day", session).code()).isZero();
    assertThat(day.run("close-review", session).code()).isZero();
    assertThat(read(session).out()).doesNotContain("soft one");
    assertThat(day.run("unseal", session).code()).isZero();
    assertThat(day.run("amend", session, "--text", "T", "--reason", "R").code()).isZero();

    assertThat(read(session).out())
        .contains("by a second", "soft one", "amendment: T (reason: R)")
        .doesNotContain("Shown to nobody");
  }

  private static Plan plan(String text) {
    PlanReader.Reading read = PlanReader.read(text, blindlap.plan.Plans.protocols());
    assertThat(read.problems()).isEmpty();
    return Objects.requireNonNull(read.plan());
  }
}
