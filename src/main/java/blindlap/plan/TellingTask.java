package blindlap.plan;

import blindlap.stats.tell.Discrimination;
import java.util.List;

/** What a rider is asked in every trial of a telling run (docs/method.md#can-you-tell). */
public enum TellingTask {
  /** Three laps, two of them alike: which one differed? ISO 4120. */
  TRIANGLE(Discrimination.TRIANGLE, "AAB", "ABA", "ABB", "BAA", "BAB", "BBA"),
  /**
   * A first lap to go by, then one like it and one unlike it: which one differed from it? ISO
   * 10399.
   */
  DUO_TRIO(Discrimination.DUO_TRIO, "AAB", "ABA", "BAB", "BBA"),
  /** Two laps: which had more of something that is said beforehand? ISO 5495. */
  TWO_CHOICE(Discrimination.TWO_CHOICE, "AB", "BA");

  private final Discrimination discrimination;
  private final List<String> sequences;

  TellingTask(Discrimination discrimination, String... sequences) {
    this.discrimination = discrimination;
    this.sequences = List.of(sequences);
  }

  /** How right answers hang on d′, and how many of them guessing gives. */
  public Discrimination discrimination() {
    return discrimination;
  }

  /** The sequences of a trial in lexicographic order, each equally likely. */
  public List<String> sequences() {
    return sequences;
  }

  /**
   * How many trials such a run has unless a plan says otherwise (docs/method.md#trials-planned).
   */
  public int usualTrials() {
    return this == TRIANGLE ? 15 : 24;
  }

  /** The first lap that an answer can name, from 1: a duo-trio begins with its reference. */
  public int firstNamed() {
    return this == DUO_TRIO ? 2 : 1;
  }

  /** Laps of a trial. */
  public int laps() {
    return sequences.get(0).length();
  }
}
