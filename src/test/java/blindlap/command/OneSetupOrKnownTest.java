package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.desk.Keys;
import blindlap.session.SessionState;
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

  /** What would say that a setup was ahead of, or behind, another. */
  private static final Pattern AHEAD =
      Pattern.compile(
          "(?i)\\b(faster|slower|quicker|better|worse|longer|shorter|higher|lower|fewer|more|less)"
              + " (a lap )?than Shock|Shock [KLM]( [0-9.,]+ (s|%|points))?"
              + " (faster|slower|longer|higher|lower|fewer|more)\\b|(best|quickest) first|Shock"
              + " [KLM] (did harm|is slower)");

  private static final String ALL_ROLES =
      """
      question: Do two names feel alike?
      rider: R. Lind
      trail: Quarry loop
      day: 2026-11-14
      setups:
        - {name: Shock K, price: {amount: 480, currency: EUR}, mass: 1400 g}
        - {name: Shock L, price: {amount: 620, currency: EUR}, mass: 1350 g}
      measures:
        - {name: lap time, kind: lap time, unit: s, role: primary, worthwhile: 0.5}
        - {name: grip, kind: line scale, unit: points, low_words: none, high_words: full}
        - {name: dabs, kind: count, unit: a lap, better: lower}
        - {name: arms, kind: line scale, unit: points, role: watch for harm, worthwhile: 2,
           better: lower, low_words: fresh, high_words: pumped}
      protocol: eight-stints
      stints: 8
      """;

  /** Values that follow the nominal order as if one name were far ahead, with a void lap. */
  private String ahead(String plan) throws IOException {
    day.answers.add("Shock K");
    CommandLineSession.Ran ran =
        day.run("commit", "--yes", "--null-run", day.file("plan.yaml", plan).toString());
    assertThat(ran.code()).as(ran.err()).isZero();
    String id = ran.after("sealed: session");
    String phrase = CommandLineSession.shownPhrase(ran.out());
    int stints = plan.contains("stints: 8") ? 8 : 12;
    StringBuilder laps = new StringBuilder("lap;lap time;grip;dabs;arms\n");
    try (Desk desk = day.desk()) {
      SessionState state = desk.sessions().find(id).state().orElseThrow();
      Keys.Result.Open open = (Keys.Result.Open) desk.keys().helper(state, phrase);
      for (int lap = 1; lap <= stints; lap++) {
        int on = open.schedule().fit(lap).named();
        laps.append(
            "%d;%d.%d;%d;%d;%d\n"
                .formatted(
                    lap,
                    95 + 4 * on,
                    lap % 4,
                    40 + 9 * on + lap % 3,
                    3 * on,
                    20 + 9 * on + lap % 2));
      }
    }
    day.types(phrase);
    ok("record", id, day.file("laps.csv", laps.toString()).toString());
    ok("void", id, "3", "--reason", "puncture");
    ok("close-day", id);
    ok("close-review", id);
    ok("unseal", id);
    return id;
  }

  /** Every text that is written or printed of a session, by where it stands. */
  private Map<String, String> everywhere(String id) throws IOException {
    Map<String, String> all = told(id);
    all.put("review --json", ok("review", id, "--json"));
    Path out = folder.resolve("package-" + id);
    ok("export", id, "--out", out.toString());
    try (Stream<Path> files = Files.list(out)) {
      for (Path file : files.filter(f -> !f.endsWith("session.txt")).toList()) {
        all.put("package " + file.getFileName(), Files.readString(file));
      }
    }
    all.put("review --from", ok("review", "--from", out.toString()));
    return all;
  }

  private static void nothingAhead(Map<String, String> told) {
    told.forEach(
        (where, text) -> {
          String words = text.replaceAll("<[^>]*>", " ").replaceAll("\\s+", " ");
          assertThat(AHEAD.matcher(words).results().map(found -> around(words, found)))
              .as(where)
              .isEmpty();
        });
  }

  private static String around(String text, java.util.regex.MatchResult found) {
    return text.substring(
        Math.max(0, found.start() - 60), Math.min(text.length(), found.end() + 40));
  }

  @Test
  void no_surface_of_a_null_run_says_of_any_measure_that_a_setup_was_ahead() throws IOException {
    Map<String, String> told = everywhere(ahead(ALL_ROLES));
    assertThat(told).hasSizeGreaterThan(12);
    nothingAhead(told);
    assertThat(told.get("review"))
        .contains("grip: by the names alone Shock L less Shock K is +")
        .contains(
            "By the names alone, one setup being on under both: Shock L against Shock K, arms")
        .contains("Null run, one setup under both names: ")
        .contains("harm in arms by the names alone");
    assertThat(told.get("report")).contains("Shock L less Shock K below 0");
  }

  @Test
  void nor_of_one_with_three_names() throws IOException {
    String three =
        ALL_ROLES
            .replace(
                "measures:\n",
                "  - {name: Shock M, price: {amount: 500, currency: EUR}, mass: 1300 g}\n"
                    + "measures:\n")
            .replace("protocol: eight-stints\nstints: 8", "protocol: three-setups\nstints: 12");
    Map<String, String> told = everywhere(ahead(three));
    nothingAhead(told);
    told.forEach(
        (where, text) -> assertThat(text).as(where).doesNotContain("one setup under both names"));
    assertThat(told.get("review"))
        .contains("by the names alone Shock L less Shock K is ")
        .contains("Null run, one setup under all names: ");
    assertThat(told.get("report")).contains("Null run, one setup under all names: ");
    // Dabs follow the names exactly, so that there is no noise and F is no number.
    assertThat(told.get("report")).contains("dabs");
  }

  @Test
  void the_words_that_are_looked_for_are_found_where_two_setups_were_on() throws IOException {
    String id = unsealed(day.commit(Plans.SMALL));
    assertThat(AHEAD.matcher(told(id).get("review")).find()).isTrue();
  }

  @Test
  void an_unblinded_session_says_so_before_its_difference_and_is_found_by_it() throws IOException {
    String id = unsealed(day.commit(Plans.SMALL + "blinding: {blinded: no}\n"));
    Map<String, String> told = told(id);
    assertThat(told.get("list"))
        .contains("unblinded (open): ")
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
