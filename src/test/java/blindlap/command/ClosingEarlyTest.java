package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.phone.FakePhones;
import blindlap.session.day.PhoneRole;
import blindlap.session.day.SessionId;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A day of which laps are missing, closed by command. */
class ClosingEarlyTest {
  private static final String MISSING =
      "3 laps are not recorded: 5 of 8 stints are ridden whole. If the day ends early, say so with"
          + " its reason instead.";

  @TempDir Path folder;
  private CommandLineSession day;
  private String session;

  @BeforeEach
  void five_of_eight_laps_are_ridden() {
    day = new CommandLineSession(folder);
    session = day.commit(Plans.SMALL);
    record(5);
  }

  private void record(int laps) {
    Path file = day.file("laps.csv", Plans.laps(laps));
    assertThat(day.run("record", session, file.toString()).code()).isZero();
  }

  private boolean open() {
    return day.run("close-review", session).err().contains("close the day first");
  }

  @Test
  void what_is_missing_is_said_and_asked_about_before_the_day_closes() {
    for (String answer : List.of("no", " N ", CommandLineSession.NOBODY)) {
      day.handsOver.add(answer);
      CommandLineSession.Ran ran = day.run("close-day", session);
      assertThat(ran.code()).isEqualTo(ExitCode.BAD_INPUT);
      assertThat(ran.out().strip()).isEqualTo(MISSING);
      assertThat(ran.err().strip()).isEqualTo("The day stays open; nothing was changed.");
      assertThat(open()).isTrue();
    }
    day.handsOver.addAll(List.of("perhaps", "Yes"));
    CommandLineSession.Ran ran = day.run("close-day", session);
    assertThat(ran.code()).as(ran.err()).isZero();
    assertThat(ran.err().strip()).isEqualTo("Type yes or no.");
    assertThat(ran.out()).startsWith(MISSING).contains("Day closed with 5 laps.");
    assertThat(open()).isFalse();
  }

  @Test
  void without_a_terminal_the_day_stays_open_unless_told_otherwise() {
    day.present = false;
    CommandLineSession.Ran ran = day.run("close-day", session);
    assertThat(ran.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(ran.out()).isEmpty();
    assertThat(ran.err()).startsWith(MISSING).contains("the day stays open", "--yes");
    assertThat(open()).isTrue();
    CommandLineSession.Ran told = day.run("close-day", session, "--yes");
    assertThat(told.code()).as(told.err()).isZero();
    assertThat(told.out()).startsWith(MISSING).contains("Day closed with 5 laps.");
  }

  @Test
  void a_whole_day_and_one_that_was_cut_short_close_without_a_question() {
    String other = session;
    session = day.commit(Plans.SMALL);
    record(8);
    day.present = false;
    for (String whole : List.of(session, other)) {
      if (whole.equals(other)) {
        CommandLineSession.Ran cut =
            day.run(
                "cut-short",
                other,
                "--after-stint",
                "5",
                "--reason",
                "rain",
                "--decided-by",
                "rider");
        assertThat(cut.code()).as(cut.err()).isZero();
      }
      CommandLineSession.Ran ran = day.run("close-day", whole);
      assertThat(ran.code()).as(ran.err()).isZero();
      assertThat(ran.out()).startsWith("Day closed with").doesNotContain("not recorded");
    }
  }

  @Test
  void answers_that_phones_keep_are_said_and_asked_about_though_every_lap_is_recorded() {
    session = day.commit(Plans.SMALL);
    record(8);
    FakePhones phones = day.phones.phones(new SessionId(session));
    phones.come("1a2b3c4d", PhoneRole.RIDER, true, Instant.parse("2026-11-14T08:00:00Z"), 3);
    phones.come("9aabbccd", PhoneRole.STARTER, true, Instant.parse("2026-11-14T07:50:00Z"), 0);
    day.handsOver.add("no");

    CommandLineSession.Ran ran = day.run("close-day", session);

    assertThat(ran.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(ran.out())
        .startsWith("The rider's phone 1a2b3c4d keeps 3 answers that are not in the notebook")
        .contains("The starter's phone 9aabbccd was last heard 10 min ago");
    assertThat(ran.err().strip()).isEqualTo("The day stays open; nothing was changed.");
    assertThat(open()).isTrue();
    day.present = false;
    assertThat(day.run("close-day", session).err()).contains("keeps 3 answers", "--yes");
    assertThat(open()).isTrue();
    CommandLineSession.Ran told = day.run("close-day", session, "--yes");
    assertThat(told.code()).as(told.err()).isZero();
    assertThat(told.out()).contains("keeps 3 answers", "Day closed with 8 laps.");
  }

  @Test
  void the_finding_says_how_many_stints_were_ridden() {
    assertThat(day.run("close-day", session, "--yes").code()).isZero();
    assertThat(day.run("close-review", session).code()).isZero();
    assertThat(day.run("unseal", session).code()).isZero();
    assertThat(day.run("review", session).out())
        .contains("5 of 8 stints ridden. With 5 of 8 stints left the smallest possible p was");
  }
}
