package blindlap.phone;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.session.day.Day;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.wording.day.PhonesWords;
import blindlap.wording.day.RideWords;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Which answers the laptop waits for before a day is closed that nothing opens again. A day on
 * which no phone came waits for none.
 */
public final class Awaited {
  /** A phone that was heard within this time is connected. */
  public static final Duration CONNECTED = Duration.ofSeconds(30);

  /** Of so many laps it is said what is open; more are named by their numbers alone. */
  private static final int NAMED = 3;

  private Awaited() {}

  /** True of a phone that is let in and was heard just now. */
  public static boolean connected(Phones.Known phone, Instant now) {
    return phone.in() && Duration.between(phone.heard(), now).compareTo(CONNECTED) < 0;
  }

  /** How long ago a phone was heard; empty if it was not since the program was started. */
  public static Optional<Duration> heard(Phones.Known phone, Instant now) {
    return phone.heard().equals(Instant.EPOCH)
        ? Optional.empty()
        : Optional.of(Duration.between(phone.heard(), now));
  }

  /**
   * What is waited for, a sentence each: phones that keep answers, phones that were let in and not
   * heard since, and laps that are ridden and open; none if nothing is.
   */
  public static List<String> sentences(Day day, List<Phones.Known> known, Instant now) {
    List<String> waits = new ArrayList<>();
    for (Phones.Known phone : known) {
      if (phone.in() && phone.unsent() > 0) {
        waits.add(PhonesWords.unsent(phone.role(), phone.id(), phone.unsent()));
      } else if (phone.in() && !connected(phone, now)) {
        waits.add(PhonesWords.unheard(phone.role(), phone.id(), heard(phone, now)));
      }
    }
    if (!known.isEmpty()) {
      openLaps(day).ifPresent(waits::add);
    }
    return waits;
  }

  private static Optional<String> openLaps(Day day) {
    Map<LapId, List<String>> open = new TreeMap<>();
    for (LapState lap : day.laps().values()) {
      List<String> names = open(day, lap);
      if (!names.isEmpty()) {
        open.put(lap.id(), names);
      }
    }
    int perStint = day.plan().laps().perStint();
    if (open.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        open.size() > NAMED
            ? PhonesWords.manyOpen(open.keySet().stream().map(lap -> lap.ofDay(perStint)).toList())
            : PhonesWords.openLaps(
                open.entrySet().stream()
                    .map(
                        each ->
                            PhonesWords.openLap(
                                each.getKey().ofDay(perStint),
                                day.code(each.getKey().stint()),
                                each.getValue()))
                    .toList()));
  }

  /** What is open of a lap, by name; nothing where it is not ridden, or nothing is asked. */
  private static List<String> open(Day day, LapState lap) {
    Plan plan = day.plan();
    if (!lap.ridden()
        || lap.voided().isPresent()
        || day.inVoidTrial(lap.id().stint())
        || lap.id().lap() <= plan.laps().settling()
        || lap.id().stint() > day.lastStint()) {
      return List.of();
    }
    List<String> open =
        new ArrayList<>(
            plan.askedOnTheDay().stream()
                .map(Measure::name)
                .filter(name -> !lap.values().containsKey(name) && !lap.times().containsKey(name))
                .toList());
    if (plan.asksGuessAfter(lap.id().stint())
        && lap.id().lap() == plan.laps().perStint()
        && !day.guesses().containsKey(lap.id().stint())) {
      open.add(RideWords.say(plan.telling() == null ? "guess.name" : "trial.answer.name"));
    }
    return open;
  }
}
