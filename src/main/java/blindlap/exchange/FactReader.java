package blindlap.exchange;

import static blindlap.exchange.BodyFields.decimal;
import static blindlap.exchange.BodyFields.field;
import static blindlap.exchange.BodyFields.known;
import static blindlap.exchange.BodyFields.lap;
import static blindlap.exchange.BodyFields.option;
import static blindlap.exchange.BodyFields.parsed;
import static blindlap.exchange.BodyFields.text;
import static blindlap.exchange.BodyFields.truth;
import static blindlap.exchange.BodyFields.whole;

import blindlap.fault.Unreadable;
import blindlap.seal.Fingerprint;
import blindlap.seal.HelperRecord;
import blindlap.seal.OpenKey;
import blindlap.seal.SealedKey;
import blindlap.session.CovariateSaid;
import blindlap.session.EntryFault;
import blindlap.session.Fact;
import blindlap.session.FindingSeenAgain;
import blindlap.session.Head;
import blindlap.session.LookTaken;
import blindlap.session.MasksGuessed;
import blindlap.session.MasksRead;
import blindlap.session.MasksSealed;
import blindlap.session.OneStintAnswered;
import blindlap.session.OneStintShown;
import blindlap.session.OpenedWith;
import blindlap.session.PlainLap;
import blindlap.session.PlateRead;
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
import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** Reads the bodies that {@link FactWriter} writes. Anything unexpected is an exception. */
final class FactReader {
  /** Kinds by the name of their fact; the order is that of a session's life. */
  private static final Map<String, Function<JsonNode, Fact>> KINDS = kinds();

  private FactReader() {}

  static Fact read(String kind, JsonNode body) {
    Function<JsonNode, Fact> reader = KINDS.get(kind);
    if (reader == null) {
      throw new Unreadable(EntryFault.UNKNOWN_KIND, kind);
    }
    return reader.apply(body);
  }

  private static Map<String, Function<JsonNode, Fact>> kinds() {
    Map<String, Function<JsonNode, Fact>> kinds = new LinkedHashMap<>();
    putKindsOfTheRide(kinds);
    putKindsOfADayAlone(kinds);
    kinds.putAll(RecordingReader.kinds());
    kinds.put("PlateRead", b -> new PlateRead(whole(b, "stint")));
    putKindsOfTheRecord(kinds);
    return Map.copyOf(kinds);
  }

  private static void putKindsOfADayAlone(Map<String, Function<JsonNode, Fact>> kinds) {
    kinds.put("SetupShown", b -> new SetupShown(whole(b, "stint"), whole(b, "setup") - 1));
    kinds.put("StintMounted", b -> new StintMounted(whole(b, "stint"), text(b, "record")));
    kinds.put("MasksSealed", b -> new MasksSealed(SealedKey.of(texts(field(b, "key")))));
    kinds.put("MasksGuessed", b -> new MasksGuessed(setups(b)));
    kinds.put("MasksRead", b -> new MasksRead(setups(b), option(b, "from", MasksRead.From.class)));
    kinds.put("OneStintShown", b -> new OneStintShown(whole(b, "stint"), text(b, "name")));
    kinds.put(
        "OneStintAnswered", b -> new OneStintAnswered(whole(b, "stint"), truth(b, "rider_saw")));
  }

  /** Setups by label, numbered from 1 in the file. */
  private static List<Integer> setups(JsonNode b) {
    List<Integer> setups = new ArrayList<>();
    field(b, "setups").forEach(setup -> setups.add(code(setup) - 1));
    return setups;
  }

  private static void putKindsOfTheRide(Map<String, Function<JsonNode, Fact>> kinds) {
    kinds.put("PlanCommitted", FactReader::planCommitted);
    kinds.put("FingerprintGiven", FactReader::fingerprintGiven);
    kinds.put(
        "ExpectationGiven",
        b -> new Fact.ExpectationGiven(option(b, "who", Fact.Person.class), text(b, "text")));
    kinds.put("SheetReprinted", b -> new Fact.SheetReprinted(text(b, "sheet")));
    kinds.put("StintHandled", FactReader::stintHandled);
    kinds.put("BikeHandedOver", b -> new Fact.BikeHandedOver(whole(b, "stint")));
    kinds.put("BikeReturned", b -> new Fact.BikeReturned(whole(b, "stint")));
    kinds.put("WarmUpRidden", b -> new Fact.WarmUpRidden(whole(b, "number")));
    kinds.put("LapRidden", b -> new Fact.LapRidden(lap(b), option(b, "source", Source.class)));
    kinds.put(
        "ScoreGiven",
        b ->
            new Fact.ScoreGiven(
                lap(b),
                text(b, "measure"),
                parsed(b, "value", BigDecimal::new),
                option(b, "source", Source.class)));
    kinds.put(
        "WatchStarted",
        b ->
            new Fact.WatchStarted(
                lap(b), text(b, "measure"), parsed(b, "started", Instant::parse)));
    kinds.put("WatchReset", b -> new Fact.WatchReset(lap(b), text(b, "measure")));
    kinds.put("TimeTaken", FactReader::timeTaken);
    kinds.put(
        "ScoreCorrected",
        b ->
            new Fact.ScoreCorrected(
                lap(b), text(b, "measure"), decimal(b, "value"), text(b, "reason")));
    kinds.put("ValueChosen", FactReader::valueChosen);
    kinds.put("CovariateSaid", FactReader::covariateSaid);
    kinds.put("LookTaken", FactReader::lookTaken);
    kinds.put("NoteWritten", b -> new Fact.NoteWritten(lap(b), text(b, "text")));
    kinds.put("GuessGiven", FactReader::guessGiven);
    kinds.put("GuessTakenBack", b -> new Fact.GuessTakenBack(whole(b, "stint")));
    kinds.put("ConditionsNoted", FactReader::conditionsNoted);
  }

  private static void putKindsOfTheRecord(Map<String, Function<JsonNode, Fact>> kinds) {
    kinds.put("LapVoided", FactReader::lapVoided);
    kinds.put("VoidWithdrawn", b -> new Fact.VoidWithdrawn(lap(b), text(b, "reason")));
    kinds.put("BlindBroken", b -> new Fact.BlindBroken(whole(b, "stint"), text(b, "what")));
    kinds.put(
        "DeviationNoted",
        b ->
            new Fact.DeviationNoted(
                whole(b, "stint"), option(b, "kind", DeviationKind.class), text(b, "what")));
    kinds.put(
        "DayCutShort",
        b ->
            new Fact.DayCutShort(
                whole(b, "last_stint"),
                text(b, "reason"),
                text(b, "decided_by"),
                truth(b, "knows_key")));
    kinds.put("DayClosed", b -> new Fact.DayClosed());
    kinds.put(
        "ReviewClosed", b -> new Fact.ReviewClosed(parsed(b, "fingerprint", Fingerprint::parse)));
    kinds.put("SealOpened", FactReader::sealOpened);
    kinds.put("SeriesEnded", b -> new SeriesEnded(text(b, "reason"), text(b, "decided_by")));
    kinds.put("SeriesStood", FactReader::seriesStood);
    kinds.put("FindingRecorded", FactReader::findingRecorded);
    kinds.put("FindingSeenAgain", FactReader::findingSeenAgain);
    kinds.put("ReportWritten", b -> new Fact.ReportWritten(text(b, "name")));
    kinds.put(
        "SessionAbandoned",
        b ->
            new Fact.SessionAbandoned(
                text(b, "reason"), b.has("unaware_by") ? text(b, "unaware_by") : ""));
    kinds.put("PlainDayImported", FactReader::plainDayImported);
    kinds.put("AmendmentMade", b -> new Fact.AmendmentMade(text(b, "text"), text(b, "reason")));
  }

  private static Fact planCommitted(JsonNode b) {
    JsonNode key = field(b, "key");
    List<Integer> codes = new ArrayList<>();
    field(b, "codes").forEach(code -> codes.add(code(code)));
    List<String> signed = new ArrayList<>();
    field(b, "signed_by").forEach(name -> signed.add(name.textValue()));
    String plan = text(b, "plan");
    return new Fact.PlanCommitted(
        PlanReader.stored(plan),
        plan,
        key.isNull() ? null : SealedKey.of(texts(key)),
        b.has("covered") && truth(b, "covered"),
        parsed(b, "fingerprint", Fingerprint::parse),
        codes,
        signed);
  }

  private static Integer code(JsonNode code) {
    try {
      return Integer.valueOf(code.textValue());
    } catch (NumberFormatException e) {
      throw new Unreadable(EntryFault.NOT_IN_FORM, "codes");
    }
  }

  private static Fact fingerprintGiven(JsonNode b) {
    return new Fact.FingerprintGiven(
        option(b, "which", Fact.Which.class),
        text(b, "to"),
        b.has("value") ? parsed(b, "value", Fingerprint::parse) : null);
  }

  private static Map<String, String> texts(JsonNode object) {
    Map<String, String> texts = new LinkedHashMap<>();
    object.properties().forEach(e -> texts.put(e.getKey(), e.getValue().textValue()));
    return texts;
  }

  private static Fact plainDayImported(JsonNode b) {
    List<PlainLap> laps = new ArrayList<>();
    field(b, "laps")
        .forEach(
            lap -> {
              Map<String, BigDecimal> values = new LinkedHashMap<>();
              texts(field(lap, "values"))
                  .forEach((name, value) -> values.put(name, new BigDecimal(value)));
              laps.add(
                  new PlainLap(
                      whole(lap, "position"), text(lap, "setup"), values, truth(lap, "void")));
            });
    return new Fact.PlainDayImported(text(b, "file"), texts(field(b, "columns")), laps);
  }

  private static Fact stintHandled(JsonNode b) {
    return new Fact.StintHandled(record(b, whole(b, "stint")));
  }

  private static HelperRecord record(JsonNode b, int number) {
    if (!HelperRecord.VERSION.equals(text(b, "version"))) {
      throw new Unreadable(EntryFault.NOT_IN_FORM, "version");
    }
    return new HelperRecord(number, text(b, "iv"), text(b, "ciphertext"));
  }

  private static Fact timeTaken(JsonNode b) {
    return new Fact.TimeTaken(
        lap(b),
        text(b, "measure"),
        new TimeRecord(
            parsed(b, "started", Instant::parse),
            parsed(b, "stopped", Instant::parse),
            parsed(b, "monotonic_ns", Long::parseLong),
            option(b, "timed_by", TimeRecord.TimedBy.class),
            decimal(b, "typed")));
  }

  private static Fact valueChosen(JsonNode b) {
    return new ValueChosen(
        lap(b), text(b, "measure"), decimal(b, "value"), text(b, "reason"), text(b, "decided_by"));
  }

  private static Fact covariateSaid(JsonNode b) {
    return new CovariateSaid(
        new CovariateAt(
            text(b, "covariate"), whole(b, "stint"), b.has("lap") ? whole(b, "lap") : 0),
        decimal(b, "value"),
        option(b, "source", Source.class),
        text(b, "reason"));
  }

  private static Fact lookTaken(JsonNode b) {
    SortedMap<LapId, BigDecimal> values = new TreeMap<>();
    field(b, "values").forEach(v -> values.put(lap(v), parsed(v, "value", BigDecimal::new)));
    HelperRecord record = record(b, LookTaken.number(whole(b, "stint")));
    boolean settled =
        known(
                b,
                "outcome",
                word -> java.util.Objects.checkIndex(FactWriter.LOOK_OUTCOMES.indexOf(word), 2))
            == 1;
    return new LookTaken(record, settled, values);
  }

  private static Fact guessGiven(JsonNode b) {
    JsonNode setup = field(b, "setup");
    JsonNode sureness = field(b, "sureness");
    return new Fact.GuessGiven(
        whole(b, "stint"),
        new Guess(
            setup.isNull() ? null : whole(b, "setup") - 1,
            sureness.isNull() ? null : option(b, "sureness", Guess.Sureness.class),
            text(b, "cue")));
  }

  private static Fact conditionsNoted(JsonNode b) {
    Map<String, String> conditions = new LinkedHashMap<>();
    field(b, "conditions")
        .properties()
        .forEach(e -> conditions.put(e.getKey(), e.getValue().textValue()));
    return new Fact.ConditionsNoted(lap(b), conditions);
  }

  private static Fact lapVoided(JsonNode b) {
    return new Fact.LapVoided(
        lap(b),
        known(b, "event", text -> VoidEvent.parse(text).orElseThrow()),
        text(b, "words"),
        truth(b, "after_values_seen"));
  }

  private static Fact sealOpened(JsonNode b) {
    Map<Integer, String> records = new LinkedHashMap<>();
    field(b, "helper_records").forEach(r -> records.put(whole(r, "stint"), text(r, "record")));
    return new Fact.SealOpened(
        parsed(b, "key", OpenKey::read), option(b, "with", OpenedWith.class), records);
  }

  private static Fact seriesStood(JsonNode b) {
    Map<SessionId, List<Head>> heads = new LinkedHashMap<>();
    field(b, "series_heads")
        .forEach(other -> heads.put(new SessionId(text(other, "session")), EntryHeads.read(other)));
    return new SeriesStood(heads);
  }

  private static Fact findingRecorded(JsonNode b) {
    return new Fact.FindingRecorded(whole(b, "edition"), verdict(b), figures(b));
  }

  private static Fact findingSeenAgain(JsonNode b) {
    return new FindingSeenAgain(
        whole(b, "edition"), truth(b, "same"), whole(b, "unsealed_under"), verdict(b), figures(b));
  }

  private static @Nullable String verdict(JsonNode b) {
    return field(b, "verdict").isNull() ? null : text(b, "verdict");
  }

  private static Map<String, BigDecimal> figures(JsonNode b) {
    Map<String, BigDecimal> figures = new LinkedHashMap<>();
    texts(field(b, "figures")).forEach((name, figure) -> figures.put(name, new BigDecimal(figure)));
    return figures;
  }
}
