package blindlap.exchange;

import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.plan.Sector;
import blindlap.seal.Fingerprint;
import blindlap.seal.OpenKey;
import blindlap.seal.Opening;
import blindlap.seal.SealParameters;
import blindlap.seal.Sealed;
import blindlap.seal.Sealing;
import blindlap.seal.SealingSources;
import blindlap.seal.SessionKind;
import blindlap.session.CovariateSaid;
import blindlap.session.Entry;
import blindlap.session.Fact;
import blindlap.session.FindingSeenAgain;
import blindlap.session.Hash;
import blindlap.session.Head;
import blindlap.session.LookTaken;
import blindlap.session.MasksGuessed;
import blindlap.session.MasksRead;
import blindlap.session.MasksSealed;
import blindlap.session.NotebookId;
import blindlap.session.OneStintAnswered;
import blindlap.session.OneStintShown;
import blindlap.session.OpenedWith;
import blindlap.session.PlainLap;
import blindlap.session.PlateRead;
import blindlap.session.RecordedLap;
import blindlap.session.RecordedPass;
import blindlap.session.RecordingBroughtIn;
import blindlap.session.SectorVoidWithdrawn;
import blindlap.session.SectorVoided;
import blindlap.session.SeriesEnded;
import blindlap.session.SeriesStood;
import blindlap.session.SetupShown;
import blindlap.session.StintMounted;
import blindlap.session.ValueChosen;
import blindlap.session.day.CovariateAt;
import blindlap.session.day.DeviationKind;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.SessionId;
import blindlap.session.day.Source;
import blindlap.session.day.VoidEvent;
import blindlap.timing.TimeRecord;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;

/** Facts of every kind, made of a seed. */
public final class AnyFact {
  private static final String[] PIECES = {
    "grip",
    "Ä",
    "é",
    "e\u0301",
    "\"quoted\"",
    "\\",
    "\n",
    "\t",
    "\u2028",
    "\u0085",
    "\u007f",
    "\u0001",
    "日本",
    "🚵",
    " ",
    "{}",
    "'",
    "ﬁ",
    "\uFEFF",
    "?"
  };

  /** The kinds there were at first: facts made of a seed stay as they were. */
  private static final DeviationKind[] FIRST_DEVIATIONS =
      java.util.Arrays.copyOf(DeviationKind.values(), DeviationKind.OTHER.ordinal() + 1);

  private final Random random;

  public AnyFact(long seed) {
    this.random = new Random(seed);
  }

  /** One fact of every kind; kinds that came later stand at the end. */
  public List<Fact> everyKind() {
    LapId lap = new LapId(1 + random.nextInt(16), 1 + random.nextInt(3));
    List<Fact> facts = new ArrayList<>();
    Sealing sealing = sealing();
    Plan plan = plan();
    SessionId session = session();
    byte[] bytes = PlanJson.bytes(plan);
    Sealed sealed =
        sealing.seal(
            bytes,
            plan.rule(),
            session.text(),
            SessionKind.comparison(),
            sealing.drawPhrase(plan.rule()).unasked());
    OpenKey key = ((Opening.Opened) sealing.open(sealed.key(), sealed.phrase())).key();
    facts.add(
        new Fact.PlanCommitted(
            plan,
            new String(bytes, StandardCharsets.UTF_8),
            sealed.key(),
            sealed.fingerprint(),
            sealed.codes(),
            List.of(text(), text())));
    facts.add(new Fact.FingerprintGiven(any(Fact.Which.values()), text(), null));
    facts.add(new Fact.ExpectationGiven(any(Fact.Person.values()), text()));
    facts.add(new Fact.SheetReprinted(text()));
    facts.add(
        new Fact.StintHandled(
            sealing.record(sealed.lock(), session.text(), random.nextInt(17), text())));
    facts.add(new Fact.BikeHandedOver(1 + random.nextInt(16)));
    facts.add(new Fact.WarmUpRidden(1 + random.nextInt(4)));
    facts.add(new Fact.LapRidden(lap, any(Source.values())));
    facts.add(new Fact.ScoreGiven(lap, text(), number(), any(Source.values())));
    facts.add(new Fact.TimeTaken(lap, text(), time()));
    facts.add(new Fact.ScoreCorrected(lap, text(), random.nextBoolean() ? null : number(), text()));
    facts.add(new Fact.NoteWritten(lap, text()));
    facts.add(new Fact.GuessGiven(1 + random.nextInt(16), guess()));
    facts.add(new Fact.ConditionsNoted(lap, conditions()));
    facts.add(new Fact.LapVoided(lap, any(VoidEvent.values()), text(), random.nextBoolean()));
    facts.add(new Fact.VoidWithdrawn(lap, text()));
    facts.add(new Fact.BlindBroken(1 + random.nextInt(16), text()));
    facts.add(new Fact.DeviationNoted(random.nextInt(17), any(FIRST_DEVIATIONS), text()));
    facts.add(new Fact.DayCutShort(random.nextInt(17), text(), text(), random.nextBoolean()));
    facts.add(new Fact.DayClosed());
    facts.add(new Fact.ReviewClosed(Fingerprint.of(bytes(32))));
    facts.add(
        new Fact.SealOpened(
            key, any(OpenedWith.values()), Map.of(0, text(), 7, text(), 12, text())));
    facts.add(new Fact.ReportWritten(text()));
    facts.add(new Fact.SessionAbandoned(text(), ""));
    facts.add(new Fact.AmendmentMade(text(), text()));
    facts.add(new AnyFact(facts.size()).plainDay());
    AnyFact watch = new AnyFact(facts.size());
    facts.add(new Fact.WatchStarted(lap, watch.text(), watch.instant()));
    facts.add(new Fact.WatchReset(lap, watch.text()));
    facts.add(new AnyFact(facts.size()).findingRecorded());
    // Since version 4 the fingerprint itself may stand beside who was given it.
    if (random.nextBoolean() && facts.get(1) instanceof Fact.FingerprintGiven given) {
      facts.set(1, new Fact.FingerprintGiven(given.which(), given.to(), Fingerprint.of(bytes(32))));
    }
    facts.add(new AnyFact(facts.size()).findingSeenAgain());
    facts.add(new Fact.GuessTakenBack(1 + new AnyFact(facts.size()).random.nextInt(16)));
    AnyFact later = new AnyFact(facts.size());
    facts.add(new SeriesEnded(later.text(), later.text()));
    facts.add(
        new SeriesStood(
            Map.of(
                later.session(),
                List.of(new Head(NotebookId.of(later.bytes(16)), 43, later.hash())),
                later.session(),
                List.of())));
    facts.add(new Fact.BikeReturned(new AnyFact(facts.size()).random.nextInt(17)));
    AnyFact chosen = new AnyFact(facts.size());
    facts.add(
        new ValueChosen(
            lap,
            chosen.text(),
            chosen.random.nextBoolean() ? null : chosen.number(),
            chosen.text(),
            chosen.text()));
    AnyFact covariate = new AnyFact(facts.size());
    boolean whole = covariate.random.nextBoolean();
    facts.add(
        new CovariateSaid(
            new CovariateAt(
                covariate.text(),
                1 + covariate.random.nextInt(16),
                whole ? 0 : 1 + covariate.random.nextInt(4)),
            covariate.random.nextInt(4) == 0 ? null : covariate.number(),
            Source.values()[covariate.random.nextInt(3)],
            covariate.text()));
    AnyFact looked = new AnyFact(facts.size());
    facts.add(
        new LookTaken(
            looked
                .sealing()
                .record(sealed.lock(), session.text(), LookTaken.number(4), looked.text()),
            looked.random.nextBoolean(),
            new TreeMap<>(Map.of(new LapId(1, 1), looked.number(), lap, looked.number()))));
    AnyFact alone = new AnyFact(facts.size());
    facts.add(new SetupShown(alone.random.nextInt(17), alone.random.nextInt(2)));
    facts.add(new StintMounted(alone.random.nextInt(17), alone.text()));
    facts.add(new MasksSealed(sealed.key()));
    facts.add(new MasksGuessed(alone.random.nextInt(4) == 0 ? List.of() : List.of(1, 0)));
    facts.add(new MasksRead(List.of(0, 1), MasksRead.From.values()[alone.random.nextInt(2)]));
    AnyFact once = new AnyFact(facts.size());
    facts.add(new OneStintShown(1 + once.random.nextInt(16), once.text()));
    facts.add(new OneStintAnswered(1 + once.random.nextInt(16), once.random.nextBoolean()));
    AnyFact recorded = new AnyFact(facts.size());
    facts.add(recorded.recording(lap));
    Sector sector = new Sector(recorded.text(), recorded.text());
    facts.add(
        new SectorVoided(
            lap,
            sector,
            VoidEvent.values()[recorded.random.nextInt(VoidEvent.values().length)],
            recorded.text(),
            recorded.random.nextBoolean()));
    facts.add(new SectorVoidWithdrawn(lap, sector, recorded.text()));
    facts.add(new PlateRead(new AnyFact(facts.size()).random.nextInt(17)));
    // Since version 4 somebody may declare to have abandoned it without knowing key or setups.
    AnyFact unaware = new AnyFact(facts.size());
    if (unaware.random.nextBoolean()) {
      facts.replaceAll(f -> f instanceof Fact.SessionAbandoned a ? unaware.unaware(a.reason()) : f);
    }
    return facts;
  }

  private Fact recording(LapId lap) {
    boolean whole = random.nextBoolean();
    RecordedPass start = new RecordedPass(BigDecimal.ZERO, new BigDecimal("0.2"), null);
    RecordedPass split =
        whole
            ? new RecordedPass(number().abs(), number().abs(), null)
            : new RecordedPass(null, null, any(RecordedPass.Doubt.values()));
    List<BigDecimal> pieces = new ArrayList<>();
    pieces.add(number().abs());
    pieces.add(whole ? number().abs() : null);
    return new RecordingBroughtIn(
        text(),
        hash().hex(),
        hash().hex(),
        whole ? number() : null,
        List.of(BigDecimal.ZERO, new BigDecimal("100"), new BigDecimal("212.5")),
        List.of(
            new RecordedLap(
                lap,
                List.of(start, split, new RecordedPass(number().abs(), number().abs(), null)),
                pieces,
                whole ? hash().hex() : null,
                any(RecordedLap.Settled.values()))));
  }

  private Fact unaware(String reason) {
    return new Fact.SessionAbandoned(reason, text());
  }

  /** A later kind has a stream of its own, so that the facts before it stay as they were. */
  private Fact plainDay() {
    return new Fact.PlainDayImported(
        text(),
        Map.of("lap time", text(), "setup", text()),
        List.of(
            new PlainLap(1, text(), Map.of("lap time", number()), random.nextBoolean()),
            new PlainLap(2, "", Map.of(), true)));
  }

  private Fact findingRecorded() {
    return new Fact.FindingRecorded(
        1 + random.nextInt(9),
        random.nextBoolean() ? null : text(),
        Map.of("estimate", number(), "low_95", number(), "p", new BigDecimal("0.04")));
  }

  private Fact findingSeenAgain() {
    return new FindingSeenAgain(
        2 + random.nextInt(9),
        random.nextBoolean(),
        1,
        random.nextBoolean() ? null : text(),
        Map.of("estimate", number(), "low_95", number(), "p", new BigDecimal("0.04")));
  }

  /** An entry that holds a fact, at any place of any chain. */
  public Entry entry(Fact fact) {
    List<Head> seen = new ArrayList<>();
    for (int i = random.nextInt(3); i > 0; i--) {
      seen.add(new Head(NotebookId.of(bytes(16)), 1 + random.nextInt(99), hash()));
    }
    return new Entry(
        session(),
        NotebookId.of(bytes(16)),
        1 + random.nextInt(1000),
        hash(),
        seen,
        instant(),
        ZoneId.of(random.nextBoolean() ? "Europe/Vienna" : "+05:30"),
        fact);
  }

  private SessionId session() {
    return SessionId.of(bytes(16));
  }

  private Hash hash() {
    return new Hash(Fingerprint.of(bytes(32)).hex());
  }

  private byte[] bytes(int count) {
    byte[] bytes = new byte[count];
    random.nextBytes(bytes);
    return bytes;
  }

  private Sealing sealing() {
    return new Sealing(SealingSources.allFrom(this::bytes), new SealParameters(1));
  }

  private Plan plan() {
    String yaml =
        """
        question: "Is the \\x7f first \\u2028 quicker? \\U0001F6B5 %d"
        rider: R. Lind
        trail: Quarry loop
        day: 2026-11-14
        setups: [{name: Shock K, mass_g: 612.50}, {name: "Sho\\u0308ck \\N L"}]
        measures: [{name: lap time, kind: lap time, unit: s, role: primary, worthwhile: 1.0}]
        rule: {setups: 2, stints: 8, block: 4}
        stints: 8
        """
            .formatted(random.nextInt(1000));
    return java.util.Objects.requireNonNull(PlanReader.read(yaml, Protocols.NONE).plan());
  }

  private String text() {
    StringBuilder text = new StringBuilder();
    for (int i = random.nextInt(6); i > 0; i--) {
      text.append(PIECES[random.nextInt(PIECES.length)]);
    }
    return text.toString();
  }

  private BigDecimal number() {
    return BigDecimal.valueOf(random.nextInt(2_000_000) - 1000, random.nextInt(5) - 1);
  }

  private Instant instant() {
    return Instant.ofEpochSecond(
        1_700_000_000L + random.nextInt(300_000_000), random.nextInt(3) * 7);
  }

  private TimeRecord time() {
    Instant started = instant();
    long nanos = 1 + random.nextInt(2_000_000_000);
    return new TimeRecord(
        started,
        started.plusNanos(nanos),
        nanos,
        any(TimeRecord.TimedBy.values()),
        random.nextBoolean() ? null : number());
  }

  private Guess guess() {
    return new Guess(
        random.nextBoolean() ? null : random.nextInt(4),
        random.nextBoolean() ? null : any(Guess.Sureness.values()),
        text());
  }

  private Map<String, String> conditions() {
    Map<String, String> conditions = new LinkedHashMap<>();
    conditions.put("wind", text());
    conditions.put("light", text());
    return conditions;
  }

  private <T> T any(T[] of) {
    return of[random.nextInt(of.length)];
  }
}
