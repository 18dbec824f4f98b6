package blindlap.desk;

import blindlap.exchange.PlanFields;
import blindlap.exchange.PlanText;
import blindlap.exchange.Protocols;
import blindlap.exchange.Starters;
import blindlap.fault.CanonicalJson;
import blindlap.fault.Problem;
import blindlap.fault.TextFault;
import blindlap.fault.TypedText;
import blindlap.plan.DayAnswers;
import blindlap.plan.EarlierNoise;
import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.plan.Protocol;
import blindlap.plan.Starter;
import blindlap.plan.TrailVersion;
import blindlap.seal.HelperPhrase;
import blindlap.seal.SessionKind;
import blindlap.session.Fact;
import blindlap.session.Notebook;
import blindlap.session.Outcome;
import blindlap.session.SessionState;
import blindlap.session.TrailTitle;
import blindlap.session.day.SessionId;
import blindlap.wording.HistoryWords;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;

/** Planning: drafts as typed, what a day can show, committing, and the helper's sheet. */
public final class Planning {
  private static final String DRAFT = "plan ";

  /** Far above any plan. */
  private static final int MOST_BYTES = 1_000_000;

  private final Notebook notebook;
  private final Sessions sessions;
  private final Committing committing;
  private final QuestionBook questions;
  private final SeriesPlans series;
  private final RiderHistory history;
  private final Supplier<Protocols> protocols;
  private final DayAnswers answers;
  private final PlanGates gates;

  /**
   * @param protocols that plans may name; read when first asked for
   */
  Planning(
      Notebook notebook,
      Sessions sessions,
      Committing committing,
      QuestionBook questions,
      SeriesPlans series,
      RiderHistory history,
      Supplier<Protocols> protocols) {
    this.notebook = notebook;
    this.sessions = sessions;
    this.committing = committing;
    this.questions = questions;
    this.series = series;
    this.history = history;
    this.protocols = protocols;
    this.answers = new DayAnswers(this::protocols);
    this.gates = PlanGates.of(notebook.trails());
  }

  /** Works out what days can show; keeps what it worked out. */
  public DayAnswers answers() {
    return answers;
  }

  /** Other sessions that ask what a plan asks, to be read before it is committed. */
  public List<String> askedBefore(Plan plan) {
    return HistoryWords.ahead(questions.before(plan));
  }

  /** The protocols that plans may name. */
  public List<Protocol> protocols() {
    return List.copyOf(protocols.get().all());
  }

  /** Numbers of the versions that the trail book has of a trail, rising. */
  public List<Integer> trailVersions(String trail) {
    return notebook.trails().titles().stream()
        .filter(title -> title.name().equals(trail.strip()))
        .map(TrailTitle::number)
        .toList();
  }

  /** Starting sets of components and measures. */
  public Starter starter() {
    return Starters.read(BundledProtocols.text("/blindlap/exchange/starters.yaml"));
  }

  /**
   * Judges a draft's fields as the plan file they are, and by what its series declared, at once:
   * what such a day can show is empty where {@link DayAnswers#takesLong it takes long}, and a large
   * rule is judged only where it is known already.
   */
  public PlanPreview preview(Map<String, ?> fields) {
    return preview(fields, history::earlier);
  }

  /**
   * The same where what earlier days tell was looked up before.
   *
   * @param days of a plan's rider on its trail, as far as is known yet
   */
  public PlanPreview preview(Map<String, ?> fields, Function<Plan, EarlierNoise> days) {
    return PlanPreview.atOnce(CanonicalJson.text(fields), protocols.get(), answers, days, gates)
        .in(series, answers);
  }

  /**
   * Judges a plan file, by itself and by what its series declared. A plan that says nothing of the
   * rider's noise takes it from earlier days.
   */
  public PlanPreview preview(String text) {
    return PlanPreview.of(text, protocols.get(), answers, history::earlier, gates)
        .in(series, answers);
  }

  /** Why a plan may not conceal a null run, if so. */
  public Optional<Problem> refuseNullRun(Plan plan) {
    return series.refuseNullRun(plan);
  }

  /** Which number the next session of a series has, from 1; empty while none names it. */
  public Optional<Integer> numberInSeries(String of) {
    return series.number(of);
  }

  /** The same, wholly judged, and without what such a day can show. */
  private PlanPreview judged(Map<String, ?> fields) {
    return PlanPreview.judged(
            CanonicalJson.text(fields), protocols.get(), answers, history::earlier, gates)
        .in(series, answers);
  }

  /** Drafts by name, their fields as typed. */
  public Map<String, Map<String, Object>> drafts() {
    Map<String, Map<String, Object>> drafts = new LinkedHashMap<>();
    notebook
        .drafts()
        .forEach(
            (name, text) -> {
              if (name.startsWith(DRAFT)) {
                drafts.put(name, PlanText.read(text).fields());
              }
            });
    return drafts;
  }

  /** A name that no draft has. */
  public String freshName() {
    Map<String, String> taken = notebook.drafts();
    int number = 1;
    while (taken.containsKey(DRAFT + number)) {
      number++;
    }
    return DRAFT + number;
  }

  /** Keeps a draft as typed; on disk when this returns. */
  public void keep(String name, Map<String, ?> fields) {
    notebook.putDraft(name, CanonicalJson.text(fields));
  }

  /** Forgets a draft. */
  public void forget(String name) {
    notebook.deleteDraft(name);
  }

  /**
   * Fields of a committed plan as the start of another: all but the day and the override. It stays
   * in its series as long as sessions can be added to that.
   */
  public Optional<Map<String, Object>> copyOf(SessionId session) {
    return sessions
        .state(session)
        .map(
            state -> {
              String id = state.plan().series();
              Map<String, Object> fields =
                  PlanText.read(CanonicalJson.text(PlanJson.tree(state.plan()))).fields();
              fields.remove("day");
              fields.remove("override");
              if (id == null || !series.running(id)) {
                fields.remove("series");
                fields.remove("series_sessions");
              }
              fields.remove("expectations");
              fields.computeIfPresent(
                  "trail_version", (name, version) -> kept(state.plan(), version));
              rule(fields, state.plan().protocol());
              return PlanFields.once(fields);
            });
  }

  /** The number alone of a version that the trail book has; gates are typed by nobody twice. */
  private Object kept(Plan plan, Object version) {
    TrailVersion own = plan.trailVersion();
    return own == null || gates.of(plan).trail().isEmpty()
        ? version
        : new LinkedHashMap<>(Map.of("number", String.valueOf(own.number())));
  }

  /**
   * A committed plan as the plan file it could have been; what anyone expects is left out until
   * unsealing.
   */
  public String fileOf(SessionState state) {
    Map<String, Object> fields =
        PlanText.read(CanonicalJson.text(PlanJson.tree(state.plan()))).fields();
    if (!state.unsealed()) {
      fields.remove("expectations");
    }
    rule(fields, state.plan().protocol());
    return PlanText.yaml(fields);
  }

  /** The rule by its name where the program knows it, else written out. */
  private void rule(Map<String, Object> fields, Protocol protocol) {
    if (protocols.get().named(protocol.name()).isPresent()) {
      fields.put("protocol", protocol.name());
    } else if (fields.get("protocol") instanceof Map<?, ?> own && protocol.own()) {
      Map<String, Object> rule = new LinkedHashMap<>();
      rule.put("stints", String.valueOf(protocol.usualStints()));
      for (String name : List.of("block", "patterns", "max_run", "min_trend_efficiency")) {
        rule.put(name, own.get(name));
      }
      fields.remove("protocol");
      fields.put("rule", rule);
    }
  }

  /**
   * A plan file's fields as typed.
   *
   * @param fields maps, lists and texts; empty if the text cannot be read
   * @param problems why it cannot be read; empty if it can
   */
  public record Imported(Map<String, Object> fields, List<Problem> problems) {}

  /** Reads a plan file into fields as typed, without judging them. */
  public Imported importText(String text) {
    PlanText.Fields read = PlanText.read(text);
    return new Imported(read.fields(), read.problems());
  }

  /**
   * Reads a plan file.
   *
   * @throws IOException if it cannot be read
   */
  public Imported importFile(Path file) throws IOException {
    long size = Files.size(file);
    if (size > MOST_BYTES) {
      return refused(Problem.of(TextFault.FILE_TOO_LARGE, "", size, MOST_BYTES));
    }
    return TypedText.decoded(Files.readAllBytes(file))
        .map(this::importText)
        .orElseGet(() -> refused(Problem.of(TextFault.NOT_UTF8, "")));
  }

  private static Imported refused(Problem problem) {
    return new Imported(Map.of(), List.of(problem));
  }

  /**
   * Writes a draft as a plan file, whole or not at all.
   *
   * @throws IOException if it cannot be written; what was there is kept
   */
  public void exportFile(Path file, Map<String, ?> fields) throws IOException {
    WholeFiles.write(file, exportText(fields).getBytes(StandardCharsets.UTF_8));
  }

  /**
   * Writes a committed plan as the plan file it could have been, whole or not at all.
   *
   * @throws IOException if it cannot be written; what was there is kept
   */
  public void writeFileOf(SessionState state, Path file) throws IOException {
    WholeFiles.write(file, fileOf(state).getBytes(StandardCharsets.UTF_8));
  }

  /** A draft as a plan file. */
  public String exportText(Map<String, ?> fields) {
    return PlanText.yaml(fields);
  }

  /** Begins the commit of a draft: judges it and draws the phrase alone. */
  public Committing.Begun begin(Map<String, ?> fields) {
    PlanPreview preview = judged(fields);
    return preview.problems().isEmpty()
        ? committing.begin(preview.plan().orElseThrow())
        : new Committing.Begun.Refused(preview.problems());
  }

  /**
   * Commits a draft under a phrase that is out: fixes the plan, draws, seals.
   *
   * @param nullRun setup that is secretly ridden under every name, 0 = A; empty for a comparison
   * @param signedBy names of those who read the plan
   */
  public Committing.Result seal(
      Map<String, ?> fields,
      Optional<Integer> nullRun,
      List<String> signedBy,
      HelperPhrase phrase) {
    Plan plan = judged(fields).plan().orElseThrow();
    Optional<Problem> refused = nullRun.flatMap(any -> series.refuseNullRun(plan));
    if (refused.isPresent()) {
      return new Committing.Result.Refused(List.of(refused.get()));
    }
    SessionKind kind = nullRun.map(SessionKind::nullRun).orElseGet(SessionKind::comparison);
    return committing.seal(plan, kind, signedBy, phrase);
  }

  /** Commits a draft whose rider swaps alone: fixes the plan, draws, covers. */
  public Committing.Result cover(Map<String, ?> fields, List<String> signedBy) {
    return committing.cover(judged(fields).plan().orElseThrow(), signedBy);
  }

  /** Commits the draft of an open noise run. */
  public Committing.Result fix(Map<String, ?> fields, List<String> signedBy) {
    return committing.fix(judged(fields).plan().orElseThrow(), signedBy);
  }

  /** Notes that the fingerprint of the plan was given to someone. */
  public Sessions.Result fingerprintGiven(SessionId session, String to) {
    return sessions.act(
        session,
        state ->
            Outcome.accepted(
                new Fact.FingerprintGiven(Fact.Which.PLAN, to, state.planFingerprint())));
  }
}
