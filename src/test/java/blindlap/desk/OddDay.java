package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.exchange.HelperEntryText;
import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.seal.CoveredOrder;
import blindlap.seal.SealParameters;
import blindlap.seal.Sealed;
import blindlap.seal.Sealing;
import blindlap.seal.SecureBytes;
import blindlap.seal.SessionKind;
import blindlap.session.Fact;
import blindlap.session.HelperEntry;
import blindlap.session.LifeCommands;
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
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Days with characters that no text may hold any more in every field that can be typed, as a
 * notebook of an earlier program may hold them.
 */
public final class OddDay {
  /** A bell, a terminal's colour, a mark that turns letters round, a vertical tab. */
  public static final String ODD = "\u0007\u001B[31m\u000B\u202E";

  public static final String SHOWN = "␇␛[31m␋‹U+202E›";

  static final String PLAN =
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

  static final int FIELDS = 14;
  static final String TIME = "lap time";
  private static final String TIME_ODD = "Wq15" + ODD;
  private static final SealParameters QUICK = new SealParameters(1);

  /** A session and its phrase. */
  public record Old(SessionId id, String phrase) {}

  /** How far such a day has gone. */
  public enum Gone {
    COMMITTED,
    RIDDEN,
    CLOSED,
    UNSEALED
  }

  private OddDay() {}

  static LapId lap(int stint) {
    return new LapId(stint, 1);
  }

  /** Every fact in which a person's words stand, said of the day. */
  static List<Fact> facts(String words, String time) {
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
        new Fact.ScoreCorrected(lap(3), time, new BigDecimal("93.3"), "correction" + words),
        new Fact.DayCutShort(7, "cut" + words, "decider" + words, false));
  }

  static final List<String> SAID =
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

  static List<Fact> ridden(String time) {
    List<Fact> facts = new ArrayList<>();
    for (int stint = 1; stint <= 7; stint++) {
      facts.add(new Fact.LapRidden(lap(stint), Source.SCREEN));
      facts.add(new Fact.ScoreGiven(lap(stint), time, new BigDecimal("9" + stint), Source.SCREEN));
    }
    return facts;
  }

  static HelperEntry entry(int stint, int setup, String where, String odd) {
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

  /**
   * Writes a day as a notebook of an earlier program may hold it: nobody looked at its texts.
   *
   * @param seed of the session's id
   * @return the session and its phrase
   */
  static Old old(Desk desk, Sealing sealing, Gone gone, int seed) {
    Plan plan = plan(PLAN);
    Old old = committed(desk, sealing, plan, seed);
    SessionId id = old.id();
    if (gone == Gone.COMMITTED) {
      return old;
    }
    append(desk, id, ridden(TIME_ODD));
    append(desk, id, List.of(record(desk, sealing, old)));
    append(desk, id, facts(ODD, TIME_ODD));
    if (gone == Gone.RIDDEN) {
      return old;
    }
    append(desk, id, List.of(new Fact.DayClosed()));
    if (gone == Gone.CLOSED) {
      return old;
    }
    desk.sessions().act(id, latest -> new LifeCommands(latest).closeReview());
    desk.keys().unseal(desk.sessions().state(id).orElseThrow(), old.phrase());
    append(desk, id, List.of(new Fact.AmendmentMade("amended" + ODD, "because" + ODD)));
    return old;
  }

  private static Old committed(Desk desk, Sealing sealing, Plan plan, int seed) {
    SessionId id = SessionId.of(FixedSources.stream(seed).exactly(16));
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
    return new Old(id, sealed.phrase().text());
  }

  private static Plan plan(String odd) {
    String yaml =
        odd.replace("each lap Wq14~", "each lap")
            .replace("name: lap time", "name: \"Wq15~\"")
            .replace("name: front tyre", "name: \"Wq16~\"")
            .replace("~", "\\a\\e[31m\\v\\u202E");
    return PlanPreview.of(yaml).plan().orElseThrow();
  }

  /** Writes a day whose labels a friend masks, with nothing said of it yet. */
  public static SessionId masked(Desk desk) {
    Plan plan =
        plan(
            PLAN.replace(
                "{helper: \"Wq12~\", cover: \"Wq11~\"}",
                "{level: masked, prepared_by: \"Wq12~\"}"));
    SessionId id = SessionId.of(FixedSources.stream(21).exactly(16));
    byte[] bytes = PlanJson.bytes(plan);
    CoveredOrder order =
        new Sealing(FixedSources.order(5), QUICK).cover(bytes, plan.rule(), id.text());
    Fact committed =
        new Fact.PlanCommitted(
            plan,
            new String(bytes, StandardCharsets.UTF_8),
            null,
            true,
            order.fingerprint(),
            order.codes(),
            List.of("x" + ODD));
    append(desk, id, List.of(committed));
    return id;
  }

  /** Writes a day whose units a friend prepares, with nothing said of it yet. */
  public static Old prepared(Desk desk) {
    Plan plan =
        plan(
            PLAN.replace(
                "{helper: \"Wq12~\", cover: \"Wq11~\"}",
                "{level: prepared, prepared_by: \"Wq12~\", prepared_on: 2026-11-13}"));
    return committed(desk, new Sealing(FixedSources.order(5), QUICK), plan, 22);
  }

  private static Fact record(Desk desk, Sealing sealing, Old old) {
    SessionId id = old.id();
    SessionState state = desk.sessions().state(id).orElseThrow();
    Keys.Result.Open open = (Keys.Result.Open) desk.keys().helper(state, old.phrase());
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

  /** A desk on a new notebook of a folder. */
  public static Desk desk(Path file) {
    SetClock clock = new SetClock(Instant.parse("2026-11-14T08:00:00Z"));
    SecureBytes ids = FixedSources.stream(7);
    SqliteNotebook notebook = SqliteNotebook.open(file, ids.exactly(16), clock.instant());
    return new Desk(notebook, clock, FixedSources.order(5), QUICK, ids);
  }

  /** Writes such a day into the notebook of a desk. */
  public static Old write(Desk desk, Gone gone) {
    return old(desk, new Sealing(FixedSources.order(5), QUICK), gone, 9 + gone.ordinal());
  }

  /** Writes one more that is unsealed, so that a field is told of the two. */
  public static Old another(Desk desk) {
    return old(desk, new Sealing(FixedSources.order(6), QUICK), Gone.UNSEALED, 31);
  }
}
