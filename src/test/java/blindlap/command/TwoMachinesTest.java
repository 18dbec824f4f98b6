package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two machines that recorded the same laps, by command. */
class TwoMachinesTest {
  private static final String TYPO = "typing error: a digit was lost";

  @TempDir Path folder;
  private CommandLineSession hut;
  private CommandLineSession home;

  @BeforeEach
  void twoMachines() throws IOException {
    hut = new CommandLineSession(Files.createDirectory(folder.resolve("hut")), 1);
    home = new CommandLineSession(Files.createDirectory(folder.resolve("home")), 2);
  }

  private static CommandLineSession.Ran ok(CommandLineSession machine, String... arguments) {
    CommandLineSession.Ran ran = machine.run(arguments);
    assertThat(ran.err()).isEmpty();
    assertThat(ran.code()).isZero();
    return ran;
  }

  private static Path laps(CommandLineSession machine, String fifth) {
    StringBuilder csv = new StringBuilder("lap;lap time;grip\n");
    for (int lap = 1; lap <= 8; lap++) {
      csv.append(lap)
          .append(lap == 5 ? ";" + fifth : ";9" + lap + ".4")
          .append(";")
          .append(40 + lap);
      csv.append('\n');
    }
    return machine.file("laps.csv", csv.toString());
  }

  /** Both have the session and their own record of it; lap 5 differs. */
  private String apart(String plan) {
    String session = hut.commit(plan);
    ok(home, "bring-in", hut.notebook.toString());
    ok(hut, "record", session, laps(hut, "9.54").toString());
    ok(home, "record", session, laps(home, "95.4").toString());
    return session;
  }

  private CommandLineSession.Ran correct(
      CommandLineSession machine, String session, String... more) {
    Path file = machine.file("fifth.csv", "lap;lap time;grip\n5;95.4;45\n");
    List<String> typed =
        new java.util.ArrayList<>(List.of("record", session, file.toString(), "--correct"));
    typed.addAll(List.of(more));
    return machine.run(typed.toArray(new String[0]));
  }

  @Test
  void bringing_in_names_the_lap_at_once_and_tells_no_value() {
    String session = apart(Plans.SMALL);
    CommandLineSession.Ran brought = ok(hut, "bring-in", home.notebook.toString());
    assertThat(brought.out())
        .contains("recorded differently on two machines: lap 5 (lap time)")
        .doesNotContain("95.4", "9.54");
    assertThat(ok(hut, "bring-in", home.notebook.toString()).out())
        .as("what was known already is not told again")
        .doesNotContain("recorded differently");
    assertThat(ok(hut, "close-day", session).out())
        .contains("the starter's record counts by the plan")
        .contains("Lap 5, lap time: machines recorded different values.")
        .contains("0:09.54 (whose record is not said, notebook")
        .contains("is set aside");
  }

  @Test
  void another_value_counts_only_as_a_typing_error_by_someone_who_knows_neither() {
    String session = apart(Plans.SMALL + "blinding: {helper: M. Oster}\n");
    ok(hut, "bring-in", home.notebook.toString());
    for (String[] refused :
        new String[][] {
          {"--reason", TYPO},
          {"--reason", TYPO, "--decided-by", "E. Moor"},
          {"--reason", "it was faster", "--decided-by", "E. Moor", "--knows-neither"},
          {"--reason", TYPO, "--decided-by", "m. oster", "--knows-neither"}
        }) {
      CommandLineSession.Ran ran = correct(hut, session, refused);
      assertThat(ran.code()).isEqualTo(ExitCode.BAD_INPUT);
      assertThat(ran.err()).contains("Nothing was changed");
    }
    CommandLineSession.Ran chosen =
        correct(hut, session, "--reason", TYPO, "--decided-by", "E. Moor", "--knows-neither");
    assertThat(chosen.err()).isEmpty();
    assertThat(ok(hut, "close-day", session).out())
        .contains("1:35.4 (whose record is not said")
        .contains("counts, as E. Moor decided");
    ok(hut, "close-review", session);
    ok(hut, "unseal", session);
    assertThat(ok(hut, "review", session).out())
        .contains("So decided E. Moor, who declared to know neither key nor setups.")
        .contains("With the values set aside in stint 5");
  }

  @Test
  void in_an_unblinded_session_nobody_chooses() {
    String session = apart(Plans.SMALL + "blinding: {blinded: no}\n");
    ok(hut, "bring-in", home.notebook.toString());
    CommandLineSession.Ran ran =
        correct(hut, session, "--reason", TYPO, "--decided-by", "E. Moor", "--knows-neither");
    assertThat(ran.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(ran.err()).contains("In an unblinded session nobody may choose");
  }

  @Test
  void both_machines_find_the_same_and_the_package_says_what_was_set_aside() throws IOException {
    String session = apart(Plans.SMALL);
    ok(hut, "bring-in", home.notebook.toString());
    ok(home, "bring-in", hut.notebook.toString());
    ok(home, "close-day", session);
    ok(home, "close-review", session);
    home.types(hut.phrase());
    ok(home, "unseal", session);
    ok(hut, "bring-in", home.notebook.toString());
    String found = ok(hut, "review", session).out();
    assertThat(ok(home, "review", session).out()).isEqualTo(found);
    assertThat(found)
        .contains("Lap 5, lap time: machines recorded different values. 9.54")
        .contains("With the values set aside in stint 5, which other machines recorded:");
    Path out = folder.resolve("package");
    ok(hut, "export", session, "--out", out.toString());
    assertThat(Files.readString(out.resolve("record.csv")))
        .contains("counts,5,5,lap time,,,9.54,")
        .contains("set_aside,5,5,lap time,,95.4,9.54,");
    CommandLineSession.Ran again = home.run("review", "--from", out.toString(), "--json");
    assertThat(again.code()).isZero();
    assertThat(again.out())
        .contains("\"kind\" : \"set aside\"")
        .isEqualTo(ok(hut, "review", session, "--json").out());
    ok(hut, "report", session, "--out", folder.resolve("report").toString());
    try (java.util.stream.Stream<Path> files = Files.list(folder.resolve("report"))) {
      Path html = files.filter(f -> f.toString().endsWith(".html")).findFirst().orElseThrow();
      assertThat(Files.readString(html))
          .contains("machines recorded different values")
          .contains("With the values set aside in stint 5");
    }
  }

  @Test
  void of_every_measure_the_result_with_the_values_set_aside_stands_beside() throws IOException {
    String session = hut.commit(Plans.SMALL);
    ok(home, "bring-in", hut.notebook.toString());
    ok(hut, "record", session, laps(hut, "95.4").toString());
    String other = Files.readString(laps(home, "95.4")).replace(";95.4;45", ";95.4;95");
    ok(home, "record", session, home.file("laps.csv", other).toString());
    ok(hut, "bring-in", home.notebook.toString());
    ok(hut, "close-day", session);
    ok(hut, "close-review", session);
    ok(hut, "unseal", session);
    String beside = "grip, with the values set aside in stint 5, which other machines recorded:";
    assertThat(ok(hut, "review", session).out())
        .contains(beside)
        .containsPattern(beside + ".*p = ");
    ok(hut, "report", session, "--out", folder.resolve("report").toString());
    try (java.util.stream.Stream<Path> files = Files.list(folder.resolve("report"))) {
      Path html = files.filter(f -> f.toString().endsWith(".html")).findFirst().orElseThrow();
      assertThat(Files.readString(html)).contains(beside);
    }
    JsonNode json = new ObjectMapper().readTree(ok(hut, "review", session, "--json").out());
    assertThat(json.get("sensitivity")).as("of lap time nothing was set aside").isEmpty();
    assertThat(json.get("measures").get(0).has("set_aside")).isFalse();
    JsonNode grip = json.get("measures").get(1);
    JsonNode aside = grip.get("set_aside").get(0);
    assertThat(aside.get("stints").get(0).asInt()).isEqualTo(5);
    assertThat(Math.abs(aside.get("estimate").asDouble() - grip.get("estimate").asDouble()))
        .isGreaterThan(5);
    assertThat(json.get("requests").findValuesAsText("about")).contains("sensitivity.SET_ASIDE");
    Path out = folder.resolve("package");
    ok(hut, "export", session, "--out", out.toString());
    assertThat(ok(home, "review", "--from", out.toString()).out()).contains(beside);
  }

  @Test
  void what_came_too_late_is_named_with_lap_value_reason_and_notebook() {
    String session = hut.commit(Plans.SMALL);
    ok(hut, "record", session, laps(hut, "95.4").toString());
    ok(home, "bring-in", hut.notebook.toString());
    ok(home, "void", session, "7", "--reason", "traffic", "--words", "walkers");
    assertThat(correctFourth(session).err()).isEmpty();
    ok(hut, "close-day", session);
    ok(hut, "close-review", session);
    ok(hut, "unseal", session);
    ok(hut, "bring-in", home.notebook.toString());
    assertThat(ok(hut, "review", session).out())
        .containsPattern(
            "Lap 7: a void came too late, so it is kept and not applied \\(traffic, walkers;"
                + " written in notebook [0-9a-f]{8}\\)")
        .containsPattern(
            "Lap 4: a correction came too late, so it is kept and not applied \\(lap time 93,"
                + " misread; written in notebook [0-9a-f]{8}\\)");
    assertThat(ok(hut, "review", session, "--json").out())
        .containsPattern("\"lap\" : 7,\\s+\"measure\" : \"\",\\s+\"value\" : \"traffic\"")
        .containsPattern("\"lap\" : 4,\\s+\"measure\" : \"lap time\",\\s+\"value\" : \"93\"");
    Path out = folder.resolve("package");
    ok(hut, "export", session, "--out", out.toString());
    assertThat(home.run("review", "--from", out.toString(), "--json").code()).isZero();
  }

  private CommandLineSession.Ran correctFourth(String session) {
    Path file = home.file("fourth.csv", "lap;lap time;grip\n4;93;44\n");
    return home.run("record", session, file.toString(), "--correct", "--reason", "misread");
  }
}
