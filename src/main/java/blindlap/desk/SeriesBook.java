package blindlap.desk;

import blindlap.compute.SeriesJson;
import blindlap.fault.Problem;
import blindlap.plan.Plan;
import blindlap.review.SeriesAnalysis;
import blindlap.review.SeriesFinding;
import blindlap.review.SeriesPlace;
import blindlap.session.Fact;
import blindlap.session.Head;
import blindlap.session.Notebook;
import blindlap.session.Outcome;
import blindlap.session.ReasonFor;
import blindlap.session.SeriesEnded;
import blindlap.session.SeriesStood;
import blindlap.session.SessionFault;
import blindlap.session.SessionState;
import blindlap.session.SessionSummary;
import blindlap.session.day.SessionId;
import blindlap.session.day.Step;
import blindlap.wording.SeriesWords;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** The series of a notebook: what they declared, how far they are, what they found. */
public final class SeriesBook {
  private final Notebook notebook;
  private final Sessions sessions;
  private final KeptSeries kept = new KeptSeries();

  SeriesBook(Notebook notebook, Sessions sessions) {
    this.notebook = notebook;
    this.sessions = sessions;
  }

  /**
   * A series in a list.
   *
   * @param id of the series
   * @param question as its latest session has it
   * @param progress how far it is
   * @param abandoned sessions that were abandoned
   */
  public record Line(String id, String question, SeriesFinding.Progress progress, int abandoned) {}

  /**
   * A session outside a declared series that asks again what an unsealed one asked.
   *
   * @param earlier the session whose result was known
   * @param later the session committed after it
   */
  public record Repeat(SessionSummary earlier, SessionSummary later) {}

  /** All series, the latest first. */
  public List<Line> all() {
    Map<String, List<SessionSummary>> bySeries = new LinkedHashMap<>();
    for (SessionSummary each : notebook.summaries()) {
      String series = each.series();
      if (series != null) {
        bySeries.computeIfAbsent(series, k -> new ArrayList<>()).add(each);
      }
    }
    List<Line> lines = new ArrayList<>();
    bySeries.forEach((id, each) -> lines.add(line(id, each)));
    return lines;
  }

  private Line line(String id, List<SessionSummary> each) {
    return new Line(
        id,
        each.get(0).question(),
        SeriesAnalysis.progress(of(id), OpenedDays::of),
        (int) each.stream().filter(s -> s.step() == Step.ABANDONED).count());
  }

  /** Sessions of a series, the first first. */
  List<SessionState> of(String series) {
    List<SessionState> found = new ArrayList<>();
    for (SessionSummary each : notebook.summaries()) {
      if (series.equals(each.series())) {
        sessions.state(each.id()).ifPresent(state -> found.add(0, state));
      }
    }
    return found;
  }

  /** True for a session of a series that is not at its end: nothing is told of it yet. */
  public boolean unfinished(SessionState state) {
    String id = state.plan().series();
    return id != null
        && SeriesAnalysis.progress(of(id), OpenedDays::of).stage() != SeriesFinding.Stage.OPEN;
  }

  /** Why nothing of an unsealed session is told yet: its series is not at its end. */
  Optional<Problem> refuseTelling(SessionState state) {
    String id = state.plan().series();
    if (id == null) {
      return Optional.empty();
    }
    SeriesFinding.Progress progress = SeriesAnalysis.progress(of(id), OpenedDays::of);
    return progress.stage() == SeriesFinding.Stage.OPEN
        ? Optional.empty()
        : Optional.of(
            Problem.of(
                DeskFault.SERIES_SEALED,
                "",
                id,
                progress.unsealed(),
                progress.declared().orElse(progress.sessions())));
  }

  /** Where a session stands in its series, and what that answers; empty outside a series. */
  Optional<SeriesPlace> place(SessionState state) {
    String id = state.plan().series();
    return id == null
        ? Optional.empty()
        : Optional.of(SeriesPlace.of(kept.answer(of(id)), state.id().text()));
  }

  /** What a series found; empty if no session names it. */
  public Optional<SeriesFinding> finding(String series) {
    List<SessionState> all = of(series);
    return all.isEmpty() ? Optional.empty() : Optional.of(kept.whole(all));
  }

  /**
   * Other sessions that ask the same question, or compare the same setups for a rider of the
   * series, in words; abandoned ones with their reason.
   */
  public List<String> elsewhere(SeriesFinding finding) {
    Set<String> setups = new TreeSet<>();
    finding.setups().forEach(setup -> setups.add(setup.name()));
    Set<String> riders = new TreeSet<>();
    finding.parts().forEach(part -> riders.add(plain(part.rider())));
    List<String> found = new ArrayList<>();
    for (SessionSummary each : notebook.summaries()) {
      boolean same =
          plain(each.question()).equals(plain(finding.question()))
              || each.kind() == Plan.Kind.COMPARISON
                  && riders.contains(plain(each.rider()))
                  && new TreeSet<>(each.setups()).equals(setups);
      if (same && !finding.id().equals(each.series())) {
        found.add(
            SeriesWords.elsewhere(
                each,
                each.step() == Step.ABANDONED
                    ? sessions.state(each.id()).flatMap(SessionState::abandonedBecause)
                    : Optional.empty()));
      }
    }
    return found;
  }

  private static String plain(String words) {
    return words.strip().toLowerCase(Locale.ROOT);
  }

  /** The finding as JSON with fixed names; empty if no session names it. */
  public Optional<String> json(String series) {
    return finding(series).map(SeriesJson::write);
  }

  /**
   * Why a session may not be unsealed on its own: its declared series is not complete. All are
   * unsealed together at the end (docs/method.md#series), unless the series is ended early.
   *
   * @param ending why and by whom the series is ended early; empty if nobody asked for that
   */
  Optional<List<Problem>> refuseUnseal(SessionState state, Optional<SeriesEnded> ending) {
    return refusal(state, ending).map(List::of);
  }

  private Optional<Problem> refusal(SessionState state, Optional<SeriesEnded> ending) {
    String series = state.plan().series();
    Integer declared = state.plan().seriesSessions();
    if (series == null || declared == null) {
      return ending.map(reason -> Problem.of(DeskFault.NO_SERIES_TO_END, ""));
    }
    if (ending.filter(e -> e.reason().isBlank() || e.decidedBy().isBlank()).isPresent()) {
      return Optional.of(
          Problem.of(SessionFault.REASON_MISSING, "", ReasonFor.SERIES_ENDED.name()));
    }
    // Only sessions that can be pooled count: a noise run or another question that names the series
    // must not open the others before their time.
    SeriesFinding.Progress progress = SeriesAnalysis.progress(of(series), OpenedDays::of);
    int needed = Math.max(declared, progress.declared().orElse(declared));
    if (progress.ended()) {
      return Optional.empty();
    }
    if (progress.closed() >= needed) {
      return ending.map(reason -> Problem.of(DeskFault.SERIES_COMPLETE, "", series, needed));
    }
    return ending.isPresent()
        ? Optional.empty()
        : Optional.of(
            Problem.of(DeskFault.SERIES_UNFINISHED, "", series, progress.closed(), needed));
  }

  /**
   * Where the other sessions of a session's series stand: written with the closing of its review,
   * the opening of its seal and its abandoning. None outside a series, or alone in one.
   */
  List<Fact> standing(SessionState state) {
    String series = state.plan().series();
    if (series == null) {
      return List.of();
    }
    Map<SessionId, List<Head>> heads = new LinkedHashMap<>();
    for (SessionSummary each : notebook.summaries()) {
      if (series.equals(each.series()) && !each.id().equals(state.id())) {
        heads.put(each.id(), notebook.heads(each.id()));
      }
    }
    return heads.isEmpty() ? List.of() : List.of(new SeriesStood(heads));
  }

  /**
   * Ends a declared series early, with an entry in its first session: it pools no verdict from then
   * on, and its sessions may be unsealed. Refused where it is complete, ended, or not declared.
   */
  public Sessions.Result end(String series, SeriesEnded ending) {
    List<SessionState> all = of(series);
    Optional<SessionState> first = all.stream().filter(SessionState::hasKey).findFirst();
    Optional<Problem> refused =
        first.isEmpty()
            ? Optional.of(Problem.of(DeskFault.NO_SUCH_SERIES, "", series))
            : all.stream().anyMatch(SeriesAnalysis::isEnded)
                ? Optional.of(Problem.of(DeskFault.SERIES_IS_ENDED, "", series))
                : refusal(first.get(), Optional.of(ending));
    return refused.isPresent()
        ? new Sessions.Result.Refused(List.of(refused.get()))
        : sessions.act(first.orElseThrow().id(), latest -> Outcome.accepted(ending));
  }

  /** What a series answers as far as that may be told, without its measures beside the primary. */
  Optional<SeriesFinding> answer(String series) {
    List<SessionState> all = of(series);
    return all.isEmpty() ? Optional.empty() : Optional.of(kept.answer(all));
  }

  /** The same, but empty where it would have to be worked out and nobody has asked for it yet. */
  Optional<SeriesFinding> known(String series) {
    List<SessionState> all = of(series);
    return all.isEmpty() ? Optional.empty() : kept.known(all);
  }

  /**
   * What is written where a declared series is ended early, so that its sessions may be unsealed;
   * no verdict is pooled. Nothing where that stands in one of its sessions already.
   */
  List<Fact> ending(SessionState state, Optional<SeriesEnded> ending) {
    String series = state.plan().series();
    return series == null || of(series).stream().anyMatch(SeriesAnalysis::isEnded)
        ? List.of()
        : ending.<Fact>map(ended -> ended).stream().toList();
  }

  /**
   * Sessions outside declared series that compare the same setups for the same rider on the same
   * trail and were committed after an earlier one, in a series or out of it, had been unsealed:
   * repeats decided after seeing a result, never pooled (docs/method.md#history).
   */
  public List<Repeat> repeats() {
    Map<String, List<SessionSummary>> alike = new LinkedHashMap<>();
    for (SessionSummary each : notebook.summaries()) {
      if (each.kind() == Plan.Kind.COMPARISON) {
        String key =
            plain(each.rider())
                + "\n"
                + plain(each.trail())
                + "\n"
                + each.setups().stream().sorted().toList();
        alike.computeIfAbsent(key, k -> new ArrayList<>()).add(each);
      }
    }
    List<Repeat> repeats = new ArrayList<>();
    alike.values().stream().filter(list -> list.size() > 1).forEach(l -> repeats(l, repeats));
    return repeats;
  }

  /**
   * Each later session once, beside the one whose result was known first. Only sessions that could
   * have been the first are read whole.
   */
  private void repeats(List<SessionSummary> alike, List<Repeat> found) {
    List<SessionSummary> byCommit =
        alike.stream().sorted(Comparator.comparing(SessionSummary::committedAt)).toList();
    SessionSummary first = null;
    Instant known = Instant.MAX;
    for (SessionSummary each : byCommit) {
      if (first != null && each.committedAt().isAfter(known) && !ofDeclared(each)) {
        found.add(new Repeat(first, each));
        continue;
      }
      Instant unsealed =
          each.step().sealed() || first != null && each.committedAt().isAfter(known)
              ? Instant.MAX
              : sessions
                  .state(each.id())
                  .filter(this::told)
                  .flatMap(SeriesAnalysis::unsealedAt)
                  .orElse(Instant.MAX);
      if (unsealed.isBefore(known)) {
        first = each;
        known = unsealed;
      }
    }
  }

  /** A declared series asks once, however many sessions it has. */
  private boolean ofDeclared(SessionSummary summary) {
    return summary.series() != null
        && sessions
            .state(summary.id())
            .filter(state -> state.plan().seriesSessions() != null)
            .isPresent();
  }

  /** A null run answers nothing, and a session of an unfinished series has told nothing yet. */
  private boolean told(SessionState state) {
    return state.unsealed() && !unfinished(state) && !OpenedDays.of(state).nullRun();
  }
}
