package blindlap.paper;

import blindlap.desk.FixedSources;
import blindlap.desk.Keys;
import blindlap.desk.Sheets;
import blindlap.exchange.EntryText;
import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.seal.HelperSchedule;
import blindlap.seal.OpenKey;
import blindlap.seal.Opening;
import blindlap.seal.SealParameters;
import blindlap.seal.Sealed;
import blindlap.seal.Sealing;
import blindlap.seal.SessionKind;
import blindlap.seal.SheetReading;
import blindlap.session.DayCommands;
import blindlap.session.Entry;
import blindlap.session.Fact;
import blindlap.session.Hash;
import blindlap.session.LifeCommands;
import blindlap.session.NotebookId;
import blindlap.session.Outcome;
import blindlap.session.SessionState;
import blindlap.session.StoredEntry;
import blindlap.session.day.SessionId;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/**
 * A committed session in memory. Only the order follows from the seed: codes, nonce, warm-up,
 * phrase, salt and IV are the same for all days of one plan.
 */
final class SealedDay {
  private static final SessionId ID = SessionId.of(new byte[16]);
  private static final NotebookId NOTEBOOK = NotebookId.of(new byte[16]);
  private static final Instant START = Instant.parse("2026-11-14T08:00:00Z");

  private final Sealing sealing;
  private final Sealed sealed;
  private SessionState state;

  SealedDay(Plan plan, SessionKind kind, long orderSeed) {
    this.sealing = new Sealing(FixedSources.order(orderSeed), new SealParameters(1));
    byte[] bytes = PlanJson.bytes(plan);
    this.sealed =
        sealing.seal(
            bytes, plan.rule(), ID.text(), kind, sealing.drawPhrase(plan.rule()).unasked());
    Fact commit =
        new Fact.PlanCommitted(
            plan,
            new String(bytes, StandardCharsets.UTF_8),
            sealed.key(),
            sealed.fingerprint(),
            sealed.codes(),
            List.of("R. Lind"));
    this.state = SessionState.of(List.of(entry(1, Hash.NONE, commit)));
  }

  private static StoredEntry entry(long number, Hash previous, Fact fact) {
    Instant at = START.plusSeconds(60 * number);
    ZoneId zone = ZoneId.of("Europe/Vienna");
    return EntryText.write(new Entry(ID, NOTEBOOK, number, previous, List.of(), at, zone, fact));
  }

  SessionState state() {
    return state;
  }

  /** Writes a fact as it is, whatever the rules say. */
  void write(Fact fact) {
    StoredEntry last = state.entries().get(state.entries().size() - 1);
    state = state.after(List.of(entry(last.entry().number() + 1, last.hash(), fact)));
  }

  private void accept(Outcome outcome) {
    if (outcome instanceof Outcome.Refused refused) {
      throw new AssertionError("refused: " + refused.problems());
    }
    ((Outcome.Accepted) outcome).facts().forEach(this::write);
  }

  /** Something of the day. */
  void day(Function<DayCommands, Outcome> command) {
    accept(command.apply(new DayCommands(state)));
  }

  /** A step of the session. */
  void life(Function<LifeCommands, Outcome> command) {
    accept(command.apply(new LifeCommands(state)));
  }

  HelperSchedule schedule() {
    return sealed.schedule();
  }

  OpenKey key() {
    return ((Opening.Opened) sealing.open(sealed.key(), sealed.phrase())).key();
  }

  /** What the helper is to do by a sheet that was scanned or typed. */
  HelperSchedule scheduleOf(String sheet) {
    SheetReading reading =
        sealing.openFromSheet(
            sheet, state.planText().getBytes(StandardCharsets.UTF_8), state.planFingerprint());
    return sealing.schedule(((SheetReading.Opened) reading).key());
  }

  String phrase() {
    return sealed.phrase().text();
  }

  String payload() {
    return sealed.sheet().payload();
  }

  Map<String, byte[]> open(Sheets.Paper paper) {
    return new Sheets().open(state, paper);
  }

  byte[] helper(Sheets.Paper paper) {
    Keys.Result.Open open = new Keys.Result.Open(sealed.schedule(), sealed.sheet(), sealed.lock());
    return new Sheets().helper(state, open, phrase(), paper);
  }

  /** All sheets by file name. */
  Map<String, byte[]> sheets(Sheets.Paper paper) {
    Map<String, byte[]> all = new LinkedHashMap<>(open(paper));
    all.put("helper-sheet.pdf", helper(paper));
    return all;
  }
}
