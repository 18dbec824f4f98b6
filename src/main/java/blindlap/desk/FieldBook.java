package blindlap.desk;

import blindlap.compute.Engine;
import blindlap.compute.FieldJson;
import blindlap.fault.Problem;
import blindlap.paper.FieldReport;
import blindlap.paper.ReportDocument;
import blindlap.paper.ReportInput;
import blindlap.paper.SeriesReport;
import blindlap.plan.Setup;
import blindlap.review.Analysis;
import blindlap.review.FieldFinding;
import blindlap.review.FieldProfiles;
import blindlap.review.FieldSessions;
import blindlap.review.QuestionHistory;
import blindlap.session.KeptProfile;
import blindlap.session.Notebook;
import blindlap.session.Profiles;
import blindlap.session.SessionState;
import blindlap.session.day.Step;
import blindlap.wording.FieldWords;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The fields of a notebook: setups of one rider, trail and measure over several days. */
public final class FieldBook {
  private final Notebook notebook;
  private final Sessions sessions;
  private final FieldSessions fields;
  private final Profiles profiles;

  FieldBook(Notebook notebook, Sessions sessions, SeriesBook series) {
    this.profiles = notebook.profiles();
    this.notebook = notebook;
    this.sessions = sessions;
    this.fields = new FieldSessions(series::unfinished, OpenedDays::of);
  }

  /**
   * What is asked for, as typed; what is null was left out.
   *
   * @param reference name or id of a setup
   */
  public record Wanted(
      @Nullable String rider,
      @Nullable String trail,
      @Nullable String measure,
      @Nullable String reference) {
    /** Nothing in particular. */
    public static final Wanted ANY = new Wanted(null, null, null, null);
  }

  /** What is answered. */
  public sealed interface Result {
    /**
     * The field.
     *
     * @param beside profiles of the notebook with what the days found of their measures
     */
    record Found(FieldFinding finding, FieldProfiles beside) implements Result {}

    /** Nothing, and why. */
    record Refused(List<Problem> problems) implements Result {
      public Refused {
        problems = List.copyOf(problems);
      }
    }
  }

  /** All fields, the one with the latest day first. */
  public List<FieldFinding.Asked> all() {
    List<SessionState> found = new ArrayList<>();
    notebook.summaries().stream()
        .filter(each -> !each.step().sealed() || each.step() == Step.ABANDONED)
        .filter(each -> each.kind().drawn())
        .forEach(each -> sessions.state(each.id()).ifPresent(found::add));
    return fields.all(found);
  }

  /** The field that is asked for, if there is exactly one such. */
  public Result find(Wanted wanted) {
    List<FieldFinding.Asked> all = all();
    if (all.isEmpty()) {
      return refused(Problem.of(DeskFault.NO_FIELD, ""));
    }
    List<FieldFinding.Asked> fitting = all.stream().filter(each -> fits(wanted, each)).toList();
    if (fitting.size() != 1) {
      String those = listed(fitting.isEmpty() ? all : fitting);
      return refused(
          Problem.of(
              fitting.isEmpty() ? DeskFault.NO_SUCH_FIELD : DeskFault.SEVERAL_FIELDS, "", those));
    }
    return of(fitting.get(0), wanted.reference());
  }

  private static String listed(List<FieldFinding.Asked> fields) {
    return String.join("; ", fields.stream().map(FieldWords::named).toList());
  }

  private static boolean fits(Wanted wanted, FieldFinding.Asked field) {
    return same(wanted.rider(), field.rider())
        && same(wanted.trail(), field.trail())
        && same(wanted.measure(), field.measure());
  }

  private static boolean same(@Nullable String typed, String name) {
    return typed == null || QuestionHistory.plain(typed).equals(QuestionHistory.plain(name));
  }

  /**
   * A field.
   *
   * @param reference name or id of the setup that others are compared with; null for the one of
   *     most days
   */
  public Result of(FieldFinding.Asked asked, @Nullable String reference) {
    List<SessionState> own = own(asked);
    FieldFinding usual = fields.finding(asked, Optional.empty(), own);
    if (reference == null) {
      return found(usual, own);
    }
    Optional<Setup> setup =
        usual.setups().stream()
            .filter(each -> same(reference, each.name()) || reference.equals(each.id()))
            .findFirst();
    return setup.isEmpty()
        ? refused(
            Problem.of(
                DeskFault.NO_SUCH_REFERENCE,
                "",
                reference,
                FieldWords.named(asked),
                String.join(", ", usual.setups().stream().map(Setup::name).toList())))
        : found(fields.finding(asked, Optional.of(setup.get().id()), own), own);
  }

  private Result found(FieldFinding finding, List<SessionState> own) {
    List<KeptProfile> all = profiles.all();
    List<FieldProfiles.Opened> days = new ArrayList<>();
    // Without a profile nobody asks what the days found, which takes its time.
    for (FieldFinding.Day day : all.isEmpty() ? List.<FieldFinding.Day>of() : finding.days()) {
      own.stream()
          .filter(state -> state.id().text().equals(day.session()))
          .forEach(
              state ->
                  days.add(
                      new FieldProfiles.Opened(
                          day,
                          state.opening().orElseThrow().entry().at(),
                          Analysis.of(OpenedDays.of(state)))));
    }
    return new Result.Found(finding, FieldProfiles.of(all, days));
  }

  private List<SessionState> own(FieldFinding.Asked asked) {
    List<SessionState> found = new ArrayList<>();
    notebook.summaries().stream()
        .filter(each -> same(asked.rider(), each.rider()) && same(asked.trail(), each.trail()))
        .forEach(each -> sessions.state(each.id()).ifPresent(found::add));
    return found;
  }

  private static Result refused(Problem problem) {
    return new Result.Refused(List.of(problem));
  }

  /**
   * The report of a field, HTML and PDF by file name.
   *
   * @param black black on white instead of colour
   */
  public Map<String, byte[]> report(Result.Found found, boolean black) {
    FieldFinding finding = found.finding();
    List<SeriesReport.Fingerprints> fingerprints = new ArrayList<>();
    for (SessionState state : own(finding.asked())) {
      if (finding.days().stream().anyMatch(day -> day.session().equals(state.id().text()))) {
        fingerprints.add(
            new SeriesReport.Fingerprints(
                state.id().brief(),
                state.planFingerprint().grouped(),
                state.reviewFingerprint().map(f -> f.grouped()).orElse("")));
      }
    }
    ReportDocument report =
        FieldReport.of(
            new FieldReport.Input(
                finding,
                found.beside(),
                fingerprints,
                Engine.version(),
                black ? ReportInput.Ink.BLACK : ReportInput.Ink.COLOUR));
    String name = "field-" + finding.asked().rider() + "-" + finding.asked().trail();
    name = name.replaceAll("[^\\p{L}\\p{N}_-]+", "_");
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put(name + ".html", report.html().getBytes(StandardCharsets.UTF_8));
    files.put(name + ".pdf", report.pdf());
    return files;
  }

  /** A field as JSON with fixed names. */
  public static String json(Result.Found found) {
    return FieldJson.write(found.finding(), found.beside());
  }
}
