package blindlap.review;

import blindlap.session.day.Guess.Sureness;
import blindlap.stats.tell.Discrimination;
import blindlap.stats.tell.Telling;
import blindlap.stats.tell.TellingTrials;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * What a telling run says once its key is open.
 *
 * @param declared the trials as declared before the draw, with the share that would matter
 * @param nullRun true if both names were the same thing, so that only the name differed
 * @param trials every answered trial, in ridden order
 * @param voided trials that were voided before their answer
 * @param telling right answers against guessing and against what would matter, over the answered
 *     trials
 */
public record TellingFinding(
    TellingTrials declared,
    boolean nullRun,
    List<TellingTrial> trials,
    int voided,
    Telling telling) {
  /**
   * How often a sureness was said, and how often its answer was right.
   *
   * @param sureness the sureness; null for "not said"
   */
  public record Sure(@Nullable Sureness sureness, int said, int right) {}

  public TellingFinding {
    trials = List.copyOf(trials);
  }

  /**
   * Works it out.
   *
   * @throws IllegalArgumentException if no trial was answered, more trials are there than were
   *     declared, or a lap is none that could be named
   */
  public static TellingFinding of(
      TellingTrials declared, boolean nullRun, List<TellingTrial> trials, int voided) {
    if (trials.isEmpty()) {
      throw new IllegalArgumentException("A telling run without an answered trial has no finding");
    }
    if (voided < 0 || trials.size() + voided > declared.number()) {
      throw new IllegalArgumentException(
          trials.size() + " answered and " + voided + " void trials of " + declared.number());
    }
    for (TellingTrial trial : trials) {
      for (int lap : new int[] {trial.differed(), trial.named()}) {
        if (lap < first(declared.task()) || lap > laps(declared.task())) {
          throw new IllegalArgumentException(
              "Lap " + lap + " of trial " + trial.number() + " cannot be named");
        }
      }
    }
    int right = (int) trials.stream().filter(TellingTrial::right).count();
    Telling telling = Telling.of(declared.task(), trials.size(), right, declared.matters());
    return new TellingFinding(declared, nullRun, trials, voided, telling);
  }

  /** Number of laps of a trial. */
  public static int laps(Discrimination task) {
    return task == Discrimination.TWO_CHOICE ? 2 : 3;
  }

  /** The first lap that can be named: a duo-trio begins with its reference. */
  public static int first(Discrimination task) {
    return task == Discrimination.DUO_TRIO ? 2 : 1;
  }

  /** Number of declared trials that were neither answered nor void. */
  public int left() {
    return declared.number() - trials.size() - voided;
  }

  /** True if all declared trials could have shown something, but those answered could not. */
  public boolean tooFew() {
    return telling.run().least().isEmpty() && declared.least().isPresent();
  }

  /** Sureness against right answers, the surest first; what nobody said is left out. */
  public List<Sure> sureness() {
    List<Sure> rows = new ArrayList<>();
    List<Sureness> surest = new ArrayList<>(List.of(Sureness.values()));
    Collections.reverse(surest);
    surest.forEach(sureness -> add(rows, sureness));
    add(rows, null);
    return List.copyOf(rows);
  }

  private void add(List<Sure> rows, @Nullable Sureness sureness) {
    List<TellingTrial> said =
        trials.stream().filter(trial -> Objects.equals(trial.sureness(), sureness)).toList();
    if (!said.isEmpty()) {
      int right = (int) said.stream().filter(TellingTrial::right).count();
      rows.add(new Sure(sureness, said.size(), right));
    }
  }
}
