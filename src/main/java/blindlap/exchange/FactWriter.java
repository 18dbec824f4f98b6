package blindlap.exchange;

import blindlap.plan.PlanJson;
import blindlap.seal.Fingerprint;
import blindlap.seal.HelperRecord;
import blindlap.seal.SealedKey;
import blindlap.session.CovariateSaid;
import blindlap.session.Fact;
import blindlap.session.FactVisitor;
import blindlap.session.FindingSeenAgain;
import blindlap.session.LookTaken;
import blindlap.session.PlateRead;
import blindlap.session.RecordingFact;
import blindlap.session.SeriesEnded;
import blindlap.session.SeriesStood;
import blindlap.session.ValueChosen;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.timing.TimeRecord;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** The body of each kind of fact as a tree for canonical JSON (docs/file-format.md). */
final class FactWriter implements FactVisitor<Map<String, Object>> {
  private static Map<String, Object> body(@Nullable Object... pairs) {
    Map<String, Object> map = new LinkedHashMap<>();
    for (int i = 0; i < pairs.length; i += 2) {
      map.put((String) java.util.Objects.requireNonNull(pairs[i]), pairs[i + 1]);
    }
    return map;
  }

  private static Map<String, Object> lap(LapId lap, @Nullable Object... more) {
    Map<String, Object> map = body(more);
    map.put("stint", String.valueOf(lap.stint()));
    map.put("lap", String.valueOf(lap.lap()));
    return map;
  }

  private static String word(Enum<?> option) {
    return PlanJson.word(option);
  }

  private static @Nullable String number(@Nullable BigDecimal value) {
    return PlanJson.number(value);
  }

  @Override
  public Map<String, Object> planCommitted(Fact.PlanCommitted fact) {
    Map<String, Object> body =
        body(
            "plan", fact.planText(),
            "key", key(fact),
            "fingerprint", fact.fingerprint().hex(),
            "codes", fact.codes().stream().map(String::valueOf).toList(),
            "signed_by", fact.signedBy());
    if (fact.covered()) {
      body.put("covered", true);
    }
    return body;
  }

  private static @Nullable Map<String, String> key(Fact.PlanCommitted fact) {
    SealedKey key = fact.key();
    return key == null ? null : Map.copyOf(key.fields());
  }

  @Override
  public Map<String, Object> fingerprintGiven(Fact.FingerprintGiven fact) {
    Fingerprint value = fact.value();
    return value == null
        ? body("which", word(fact.which()), "to", fact.to())
        : body("which", word(fact.which()), "to", fact.to(), "value", value.hex());
  }

  @Override
  public Map<String, Object> expectationGiven(Fact.ExpectationGiven fact) {
    return body("who", word(fact.who()), "text", fact.text());
  }

  @Override
  public Map<String, Object> sheetReprinted(Fact.SheetReprinted fact) {
    return body("sheet", fact.sheet());
  }

  @Override
  public Map<String, Object> stintHandled(Fact.StintHandled fact) {
    HelperRecord record = fact.record();
    return body(
        "stint", String.valueOf(record.stint()),
        "version", HelperRecord.VERSION,
        "iv", record.iv(),
        "ciphertext", record.ciphertext());
  }

  @Override
  public Map<String, Object> bikeHandedOver(Fact.BikeHandedOver fact) {
    return body("stint", String.valueOf(fact.stint()));
  }

  @Override
  public Map<String, Object> bikeReturned(Fact.BikeReturned fact) {
    return body("stint", String.valueOf(fact.stint()));
  }

  @Override
  public Map<String, Object> warmUpRidden(Fact.WarmUpRidden fact) {
    return body("number", String.valueOf(fact.number()));
  }

  @Override
  public Map<String, Object> lapRidden(Fact.LapRidden fact) {
    return lap(fact.lap(), "source", word(fact.source()));
  }

  @Override
  public Map<String, Object> scoreGiven(Fact.ScoreGiven fact) {
    return lap(
        fact.lap(),
        "measure",
        fact.measure(),
        "value",
        number(fact.value()),
        "source",
        word(fact.source()));
  }

  @Override
  public Map<String, Object> watchStarted(Fact.WatchStarted fact) {
    return lap(fact.lap(), "measure", fact.measure(), "started", fact.started().toString());
  }

  @Override
  public Map<String, Object> watchReset(Fact.WatchReset fact) {
    return lap(fact.lap(), "measure", fact.measure());
  }

  @Override
  public Map<String, Object> timeTaken(Fact.TimeTaken fact) {
    TimeRecord time = fact.time();
    return lap(
        fact.lap(),
        "measure",
        fact.measure(),
        "started",
        time.started().toString(),
        "stopped",
        time.stopped().toString(),
        "monotonic_ns",
        String.valueOf(time.monotonicNanos()),
        "timed_by",
        word(time.timedBy()),
        "typed",
        number(time.typed()));
  }

  @Override
  public Map<String, Object> scoreCorrected(Fact.ScoreCorrected fact) {
    return lap(
        fact.lap(),
        "measure",
        fact.measure(),
        "value",
        number(fact.value()),
        "reason",
        fact.reason());
  }

  @Override
  public Map<String, Object> valueChosen(ValueChosen fact) {
    return lap(
        fact.lap(),
        "measure",
        fact.measure(),
        "value",
        number(fact.value()),
        "reason",
        fact.reason(),
        "decided_by",
        fact.decidedBy());
  }

  /** Words of one length, so that an entry of a look is as long whatever it found. */
  static final List<String> LOOK_OUTCOMES = List.of("ride on", "settled");

  @Override
  public Map<String, Object> lookTaken(LookTaken fact) {
    List<Map<String, Object>> values = new ArrayList<>();
    fact.values().forEach((lap, value) -> values.add(lap(lap, "value", number(value))));
    return body(
        "stint", String.valueOf(fact.stint()),
        "outcome", LOOK_OUTCOMES.get(fact.settled() ? 1 : 0),
        "values", values,
        "version", HelperRecord.VERSION,
        "iv", fact.record().iv(),
        "ciphertext", fact.record().ciphertext());
  }

  @Override
  public Map<String, Object> covariateSaid(CovariateSaid fact) {
    Map<String, Object> body =
        body(
            "covariate", fact.at().covariate(),
            "stint", String.valueOf(fact.at().stint()),
            "value", number(fact.value()),
            "source", word(fact.source()),
            "reason", fact.reason());
    if (fact.at().lap() > 0) {
      body.put("lap", String.valueOf(fact.at().lap()));
    }
    return body;
  }

  @Override
  public Map<String, Object> plateRead(PlateRead fact) {
    return body("stint", String.valueOf(fact.stint()));
  }

  @Override
  public Map<String, Object> ofRecordings(RecordingFact fact) {
    return fact.accept(new RecordingWriter());
  }

  @Override
  public Map<String, Object> ofOnePerson(Fact.OfOnePerson fact) {
    return fact.accept(new OnePersonWriter());
  }

  @Override
  public Map<String, Object> noteWritten(Fact.NoteWritten fact) {
    return lap(fact.lap(), "text", fact.text());
  }

  @Override
  public Map<String, Object> guessGiven(Fact.GuessGiven fact) {
    Guess guess = fact.guess();
    Guess.Sureness sureness = guess.sureness();
    Integer setup = guess.setup();
    return body(
        "stint",
        String.valueOf(fact.stint()),
        "setup",
        setup == null ? null : String.valueOf(setup + 1),
        "sureness",
        sureness == null ? null : word(sureness),
        "cue",
        guess.cue());
  }

  @Override
  public Map<String, Object> guessTakenBack(Fact.GuessTakenBack fact) {
    return body("stint", String.valueOf(fact.stint()));
  }

  @Override
  public Map<String, Object> conditionsNoted(Fact.ConditionsNoted fact) {
    return lap(fact.lap(), "conditions", fact.conditions());
  }

  @Override
  public Map<String, Object> lapVoided(Fact.LapVoided fact) {
    return lap(
        fact.lap(),
        "event",
        fact.event().text(),
        "words",
        fact.words(),
        "after_values_seen",
        fact.afterValuesSeen());
  }

  @Override
  public Map<String, Object> voidWithdrawn(Fact.VoidWithdrawn fact) {
    return lap(fact.lap(), "reason", fact.reason());
  }

  @Override
  public Map<String, Object> blindBroken(Fact.BlindBroken fact) {
    return body("stint", String.valueOf(fact.stint()), "what", fact.what());
  }

  @Override
  public Map<String, Object> deviationNoted(Fact.DeviationNoted fact) {
    return body(
        "stint", String.valueOf(fact.stint()), "kind", word(fact.kind()), "what", fact.what());
  }

  @Override
  public Map<String, Object> dayCutShort(Fact.DayCutShort fact) {
    return body(
        "last_stint", String.valueOf(fact.lastStint()),
        "reason", fact.reason(),
        "decided_by", fact.decidedBy(),
        "knows_key", fact.knowsKey());
  }

  @Override
  public Map<String, Object> dayClosed(Fact.DayClosed fact) {
    return body();
  }

  @Override
  public Map<String, Object> reviewClosed(Fact.ReviewClosed fact) {
    return body("fingerprint", fact.fingerprint().hex());
  }

  @Override
  public Map<String, Object> sealOpened(Fact.SealOpened fact) {
    List<Map<String, Object>> records =
        new TreeMap<>(fact.helperRecords())
            .entrySet().stream()
                .map(e -> body("stint", String.valueOf(e.getKey()), "record", e.getValue()))
                .toList();
    return body("key", fact.key().text(), "with", word(fact.with()), "helper_records", records);
  }

  @Override
  public Map<String, Object> seriesEnded(SeriesEnded fact) {
    return body("reason", fact.reason(), "decided_by", fact.decidedBy());
  }

  @Override
  public Map<String, Object> seriesStood(SeriesStood fact) {
    List<Map<String, Object>> others = new ArrayList<>();
    fact.heads()
        .forEach(
            (session, heads) ->
                others.add(body("session", session.text(), "seen", EntryHeads.tree(heads))));
    return body("series_heads", others);
  }

  @Override
  public Map<String, Object> findingRecorded(Fact.FindingRecorded fact) {
    return body(
        "edition", String.valueOf(fact.edition()),
        "verdict", fact.verdict(),
        "figures", numbers(fact.figures()));
  }

  @Override
  public Map<String, Object> findingSeenAgain(FindingSeenAgain fact) {
    return body(
        "edition", String.valueOf(fact.edition()),
        "same", fact.same(),
        "unsealed_under", String.valueOf(fact.unsealedUnder()),
        "verdict", fact.verdict(),
        "figures", numbers(fact.figures()));
  }

  @Override
  public Map<String, Object> reportWritten(Fact.ReportWritten fact) {
    return body("name", fact.name());
  }

  @Override
  public Map<String, Object> sessionAbandoned(Fact.SessionAbandoned fact) {
    Map<String, Object> body = body("reason", fact.reason());
    if (!fact.unawareBy().isEmpty()) {
      body.put("unaware_by", fact.unawareBy());
    }
    return body;
  }

  @Override
  public Map<String, Object> plainDayImported(Fact.PlainDayImported fact) {
    List<Map<String, Object>> laps =
        fact.laps().stream()
            .map(
                lap ->
                    body(
                        "position", String.valueOf(lap.position()),
                        "setup", lap.setup(),
                        "values", numbers(lap.values()),
                        "void", lap.voided()))
            .toList();
    return body("file", fact.file(), "columns", fact.columns(), "laps", laps);
  }

  private static Map<String, String> numbers(Map<String, BigDecimal> values) {
    Map<String, String> map = new LinkedHashMap<>();
    values.forEach((name, value) -> map.put(name, PlanJson.number(value)));
    return map;
  }

  @Override
  public Map<String, Object> amendmentMade(Fact.AmendmentMade fact) {
    return body("text", fact.text(), "reason", fact.reason());
  }
}
