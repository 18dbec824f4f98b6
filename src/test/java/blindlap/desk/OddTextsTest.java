package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.exchange.HelperEntryText;
import blindlap.fault.Problem;
import blindlap.fault.TextFault;
import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.seal.HelperPhrase;
import blindlap.seal.SealParameters;
import blindlap.seal.Sealed;
import blindlap.seal.Sealing;
import blindlap.seal.SealingSources;
import blindlap.seal.SecureBytes;
import blindlap.seal.SessionKind;
import blindlap.session.Fact;
import blindlap.session.HelperEntry;
import blindlap.session.LifeCommands;
import blindlap.session.Outcome;
import blindlap.session.SafetyCheck;
import blindlap.session.SessionState;
import blindlap.session.StoredEntry;
import blindlap.session.day.DayEvent;
import blindlap.session.day.DeviationKind;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.SessionId;
import blindlap.session.day.Source;
import blindlap.session.day.VoidEvent;
import blindlap.store.SqliteNotebook;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A control character in every text of a day that can be typed: at the door it is refused in one
 * sentence, and a notebook that holds it all the same gives report, page and package.
 */
class OddTextsTest {
  /** A bell, a terminal's colour, a mark that turns letters round, a vertical tab. */
  private static final String ODD = "\u0007\u001B[31m\u000B\u202E";

  private static final String SHOWN = "␇␛[31m␋‹U+202E›";

  private static final String PLAN =
      TestDay.EIGHT
          .replace("question: Is Shock L quicker than Shock K?", "question: \"Wq1~\"")
          .replace("rider: R. Lind", "rider: \"Wq2~\"")
          .replace("trail: Quarry loop", "trail: \"Wq3~\"")
          .replace("name: Shock K", "name: \"Wq4~\"")
          .replace("name: compression", "name: \"Wq5~\"")
          .replace("unit: clicks", "unit: \"Wq6~\"")
          .replace("name: trust", "name: \"Wq7~\"")
          .replace("high_words: unbearable", "high_words: \"Wq8~\"")
          .replace("what: shock bolts", "what: \"Wq9~\"")
          .replace("Rider in the hut", "\"Wq10~\"")
          .replace("cover: Cloth over the shock", "cover: \"Wq11~\"")
          .replace("helper: M. Oster", "helper: \"Wq12~\"")
          .replace("p. 14\"", "p. 14 Wq13~\"")
          .replace("check: each lap", "check: \"each lap Wq14~\"");

  private static final int FIELDS = 14;
  private static final String TIME = "lap time";

  private @TempDir(factory = RamFolder.class) Path folder;

  private static LapId lap(int stint) {
    return new LapId(stint, 1);
  }

  /** Every fact in which a person's words stand, said of the day. */
  private static List<Fact> facts(String words) {
    return List.of(
        new Fact.FingerprintGiven(Fact.Which.PLAN, "to" + words, null),
        new Fact.ExpectationGiven(Fact.Person.STARTER, "expects" + words),
        new Fact.SheetReprinted("sheet" + words),
        new Fact.DeviationNoted(2, DeviationKind.OTHER, "deviation" + words),
        new Fact.NoteWritten(lap(1), "note" + words),
        new Fact.GuessGiven(1, new Guess(0, Guess.Sureness.HUNCH, "cue" + words)),
        new Fact.ConditionsNoted(lap(1), Map.of("wind", "wind" + words)),
        new Fact.BlindBroken(2, "broken" + words),
        new Fact.LapVoided(lap(5), VoidEvent.TRAFFIC, "void" + words, false),
        new Fact.LapVoided(lap(6), VoidEvent.STOPPED, "gone" + words, false),
        new Fact.VoidWithdrawn(lap(6), "withdrawn" + words),
        new Fact.ScoreCorrected(lap(3), TIME, new BigDecimal("93.3"), "correction" + words),
        new Fact.DayCutShort(7, "cut" + words, "decider" + words, false));
  }

  private static final List<String> SAID =
      List.of(
          "to",
          "expects",
          "sheet",
          "deviation",
          "note",
          "cue",
          "wind",
          "broken",
          "void",
          "gone",
          "withdrawn",
          "correction",
          "cut",
          "decider");

  private static List<Fact> ridden() {
    List<Fact> facts = new ArrayList<>();
    for (int stint = 1; stint <= 7; stint++) {
      facts.add(new Fact.LapRidden(lap(stint), Source.SCREEN));
      facts.add(new Fact.ScoreGiven(lap(stint), TIME, new BigDecimal("9" + stint), Source.SCREEN));
    }
    return facts;
  }

  @Test
  void everyTextOfAPlanIsLookedAtWithItsPlace() {
    for (int field = 1; field <= FIELDS; field++) {
      String odd = PLAN.replace("Wq" + field + "~", "Wq\\a").replace("~", "");
      assertThat(odd).contains("Wq\\a");
      PlanPreview preview = PlanPreview.of(odd);
      assertThat(preview.problems().stream().map(Problem::fault))
          .as("field %d: %s", field, preview.problems())
          .containsAnyOf(TextFault.CONTROL, blindlap.plan.PlanFault.WRONG_VALUE);
      assertThat(preview.problems()).noneMatch(problem -> problem.where().isBlank());
    }
    assertThat(
            PlanPreview.of(PLAN.replace("each lap Wq14~", "each lap").replace("~", "")).problems())
        .isEmpty();
  }

  @Test
  void everyTextOfAFactIsRefusedAndNothingIsWritten() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 3)) {
      ridden().forEach(fact -> write(day, fact));
      int before = day.desk().notebook().entries(day.id()).size();
      for (Fact fact : facts(ODD)) {
        assertThat(write(day, fact))
            .isInstanceOfSatisfying(
                Sessions.Result.Refused.class,
                refused ->
                    assertThat(refused.problems().get(0).fault()).isEqualTo(TextFault.CONTROL));
      }
      HelperDay helper = day.helper();
      for (String where : List.of("helper", "note", "said", "outside")) {
        assertThat(helper.write(entry(1, 0, where, ODD)))
            .as(where)
            .isInstanceOf(Sessions.Result.Refused.class);
      }
      assertThat(day.desk().notebook().entries(day.id())).hasSize(before);
    }
  }

  private static Sessions.Result write(TestDay day, Fact fact) {
    return day.desk().sessions().act(day.id(), latest -> Outcome.accepted(fact));
  }

  private static HelperEntry entry(int stint, int setup, String where, String odd) {
    List<HelperEntry.Outside> outside =
        List.of(
            new HelperEntry.Outside(
                "sag",
                "26",
                "24",
                new BigDecimal("-2"),
                "outside" + (where.equals("outside") ? odd : "")));
    return new HelperEntry(
        stint,
        "helper" + (where.equals("helper") ? odd : ""),
        setup,
        setup,
        Instant.parse("2026-11-14T09:00:00Z"),
        Instant.parse("2026-11-14T09:01:00Z"),
        Map.of("sag", "24"),
        outside,
        EnumSet.allOf(SafetyCheck.class),
        new TreeMap<>(Map.of(0, true)),
        List.of(
            new HelperEntry.Said(
                stint, DayEvent.COVER_OFF, "said" + (where.equals("said") ? odd : ""))),
        "note" + (where.equals("note") ? odd : ""));
  }

  /** A day as a notebook of an earlier program may hold it: nobody looked at its texts. */
  private SessionState old(Desk desk, Sealing sealing) {
    String yaml = PLAN.replace("each lap Wq14~", "each lap").replace("~", "\\a\\e[31m\\v\\u202E");
    Plan plan = PlanPreview.of(yaml).plan().orElseThrow();
    SessionId id = SessionId.of(FixedSources.stream(9).exactly(16));
    byte[] bytes = PlanJson.bytes(plan);
    Sealed sealed =
        sealing.seal(
            bytes,
            plan.rule(),
            id.text(),
            SessionKind.comparison(),
            sealing.drawPhrase(plan.rule()).unasked());
    String text = new String(bytes, StandardCharsets.UTF_8);
    append(
        desk,
        id,
        List.of(
            new Fact.PlanCommitted(
                plan,
                text,
                sealed.key(),
                sealed.fingerprint(),
                sealed.codes(),
                List.of("x" + ODD))));
    append(desk, id, ridden());
    append(desk, id, List.of(record(desk, sealing, id, sealed.phrase())));
    append(desk, id, facts(ODD));
    append(desk, id, List.of(new Fact.DayClosed()));
    desk.sessions().act(id, latest -> new LifeCommands(latest).closeReview());
    desk.keys().unseal(desk.sessions().state(id).orElseThrow(), sealed.phrase().text());
    append(desk, id, List.of(new Fact.AmendmentMade("amended" + ODD, "because" + ODD)));
    return desk.sessions().state(id).orElseThrow();
  }

  private static Fact record(Desk desk, Sealing sealing, SessionId id, HelperPhrase phrase) {
    SessionState state = desk.sessions().state(id).orElseThrow();
    Keys.Result.Open open = (Keys.Result.Open) desk.keys().helper(state, phrase.text());
    HelperEntry entry = entry(1, 0, "note", ODD);
    return new Fact.StintHandled(
        sealing.record(open.lock(), id.text(), 1, HelperEntryText.write(entry, state.plan())));
  }

  private static void append(Desk desk, SessionId id, List<Fact> facts) {
    List<StoredEntry> entries = desk.notebook().entries(id);
    assertThat(
            desk.notebook()
                .append(
                    id,
                    entries.isEmpty() ? List.of() : SessionState.of(entries).heads(),
                    facts,
                    desk.clock().instant(),
                    desk.clock().getZone()))
        .isPresent();
  }

  private static void quiet(String name, String text) {
    assertThat(text.codePoints().filter(c -> c != '\n' && Character.isISOControl(c)).toArray())
        .as(name)
        .isEmpty();
    assertThat(text.indexOf('\u202E')).as(name).isNegative();
  }

  @Test
  void aNotebookThatHoldsThemAllTheSameGivesReportPageAndPackage() throws IOException {
    SetClock clock = new SetClock(Instant.parse("2026-11-14T08:00:00Z"));
    SecureBytes ids = FixedSources.stream(7);
    SealingSources sources = FixedSources.order(5);
    SealParameters quick = new SealParameters(1);
    SqliteNotebook notebook =
        SqliteNotebook.open(folder.resolve("old.blindlap"), ids.exactly(16), clock.instant());
    try (Desk desk = new Desk(notebook, clock, sources, quick, ids)) {
      SessionState state = old(desk, new Sealing(sources, quick));
      assertThat(desk.notebook().verify().sound()).isTrue();

      String html = desk.reviews().html(state, false);
      quiet("page", html);
      // A page of a megabyte says nothing in a message, so only what it lacks is named.
      assertThat(SAID.stream().filter(said -> !html.contains(said + SHOWN))).isEmpty();
      assertThat(List.of("Wq1", "Wq2", "Wq3", "Wq4", "amended", "because"))
          .allMatch(said -> html.contains(said + SHOWN));
      desk.reviews()
          .report(state, false)
          .forEach(
              (name, bytes) -> {
                if (name.endsWith(".pdf")) {
                  assertThat(pdf(bytes)).contains("Wq4‹U+0007›", "‹U+202E›");
                }
              });
      quiet("text", String.join("\n", desk.reviews().text(state)));
      Map<String, byte[]> files = desk.reviews().export(state);
      files.forEach(
          (name, bytes) ->
              quiet(
                  name,
                  new String(bytes, StandardCharsets.UTF_8)
                      .replace("\r\n", "\n")
                      // JSON keeps such characters as they are, or as their number.
                      .replace(name.matches(".*\\.json|session\\.txt") ? "\u202E" : "\0", "")));
      assertThat(new String(files.get("laps.csv"), StandardCharsets.UTF_8))
          .contains("note" + SHOWN);
      assertThat(PackageReview.of(files).text()).isNotEmpty();
      desk.sheets().open(state, Sheets.Paper.A4).forEach((name, bytes) -> pdf(bytes));
    }
  }

  private static String pdf(byte[] bytes) {
    try (PDDocument document = Loader.loadPDF(bytes)) {
      return new PDFTextStripper().getText(document).replaceAll("\\s+", "");
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }
}
