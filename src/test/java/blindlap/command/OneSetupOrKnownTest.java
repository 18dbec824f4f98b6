package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Null runs and unblinded sessions, wherever their answer is told. */
class OneSetupOrKnownTest {
  private static final String SERIES = "series: k-or-l\nseries_sessions: 2\n";

  /** Fonts inside the report: long, and no words. */
  private static final Pattern DATA = Pattern.compile("data:font[^)]*");

  @TempDir Path folder;
  private CommandLineSession day;

  @BeforeEach
  void start() {
    day = new CommandLineSession(folder);
  }

  private String ok(String... typed) {
    CommandLineSession.Ran ran = day.run(typed);
    assertThat(ran.err()).isEmpty();
    assertThat(ran.code()).isZero();
    return ran.out();
  }

  private String unsealed(String id) {
    ok("record", id, day.file("laps.csv", Plans.laps(8)).toString());
    ok("close-day", id);
    ok("close-review", id);
    ok("unseal", id);
    return id;
  }

  private String nullRun() {
    day.answers.add("Shock K");
    CommandLineSession.Ran ran =
        day.run("commit", "--yes", "--null-run", day.file("plan.yaml", Plans.SMALL).toString());
    assertThat(ran.code()).as(ran.err()).isZero();
    day.types(CommandLineSession.shownPhrase(ran.out()));
    return unsealed(ran.after("sealed: session"));
  }

  /** Everything that a user reads of a session, by where it is read. */
  private Map<String, String> told(String id) throws IOException {
    Map<String, String> all = new TreeMap<>();
    all.put("list", ok("notebook"));
    all.put("review", ok("review", id));
    Path out = folder.resolve("report-" + id);
    ok("report", id, "--out", out.toString());
    try (Stream<Path> files = Files.list(out)) {
      Path html = files.filter(f -> f.toString().endsWith(".html")).findFirst().orElseThrow();
      all.put(
          "report",
          DATA.matcher(Files.readString(html))
              .replaceAll("")
              .replaceAll("(?s)<style.*?</style>", ""));
    }
    return all;
  }

  @Test
  void of_a_null_run_nothing_says_that_a_setup_was_faster_or_slower() throws IOException {
    String id = nullRun();
    Map<String, String> told = told(id);
    told.forEach(
        (where, text) ->
            assertThat(text)
                .as(where)
                .doesNotContain("faster than Shock", "slower than Shock")
                .doesNotContain("Shock L was", "Shock K was 0", "Shock K was 1"));
    assertThat(told.get("list"))
        .contains("null run: ")
        .contains("one setup was on under both names, whose laps differ by ");
    assertThat(told.get("review")).contains("by the names alone Shock L less Shock K is ");
    assertThat(told.get("report"))
        .contains("by the names alone Shock L less Shock K is ")
        .contains("One setup was on in every stint.");
  }

  @Test
  void an_unblinded_session_says_so_before_its_difference_and_is_found_by_it() throws IOException {
    String id = unsealed(day.commit(Plans.SMALL + "blinding: {blinded: no}\n"));
    Map<String, String> told = told(id);
    assertThat(told.get("list"))
        .contains("unblinded: ")
        .contains("known to the rider, Shock L less Shock K is ")
        .doesNotContain("faster than", "slower than");
    assertThat(told.get("review")).contains("nblinded");
    assertThat(told.get("report")).contains("nblinded");
    String blind = unsealed(day.commit(Plans.SMALL.replace("quicker", "smoother")));
    assertThat(ok("notebook", "--search", "known to the rider"))
        .contains(id.substring(0, 8))
        .doesNotContain(blind.substring(0, 8));
  }

  @Test
  void a_search_finds_a_null_run_by_its_words() {
    String plain = unsealed(day.commit(Plans.SMALL.replace("quicker", "smoother")));
    String id = nullRun();
    assertThat(ok("notebook", "--search", "one setup both names"))
        .contains(id.substring(0, 8))
        .doesNotContain(plain.substring(0, 8));
  }

  @Test
  void an_unblinded_session_in_a_series_is_called_so_by_it() {
    String plan = Plans.SMALL + SERIES + "blinding: {blinded: no}\n";
    String first = day.commit(plan);
    String phrase = day.phrase();
    ok("record", first, day.file("laps.csv", Plans.laps(8)).toString());
    ok("close-day", first);
    ok("close-review", first);
    unsealed(day.commit(plan));
    day.types(phrase);
    ok("unseal", first);
    assertThat(ok("series", "k-or-l")).containsIgnoringCase("unblinded");
  }
}
