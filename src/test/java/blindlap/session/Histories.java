package blindlap.session;

import blindlap.exchange.EntryText;
import blindlap.exchange.PlanReader;
import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.seal.Fingerprint;
import blindlap.seal.Opening;
import blindlap.seal.SealParameters;
import blindlap.seal.Sealed;
import blindlap.seal.Sealing;
import blindlap.seal.SealingSources;
import blindlap.seal.SessionKind;
import blindlap.session.day.CovariateAt;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.SessionId;
import blindlap.session.day.Source;
import blindlap.session.day.VoidEvent;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;

/** One session as several notebooks write it that meet now and then; they are called a, b, c. */
final class Histories {
  static final SessionId SESSION = SessionId.of(new byte[16]);
  static final Fact LAP = new Fact.LapRidden(new LapId(1, 1), Source.SCREEN);
  static final Fact VOID = new Fact.LapVoided(new LapId(1, 1), VoidEvent.TRAFFIC, "", false);
  static final Fact CLOSED = new Fact.ReviewClosed(Fingerprint.of(new byte[32]));
  static final Fact.PlanCommitted COMMIT;
  private static final Sealed SEALED;
  private static final Sealing SEALING;

  static {
    Random random = new Random(5);
    SEALING =
        new Sealing(
            SealingSources.allFrom(
                count -> {
                  byte[] bytes = new byte[count];
                  random.nextBytes(bytes);
                  return bytes;
                }),
            new SealParameters(1));
    Plan plan =
        PlanReader.read(
                """
                question: Which shock?
                rider: R. Lind
                trail: Quarry loop
                day: 2026-11-14
                setups: [{name: Shock K}, {name: Shock L}]
                measures: [{name: time, kind: lap time, unit: s, role: primary, worthwhile: 1}]
                rule: {setups: 2, stints: 24, block: 4}
                stints: 24
                looks: [16, 20]
                trail_version: %s
                covariates: [{name: wind, kind: wind, unit: m/s, by: starter, reason: read}]
                """
                    .formatted(RecordedHistories.TRAIL),
                blindlap.exchange.Protocols.NONE)
            .plan();
    byte[] bytes = PlanJson.bytes(plan);
    SEALED =
        SEALING.seal(
            bytes,
            plan.rule(),
            SESSION.text(),
            SessionKind.comparison(),
            SEALING.drawPhrase(plan.rule()).unasked());
    COMMIT =
        new Fact.PlanCommitted(
            plan,
            new String(bytes, StandardCharsets.UTF_8),
            SEALED.key(),
            SEALED.fingerprint(),
            SEALED.codes(),
            List.of());
  }

  private static final Instant START = Instant.parse("2026-11-14T08:00:00Z");

  private final List<Map<Head, StoredEntry>> notebooks = new ArrayList<>();
  private int seconds;

  Histories(int count) {
    for (int i = 0; i < count; i++) {
      notebooks.add(new LinkedHashMap<>());
    }
  }

  static Fact opened() {
    Opening.Opened opened = (Opening.Opened) SEALING.open(SEALED.key(), SEALED.phrase());
    return new Fact.SealOpened(opened.key(), OpenedWith.PHRASE, Map.of());
  }

  /** A history of a seed: notebooks write and meet in any order. */
  static Histories random(Random random, int count, int entries) {
    Histories history = new Histories(count);
    history.write(random.nextInt(count), COMMIT);
    for (int i = 1; i < entries; i++) {
      int at = random.nextInt(count);
      if (random.nextInt(3) == 0 || history.notebooks.get(at).isEmpty()) {
        history.meet(at, random.nextInt(count));
      }
      if (!history.notebooks.get(at).isEmpty()) {
        history.write(at, any(random));
      }
    }
    return history;
  }

  private static Fact any(Random random) {
    LapId lap = new LapId(1 + random.nextInt(8), 1);
    return switch (random.nextInt(17)) {
      case 0 -> new Fact.LapVoided(lap, VoidEvent.CRASH, "", false);
      case 1 -> new Fact.VoidWithdrawn(lap, "not at all");
      case 2 -> new Fact.NoteWritten(lap, "note " + random.nextInt(100));
      case 3 -> new Fact.DayClosed();
      case 4 -> CLOSED;
      case 5 -> random.nextInt(3) == 0 ? opened() : LAP;
      case 6 -> new Fact.DayCutShort(random.nextInt(8), "rain", "the helper", true);
      case 7 ->
          random.nextInt(4) == 0
              ? new Fact.GuessTakenBack(lap.stint())
              : new Fact.GuessGiven(lap.stint(), new Guess(random.nextInt(2), null, ""));
      case 8 ->
          random.nextInt(9) == 0 ? new Fact.SessionAbandoned("rain", "") : new Fact.WarmUpRidden(1);
      case 9 ->
          new Fact.StintHandled(
              SEALING.record(SEALED.lock(), SESSION.text(), lap.stint(), "fitted"));
      case 10 ->
          random.nextInt(2) == 0 ? new Fact.BlindBroken(lap.stint(), "cover off") : alone(random);
      case 11 -> new Fact.FindingRecorded(random.nextInt(3), null, Map.of());
      case 12 ->
          new FindingSeenAgain(2 + random.nextInt(2), random.nextBoolean(), 1, null, Map.of());
      case 13 ->
          new CovariateSaid(
              new CovariateAt("wind", lap.stint(), 0),
              random.nextInt(3) == 0 ? null : BigDecimal.valueOf(random.nextInt(9)),
              Source.SCREEN,
              random.nextInt(3) == 0 ? "misread" : "");
      case 14 -> look(random);
      case 15 -> RecordedHistories.any(random, lap);
      default -> new Fact.LapRidden(lap, Source.SCREEN);
    };
  }

  /** Two machines may take one look: the first that both know counts. */
  private static Fact look(Random random) {
    int stint = random.nextBoolean() ? 16 : 20;
    SortedMap<LapId, BigDecimal> values = new TreeMap<>();
    for (int each = 1; each <= stint; each++) {
      values.put(new LapId(each, 1), BigDecimal.valueOf(90 + random.nextInt(9)));
    }
    return new LookTaken(
        SEALING.record(SEALED.lock(), SESSION.text(), LookTaken.number(stint), "looked"),
        random.nextBoolean(),
        values);
  }

  /** Of a day without a helper; any notebook may have written it, whatever the plan says. */
  private static Fact alone(Random random) {
    int stint = random.nextInt(10);
    return switch (random.nextInt(7)) {
      case 0 -> new SetupShown(stint, random.nextInt(3));
      case 1 -> new StintMounted(stint, "fitted " + random.nextInt(3));
      case 2 -> new MasksSealed(SEALED.key());
      case 3 -> new MasksGuessed(List.of(1, random.nextInt(2)));
      case 4 -> new OneStintShown(Math.max(1, stint), "P. Wier");
      case 5 -> new OneStintAnswered(Math.max(1, stint), random.nextBoolean());
      default -> new MasksRead(List.of(0, 1), MasksRead.From.MARKS);
    };
  }

  /** A notebook writes facts, having seen all that it holds; a second goes by for each. */
  List<StoredEntry> write(int at, Fact... facts) {
    List<StoredEntry> written = new ArrayList<>();
    for (Fact fact : facts) {
      NotebookId id = id(at);
      long number = 1;
      Hash previous = Hash.NONE;
      List<Head> seen = new ArrayList<>();
      for (int other = 0; other < notebooks.size(); other++) {
        NotebookId its = id(other);
        Head last =
            notebooks.get(at).keySet().stream()
                .filter(head -> head.notebook().equals(its))
                .reduce((a, b) -> a.number() > b.number() ? a : b)
                .orElse(null);
        if (last != null && other == at) {
          number = last.number() + 1;
          previous = last.hash();
        } else if (last != null) {
          seen.add(last);
        }
      }
      StoredEntry stored =
          EntryText.write(
              new Entry(
                  SESSION,
                  id,
                  number,
                  previous,
                  seen,
                  START.plusSeconds(seconds++),
                  ZoneId.of("UTC"),
                  fact));
      notebooks.get(at).put(stored.head(), stored);
      written.add(stored);
    }
    return written;
  }

  /** All that a notebook holds, in the order in which it came there. */
  List<StoredEntry> held(int at) {
    return List.copyOf(notebooks.get(at).values());
  }

  /** Notebooks exchange all they have. */
  void meet(int... those) {
    Map<Head, StoredEntry> all = new LinkedHashMap<>();
    for (int one : those) {
      all.putAll(notebooks.get(one));
    }
    for (int one : those) {
      notebooks.get(one).putAll(all);
    }
  }

  private static NotebookId id(int at) {
    return new NotebookId((char) ('a' + at) + "0000000-0000-4000-8000-000000000000");
  }

  /** Everything anyone wrote. */
  List<StoredEntry> all() {
    Map<Head, StoredEntry> all = new LinkedHashMap<>();
    notebooks.forEach(all::putAll);
    return List.copyOf(all.values());
  }

  String name(StoredEntry stored) {
    return stored.entry().notebook().text().charAt(0) + "" + stored.entry().number();
  }
}
