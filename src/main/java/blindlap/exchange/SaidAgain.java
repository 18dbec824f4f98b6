package blindlap.exchange;

import blindlap.plan.Plan;
import blindlap.review.Remark;
import blindlap.session.Entry;
import blindlap.session.Fact;
import blindlap.session.GuessWords;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Guesses and notes that took the place of others, and guesses that were taken back. Whoever says
 * more, such as how sure a guess is once the guess stands, replaces nothing.
 */
final class SaidAgain {
  private final Plan plan;
  private final int perStint;
  private final Map<LapId, String> notes = new HashMap<>();
  private final Map<Integer, Guess> guesses = new HashMap<>();

  SaidAgain(Plan plan) {
    this.plan = plan;
    this.perStint = plan.laps().perStint();
  }

  /** The remarks on an entry, which is the next of the day that was applied. */
  List<Remark> take(Entry entry) {
    ZonedDateTime at = entry.at().atZone(entry.zone());
    List<Remark> remarks = new ArrayList<>();
    if (entry.fact() instanceof Fact.NoteWritten note) {
      LapId lap = note.lap();
      String before = notes.put(lap, note.text());
      changed(Remark.Kind.NOTE_REPLACED, lap, before, note.text(), at).ifPresent(remarks::add);
    } else if (entry.fact() instanceof Fact.GuessGiven given) {
      Guess before = guesses.put(given.stint(), given.guess());
      guess(given.stint(), before, given.guess(), at, remarks);
    } else if (entry.fact() instanceof Fact.GuessTakenBack back) {
      guess(back.stint(), guesses.remove(back.stint()), null, at, remarks);
    }
    return remarks;
  }

  /** Null before: there was none; null now: it was taken back. */
  private void guess(
      int stint,
      @Nullable Guess before,
      @Nullable Guess now,
      ZonedDateTime at,
      List<Remark> remarks) {
    if (before == null) {
      return;
    }
    LapId last = new LapId(stint, perStint);
    String letter = now == null ? "" : letter(now);
    String sure = now == null ? "" : sureness(now);
    String cue = now == null ? "" : now.cue();
    changed(Remark.Kind.GUESS_REPLACED, last, letter(before), letter, at).ifPresent(remarks::add);
    changed(Remark.Kind.SURENESS_REPLACED, last, sureness(before), sure, at)
        .ifPresent(remarks::add);
    changed(Remark.Kind.CUE_REPLACED, last, before.cue(), cue, at).ifPresent(remarks::add);
  }

  private Optional<Remark> changed(
      Remark.Kind kind, LapId lap, @Nullable String before, String now, ZonedDateTime at) {
    if (before == null || before.isBlank() || before.equals(now)) {
      return Optional.empty();
    }
    int number = kind == Remark.Kind.NOTE_REPLACED ? lap.ofDay(perStint) : 0;
    return Optional.of(
        new Remark(kind, lap.stint(), number, "", "", before, now, "", Optional.of(at)));
  }

  private String letter(Guess guess) {
    return guess.setup() == null ? Remark.DONT_KNOW : GuessWords.text(plan, guess);
  }

  private static String sureness(Guess guess) {
    Guess.Sureness sure = guess.sureness();
    return sure == null ? "" : sure.name().toLowerCase(Locale.ROOT);
  }
}
