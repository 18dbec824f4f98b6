package blindlap.exchange;

import blindlap.review.Remark;
import blindlap.session.CovariateSaid;
import blindlap.session.Entry;
import blindlap.session.Fact;
import blindlap.session.ValueChosen;
import blindlap.session.day.LapId;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * What was written where it was not known that the review was closed, or otherwise too late: with
 * lap, value, reason and the notebook it was written in.
 */
final class LateRemarks {
  private final int perStint;
  private final Entry entry;

  private LateRemarks(int perStint, Entry entry) {
    this.perStint = perStint;
    this.entry = entry;
  }

  /** The remark on an entry that was not applied; empty for one that says nothing of the day. */
  static Optional<Remark> of(int perStint, Entry entry) {
    return new LateRemarks(perStint, entry).remark();
  }

  private Optional<Remark> remark() {
    Fact fact = entry.fact();
    if (fact instanceof Fact.LapVoided voided) {
      return lap(voided.lap(), "", voided.event().text(), voided.words());
    } else if (fact instanceof Fact.VoidWithdrawn back) {
      return lap(back.lap(), "", "", back.reason());
    } else if (fact instanceof Fact.ScoreGiven given) {
      return lap(given.lap(), given.measure(), text(given.value()), "");
    } else if (fact instanceof Fact.TimeTaken taken) {
      return lap(taken.lap(), taken.measure(), text(taken.time().seconds()), "");
    } else if (fact instanceof Fact.ScoreCorrected c) {
      return lap(c.lap(), c.measure(), text(c.value()), c.reason());
    } else if (fact instanceof ValueChosen c) {
      return lap(c.lap(), c.measure(), text(c.value()), c.reason() + ", " + c.decidedBy());
    } else if (fact instanceof CovariateSaid c && c.at().lap() > 0) {
      return lap(
          new LapId(c.at().stint(), c.at().lap()), c.at().covariate(), text(c.value()), c.reason());
    } else if (fact instanceof Fact.LapRidden ridden) {
      return lap(ridden.lap(), "", "", "");
    } else if (fact instanceof Fact.NoteWritten note) {
      return lap(note.lap(), "", "", note.text());
    } else if (fact instanceof Fact.ConditionsNoted noted) {
      return lap(noted.lap(), "", "", words(noted.conditions()));
    }
    return ofStint(fact);
  }

  private static String words(Map<String, String> conditions) {
    return new TreeMap<>(conditions)
        .entrySet().stream()
            .map(each -> each.getKey() + " " + each.getValue())
            .collect(Collectors.joining(", "));
  }

  private Optional<Remark> ofStint(Fact fact) {
    if (fact instanceof Fact.GuessGiven guess) {
      return stint(guess.stint(), guess.guess().cue());
    } else if (fact instanceof Fact.GuessTakenBack back) {
      return stint(back.stint(), "");
    } else if (fact instanceof CovariateSaid c) {
      return Optional.of(made(c.at().stint(), 0, c.at().covariate(), text(c.value()), c.reason()));
    } else if (fact instanceof Fact.BlindBroken broken) {
      return stint(broken.stint(), broken.what());
    } else if (fact instanceof Fact.StintHandled handled) {
      return stint(handled.stint(), "");
    } else if (fact instanceof Fact.DayCutShort cut) {
      return stint(
          cut.lastStint(),
          List.of(cut.reason(), cut.decidedBy()).stream()
              .filter(w -> !w.isBlank())
              .collect(Collectors.joining(", ")));
    } else if (fact instanceof Fact.ExpectationGiven expected) {
      return stint(Remark.WHOLE_DAY, expected.text());
    }
    return Optional.empty();
  }

  private Optional<Remark> lap(LapId lap, String measure, String value, String words) {
    return Optional.of(made(lap.stint(), Math.max(0, lap.ofDay(perStint)), measure, value, words));
  }

  private Optional<Remark> stint(int stint, String words) {
    return Optional.of(made(stint, 0, "", "", words));
  }

  private Remark made(int stint, int lap, String measure, String value, String words) {
    return new Remark(
        Remark.Kind.LATE,
        stint,
        lap,
        entry.fact().getClass().getSimpleName(),
        entry.notebook().brief(),
        measure,
        value,
        words);
  }

  private static String text(@Nullable BigDecimal value) {
    // A hand-made entry may hold a number without end, which nobody wants to read.
    return value == null ? "" : value.precision() > 40 ? "\u2026" : ValueRemarks.text(value);
  }
}
