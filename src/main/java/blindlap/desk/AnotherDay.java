package blindlap.desk;

import blindlap.fault.Problem;
import blindlap.plan.DeclaredNoise;
import blindlap.plan.PlanJson;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Another day like an earlier one: its plan as the start of a draft, with the noise that unsealed
 * days of this rider on this trail tell. Nothing of its order is taken over; another one is drawn
 * at commit.
 */
public final class AnotherDay {
  private final Planning planning;
  private final Sessions sessions;
  private final RiderHistory history;
  private final SeriesBook series;
  private final SeriesPlans plans;

  AnotherDay(
      Planning planning,
      Sessions sessions,
      RiderHistory history,
      SeriesBook series,
      SeriesPlans plans) {
    this.planning = planning;
    this.sessions = sessions;
    this.history = history;
    this.series = series;
    this.plans = plans;
  }

  /**
   * A draft that was made.
   *
   * @param fields of a plan file, as typed; its day is left out
   * @param noise from unsealed days; empty if they tell none, and the plan's own was kept
   * @param series id of the series declared in it; empty for a session of its own
   */
  public record Made(
      Map<String, Object> fields, Optional<DeclaredNoise> noise, Optional<String> series) {}

  /** The plan of a session again; empty if there is no such session. */
  public Optional<Made> like(SessionId session) {
    return sessions.state(session).flatMap(state -> made(state, Optional.empty()));
  }

  /**
   * The same as the first session of a new series. The session it is made from stays outside: its
   * result is known, or will be, before the series ends.
   *
   * @param sessionsDeclared how many sessions the series will have
   */
  public Optional<Made> seriesFrom(SessionId session, int sessionsDeclared) {
    return sessions
        .state(session)
        .flatMap(state -> made(state, Optional.of(freshSeries(session))))
        .map(
            made -> {
              made.fields().put("series_sessions", String.valueOf(sessionsDeclared));
              return made;
            });
  }

  /** What became of a request for the next session of a series. */
  public sealed interface Next {
    /**
     * A draft that holds to what the series declared.
     *
     * @param number of the session in its series, from 1
     * @param declared number of sessions declared; empty if none was
     * @param like short id of the session whose plan it is
     * @param replaces short id of the abandoned session whose place it takes, if it takes one
     */
    record Begun(
        Made made, int number, Optional<Integer> declared, String like, Optional<String> replaces)
        implements Next {}

    /** No session can be added to the series. */
    record Refused(List<Problem> problems) implements Next {}
  }

  /** Why no session can be added to a series; none if one can. */
  public List<Problem> refuseNext(String wanted) {
    return plans.refuseNext(wanted);
  }

  /** The next session of a series: its latest plan again, but for the day. */
  public Next next(String wanted) {
    List<Problem> problems = plans.refuseNext(wanted);
    if (!problems.isEmpty()) {
      return new Next.Refused(problems);
    }
    SeriesPlans.Next next = plans.next(wanted);
    Made made = made(next.base(), Optional.of(wanted)).orElseThrow();
    next.declared()
        .ifPresent(declared -> made.fields().put("series_sessions", String.valueOf(declared)));
    return new Next.Begun(
        made, next.number(), next.declared(), next.base().id().brief(), next.replaces());
  }

  /** Keeps a copy of a session's plan as a draft, and tells its name; empty without the session. */
  public Optional<String> copy(SessionId session) {
    return planning
        .copyOf(session)
        .map(
            fields -> {
              String name = planning.freshName();
              planning.keep(name, fields);
              return name;
            });
  }

  /** Keeps what was made as a draft, and tells its name. */
  public String keep(Made made) {
    String name = planning.freshName();
    planning.keep(name, made.fields());
    return name;
  }

  private Optional<Made> made(SessionState state, Optional<String> declared) {
    Optional<DeclaredNoise> noise =
        state
            .plan()
            .primary()
            .flatMap(
                primary ->
                    history.suggestNoise(
                        state.plan().rider(),
                        state.plan().trail(),
                        primary,
                        state.plan().laps().scored()));
    return planning
        .copyOf(state.id())
        .map(
            copied -> {
              Map<String, Object> fields = new LinkedHashMap<>(copied);
              noise.ifPresent(known -> fields.put("noise", PlanJson.typed(known)));
              declared.ifPresent(id -> fields.put("series", id));
              return new Made(fields, noise, declared);
            });
  }

  private String freshSeries(SessionId session) {
    Set<String> taken = series.all().stream().map(SeriesBook.Line::id).collect(Collectors.toSet());
    List<Map<String, Object>> drafts = List.copyOf(planning.drafts().values());
    drafts.forEach(draft -> taken.add(String.valueOf(draft.get("series"))));
    String id = "after-" + session.brief();
    int number = 2;
    String free = id;
    while (taken.contains(free)) {
      free = id + "-" + number++;
    }
    return free;
  }
}
