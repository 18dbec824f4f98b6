package blindlap.review;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Setup;
import blindlap.session.SessionState;
import blindlap.session.day.Step;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;

/** Which sessions enter a field, and why the others do not (docs/method.md#field-days). */
public final class FieldSessions {
  private final Predicate<SessionState> hidden;
  private final Function<SessionState, DayRecord> open;

  /**
   * @param hidden true for a session of a series that is not at its end
   * @param open makes the record of an unsealed session
   */
  public FieldSessions(Predicate<SessionState> hidden, Function<SessionState, DayRecord> open) {
    this.hidden = hidden;
    this.open = open;
  }

  /** A session that may enter as far as can be seen from it alone. */
  private record Candidate(SessionState state, FieldEntry entry) {}

  /**
   * The fields that there are: of every rider, trail and primary measure of which a day can enter,
   * the one with the latest day first.
   *
   * @param sessions any
   */
  public List<FieldFinding.Asked> all(List<SessionState> sessions) {
    Map<FieldFinding.Asked, FieldFinding.Asked> found = new LinkedHashMap<>();
    List<SessionState> latest = new ArrayList<>(sorted(sessions));
    java.util.Collections.reverse(latest);
    for (SessionState state : latest) {
      if (alone(state).isEmpty()) {
        FieldFinding.Asked asked =
            new FieldFinding.Asked(
                state.plan().rider(),
                state.plan().trail(),
                state.plan().primary().orElseThrow().name());
        found.putIfAbsent(plain(asked), asked);
      }
    }
    return List.copyOf(found.values());
  }

  private static FieldFinding.Asked plain(FieldFinding.Asked asked) {
    return new FieldFinding.Asked(
        QuestionHistory.plain(asked.rider()),
        QuestionHistory.plain(asked.trail()),
        QuestionHistory.plain(asked.measure()));
  }

  private static List<SessionState> sorted(List<SessionState> sessions) {
    return sessions.stream()
        .sorted(
            Comparator.comparing((SessionState state) -> state.plan().day())
                .thenComparing(SessionState::committedAt)
                .thenComparing(state -> state.id().text()))
        .toList();
  }

  /**
   * A field.
   *
   * @param reference id of the setup that others are compared with; empty for the one of most days
   * @param sessions any; those of other riders and trails are left aside
   */
  public FieldFinding finding(
      FieldFinding.Asked asked, Optional<String> reference, List<SessionState> sessions) {
    List<SessionState> own =
        sorted(sessions).stream()
            .filter(state -> asked.isThatOf(state.plan().rider(), state.plan().trail()))
            .toList();
    Map<SessionState, FieldFinding.Why> why = new LinkedHashMap<>();
    List<Candidate> candidates = new ArrayList<>();
    for (SessionState state : own) {
      Optional<FieldFinding.Why> reason = alone(state).or(() -> measured(asked, state));
      if (reason.isPresent()) {
        why.put(state, reason.get());
        continue;
      }
      candidate(state, why).ifPresent(candidates::add);
    }
    Optional<Declared> usual = usual(candidates);
    List<FieldEntry> entries = new ArrayList<>();
    for (Candidate candidate : candidates) {
      Optional<FieldFinding.Why> reason =
          Declared.of(candidate.entry()).against(usual.orElseThrow());
      if (reason.isPresent()) {
        why.put(candidate.state(), reason.get());
      } else {
        entries.add(candidate.entry());
      }
    }
    List<FieldFinding.Out> out =
        own.stream()
            .filter(why::containsKey)
            .map(state -> out(state, java.util.Objects.requireNonNull(why.get(state))))
            .toList();
    return new FieldAnalysis(asked, reference, entries, out).finding();
  }

  private static FieldFinding.Out out(SessionState state, FieldFinding.Why why) {
    return new FieldFinding.Out(
        state.id().text(),
        state.plan().day(),
        state.plan().setups().stream().map(Setup::name).toList(),
        why);
  }

  /** Why a session enters no field at all; empty for one that may, as far as its plan says. */
  private Optional<FieldFinding.Why> alone(SessionState state) {
    Plan plan = state.plan();
    // One that is abandoned once its finding is known stays in, or days could be picked by result.
    if (abandoned(state) && !state.unsealed()) {
      return Optional.of(FieldFinding.Why.ABANDONED);
    }
    if (plan.kind() != Plan.Kind.COMPARISON || !state.hasKey()) {
      return Optional.of(FieldFinding.Why.NO_COMPARISON);
    }
    if (!plan.level().blind()) {
      return Optional.of(FieldFinding.Why.KNEW);
    }
    // Before its end nothing of a session is told that its plan does not say.
    if (!state.unsealed()) {
      return Optional.of(FieldFinding.Why.SEALED);
    }
    if (hidden.test(state)) {
      return Optional.of(FieldFinding.Why.SERIES);
    }
    return open.apply(state).nullRun() ? Optional.of(FieldFinding.Why.NULL_RUN) : Optional.empty();
  }

  private static Optional<FieldFinding.Why> measured(FieldFinding.Asked asked, SessionState state) {
    String name = state.plan().primary().map(Measure::name).orElse("");
    return QuestionHistory.plain(name).equals(QuestionHistory.plain(asked.measure()))
        ? Optional.empty()
        : Optional.of(FieldFinding.Why.OTHER_PRIMARY);
  }

  private Optional<Candidate> candidate(
      SessionState state, Map<SessionState, FieldFinding.Why> why) {
    DayRecord record = open.apply(state);
    if (record.cutShort() && record.looks().stream().anyMatch(TakenLook::settled)) {
      why.put(state, FieldFinding.Why.STOPPED_EARLY);
      return Optional.empty();
    }
    Optional<FieldEntry> entry = FieldEntry.of(record);
    if (entry.isEmpty()) {
      why.put(state, FieldFinding.Why.NOT_COMPARED);
      return Optional.empty();
    }
    Measure measure = entry.get().measure();
    if (StintValues.counted(record, measure).missingShare() > Analysis.MOST_MISSING) {
      why.put(state, FieldFinding.Why.MISSING);
      return Optional.empty();
    }
    return Optional.of(
        new Candidate(state, abandoned(state) ? entry.get().abandoned() : entry.get()));
  }

  private static boolean abandoned(SessionState state) {
    return state.step() == Step.ABANDONED;
  }

  /** What days must declare alike to be put together. */
  private record Declared(Measure measure, int laps) {
    static Declared of(FieldEntry entry) {
      return new Declared(entry.measure(), entry.record().plan().laps().scored());
    }

    Optional<FieldFinding.Why> against(Declared usual) {
      Measure theirs = usual.measure;
      if (measure.kind() != theirs.kind()
          || !measure.unit().equals(theirs.unit())
          || measure.better() != theirs.better()) {
        return Optional.of(FieldFinding.Why.OTHER_MEASURE);
      }
      if (measure.scale() != theirs.scale()) {
        return Optional.of(FieldFinding.Why.OTHER_SCALE);
      }
      if (measure.summary() != theirs.summary()) {
        return Optional.of(FieldFinding.Why.OTHER_SUMMARY);
      }
      return laps == usual.laps ? Optional.empty() : Optional.of(FieldFinding.Why.OTHER_LAPS);
    }
  }

  /** What most of the days declare; of equally many the one that has the latest day. */
  private static Optional<Declared> usual(List<Candidate> candidates) {
    Optional<Declared> usual = Optional.empty();
    long most = 0;
    for (Candidate candidate : candidates) {
      Declared own = Declared.of(candidate.entry());
      long alike =
          candidates.stream()
              .filter(other -> Declared.of(other.entry()).against(own).isEmpty())
              .count();
      if (alike >= most) {
        most = alike;
        usual = Optional.of(own);
      }
    }
    return usual;
  }
}
