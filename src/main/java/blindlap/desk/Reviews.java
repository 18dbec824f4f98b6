package blindlap.desk;

import blindlap.compute.Engine;
import blindlap.compute.FindingJson;
import blindlap.compute.FindingRequests;
import blindlap.compute.TellingJson;
import blindlap.exchange.DataPackage;
import blindlap.exchange.DataPackageReader;
import blindlap.fault.Problem;
import blindlap.fault.Unreadable;
import blindlap.fault.Unusable;
import blindlap.paper.CardFiles;
import blindlap.paper.Report;
import blindlap.paper.ReportDocument;
import blindlap.paper.ReportInput;
import blindlap.paper.TellingReport;
import blindlap.paper.TellingReportInput;
import blindlap.review.Analysis;
import blindlap.review.Beside;
import blindlap.review.DayRecord;
import blindlap.review.Finding;
import blindlap.review.ProfileOnDay;
import blindlap.review.QuestionHistory;
import blindlap.review.TellingAnalysis;
import blindlap.session.Fact;
import blindlap.session.Outcome;
import blindlap.session.Profiles;
import blindlap.session.ReasonFor;
import blindlap.session.SessionFault;
import blindlap.session.SessionState;
import blindlap.session.day.LapId;
import blindlap.wording.AmendmentWords;
import blindlap.wording.FindingText;
import blindlap.wording.FindingWords;
import blindlap.wording.FingerprintWords;
import blindlap.wording.NullRunWords;
import blindlap.wording.ProfilesFoundWords;
import blindlap.wording.TellingNames;
import blindlap.wording.TellingText;
import blindlap.wording.TellingWords;
import blindlap.wording.day.Words;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Findings of unsealed sessions: as text, as JSON, as a report. */
public final class Reviews {
  private final Sessions sessions;
  private final QuestionBook questions;
  private final SeriesBook series;
  private final Profiles profiles;

  Reviews(Sessions sessions, QuestionBook questions, SeriesBook series, Profiles profiles) {
    this.sessions = sessions;
    this.questions = questions;
    this.series = series;
    this.profiles = profiles;
  }

  /** Why nothing that depends on the key may be shown, if so. */
  public Optional<List<Problem>> refuse(SessionState state) {
    if (!state.hasKey()) {
      return Optional.of(List.of(Problem.of(SessionFault.OPEN_NOISE_RUN, "")));
    }
    return state.unsealed()
        ? series.refuseTelling(state).map(List::of)
        : Optional.of(List.of(Problem.of(SessionFault.STILL_SEALED, "", state.step())));
  }

  /** True for a session of a series that is not at its end: nothing of it is told yet. */
  public boolean waits(SessionState state) {
    return series.unfinished(state);
  }

  /** The finding of an unsealed session. */
  public Finding finding(SessionState state) {
    return Analysis.of(day(state));
  }

  /** The count of an unsealed telling run. */
  public TellingAnalysis telling(SessionState state) {
    return TellingAnalysis.of(day(state));
  }

  /** What the analysis of an unsealed session uses. */
  public static DayRecord day(SessionState state) {
    return OpenedDays.of(state);
  }

  /** The verdict phrase of an unsealed session; empty while sealed or without a comparison. */
  public Optional<String> verdict(SessionState state) {
    if (refuse(state).isPresent() || state.plan().setups().size() < 2) {
      return Optional.empty();
    }
    return TellingAnalysis.is(state.plan())
        ? Optional.of(counted(state).phrase())
        : Analysis.verdictOnly(day(state))
            .filter(c -> c.verdict().isPresent())
            .map(c -> new FindingWords(state.plan(), c).phrase());
  }

  /** The difference in one sentence; empty while sealed or without a comparison. */
  public Optional<String> headline(SessionState state) {
    if (refuse(state).isPresent() || state.plan().setups().size() < 2) {
      return Optional.empty();
    }
    return TellingAnalysis.is(state.plan())
        ? Optional.of(counted(state).headline().text())
        : headline(day(state));
  }

  private static TellingWords counted(SessionState state) {
    return new TellingWords(TellingAnalysis.finding(day(state)), TellingNames.of(state.plan()));
  }

  private static Optional<String> headline(DayRecord day) {
    return Analysis.verdictOnly(day)
        .map(c -> NullRunWords.careful(day, new FindingWords(day.plan(), c)));
  }

  /** The finding in sentences. */
  public List<String> text(SessionState state) {
    Beside beside = beside(state);
    List<String> lines = new ArrayList<>();
    if (TellingAnalysis.is(state.plan())) {
      lines.addAll(new TellingText(telling(state)).lines(beside));
    } else {
      Finding finding = finding(state);
      lines.addAll(new FindingText(finding).lines(beside));
      ProfilesFoundWords.of(finding, beside.profiles()).ifPresent(p -> lines.addAll(p.lines()));
    }
    AmendmentWords.mark(state).ifPresent(lines::add);
    lines.addAll(AmendmentWords.lines(state));
    lines.add(FingerprintWords.file(state));
    lines.add(Words.of("cautions").say("trust"));
    return lines;
  }

  /** The finding as JSON with fixed names. */
  public String json(SessionState state) {
    return json(state, beside(state));
  }

  private String json(SessionState state, Beside beside) {
    return TellingAnalysis.is(state.plan())
        ? TellingJson.write(telling(state), beside)
        : FindingJson.write(finding(state), beside);
  }

  /**
   * What stands beside the finding of an unsealed session. Whoever asks looks at it: the first look
   * under another edition than it was unsealed under is written down.
   */
  public Beside beside(SessionState state) {
    return packed(state)
        .with(
            state
                .opening()
                .map(opening -> ProfileOnDay.of(profiles.all(), opening.entry().at()))
                .orElse(List.of()));
  }

  /** What a data package holds of it: profiles belong to whoever reads, not to the day. */
  private Beside packed(SessionState state) {
    return new FirstLooks(sessions).beside(state, questions.of(state)).in(series.place(state));
  }

  /** True for a session that asks again what was known when it was committed. */
  boolean repeat(SessionState state) {
    return questions.of(state).repeats().isPresent();
  }

  /**
   * The report of an unsealed session: HTML and PDF by file name.
   *
   * @param black black on white instead of colour
   */
  public Map<String, byte[]> report(SessionState state, boolean black) {
    ReportDocument report = made(state, black);
    String name = "report-" + state.plan().day() + "-" + state.id().brief();
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put(name + ".html", report.html().getBytes(StandardCharsets.UTF_8));
    files.put(name + ".pdf", report.pdf());
    return files;
  }

  /**
   * The card of an unsealed session, to be published: pictures in two sizes and their words, by
   * file name.
   *
   * @param black black on white instead of colour
   */
  public Map<String, byte[]> card(SessionState state, boolean black) {
    Beside beside = beside(state);
    return TellingAnalysis.is(state.plan())
        ? CardFiles.of(state, telling(state), beside, black)
        : CardFiles.of(state, finding(state), beside, black);
  }

  /** The report as one HTML page. */
  public String html(SessionState state, boolean black) {
    return made(state, black).html();
  }

  private ReportDocument made(SessionState state, boolean black) {
    if (TellingAnalysis.is(state.plan())) {
      return TellingReport.of(
          new TellingReportInput(
              state,
              telling(state),
              Engine.version(),
              beside(state),
              black ? ReportInput.Ink.BLACK : ReportInput.Ink.COLOUR));
    }
    return Report.of(
        new ReportInput(
            state,
            finding(state),
            Engine.version(),
            beside(state),
            black ? ReportInput.Ink.BLACK : ReportInput.Ink.COLOUR));
  }

  /** The data package of a session by file name; codes only while it is sealed. */
  public Map<String, byte[]> export(SessionState state) {
    return refuse(state).isPresent() || state.plan().setups().size() < 2
        ? DataPackage.blind(state)
        : open(state, json(state, packed(state)), questions.of(state));
  }

  /** The package of an unsealed session with a finding as JSON. */
  static Map<String, byte[]> open(SessionState state, String finding, QuestionHistory history) {
    return DataPackage.open(state, day(state), finding, started(state), amendments(state), history);
  }

  private static Map<LapId, Instant> started(SessionState state) {
    Map<LapId, Instant> started = new HashMap<>();
    state.laps().forEach(lap -> lap.startedAt().ifPresent(at -> started.put(lap.id(), at)));
    return started;
  }

  private static List<DataPackage.Amendment> amendments(SessionState state) {
    List<DataPackage.Amendment> made = new ArrayList<>();
    state
        .entries()
        .forEach(
            stored -> {
              if (stored.entry().fact() instanceof Fact.AmendmentMade fact
                  && state.amendments().contains(fact)) {
                made.add(
                    new DataPackage.Amendment(stored.entry().at(), fact.text(), fact.reason()));
              }
            });
    return made;
  }

  /**
   * The finding of a data package.
   *
   * @param files contents by file name
   * @throws Unreadable if it cannot be read
   * @throws Unusable if what it holds cannot be compared
   */
  public static Finding fromPackage(Map<String, byte[]> files) {
    return Analysis.of(DataPackageReader.read(files));
  }

  /**
   * How a number was computed.
   *
   * @param about which number, in words
   * @param request the calculation request that gives it again
   */
  public record How(String about, String request) {}

  /** How each number of a telling run was computed. */
  public static List<How> how(TellingAnalysis analysis) {
    return how(TellingJson.requests(analysis));
  }

  private static List<How> how(List<FindingRequests.Named> requests) {
    Words words = Words.of("computed");
    return requests.stream()
        .map(n -> new How(words.say(n.about(), n.measure()), n.json()))
        .toList();
  }

  /** How each number of a finding was computed. */
  public static List<How> how(Finding finding) {
    return how(FindingRequests.of(finding));
  }

  /** Writes down who received a fingerprint. */
  public Sessions.Result given(SessionState state, String to) {
    return sessions.act(
        state.id(),
        latest ->
            to.isBlank()
                ? Outcome.refused(SessionFault.REASON_MISSING, "", ReasonFor.FINGERPRINT_GIVEN)
                : Outcome.accepted(latestGiven(latest, to.strip())));
  }

  private static Fact latestGiven(SessionState state, String to) {
    return state
        .reviewFingerprint()
        .map(review -> new Fact.FingerprintGiven(Fact.Which.REVIEW, to, review))
        .orElseGet(() -> new Fact.FingerprintGiven(Fact.Which.PLAN, to, state.planFingerprint()));
  }

  /** Writes down that a report was written. */
  public void reported(SessionState state, String name) {
    sessions.act(state.id(), latest -> Outcome.accepted(new Fact.ReportWritten(name)));
  }
}
