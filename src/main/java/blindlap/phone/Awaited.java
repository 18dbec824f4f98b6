package blindlap.phone;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.session.day.Day;
import blindlap.session.day.LapState;
import blindlap.wording.day.PhonesWords;
import blindlap.wording.day.RideWords;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * Which answers the laptop waits for before a day is closed that nothing opens again. A day on
 * which no phone came waits for none.
 */
public final class Awaited {
  /** A phone that was heard within this time is connected. */
  public static final Duration CONNECTED = Duration.ofSeconds(30);

  private Awaited() {}

  /** True of a phone that is let in and was heard just now. */
  public static boolean connected(Phones.Known phone, Instant now) {
    return phone.in() && Duration.between(phone.heard(), now).compareTo(CONNECTED) < 0;
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
        waits.add(
            PhonesWords.unheard(phone.role(), phone.id(), Duration.between(phone.heard(), now)));
      }
    }
    if (!known.isEmpty()) {
      List<String> open =
          day.laps().values().stream()
              .map(lap -> open(day, lap))
              .filter(words -> !words.isEmpty())
              .toList();
      if (!open.isEmpty()) {
        waits.add(PhonesWords.openLaps(open));
      }
    }
    return waits;
  }

  /** A lap that is ridden with what is open of it; empty if nothing is, or nothing is asked. */
  private static String open(Day day, LapState lap) {
    Plan plan = day.plan();
    if (!lap.ridden()
        || lap.voided().isPresent()
        || lap.id().lap() <= plan.laps().settling()
        || lap.id().stint() > day.lastStint()) {
      return "";
    }
    List<String> open =
        new ArrayList<>(
            plan.askedOnTheDay().stream()
                .map(Measure::name)
                .filter(name -> !lap.values().containsKey(name) && !lap.times().containsKey(name))
                .toList());
    if (plan.blinding().guesses()
        && lap.id().lap() == plan.laps().perStint()
        && !day.guesses().containsKey(lap.id().stint())) {
      open.add(RideWords.say("guess.name"));
    }
    return open.isEmpty()
        ? ""
        : PhonesWords.openLap(
            lap.id().ofDay(plan.laps().perStint()), day.code(lap.id().stint()), open);
  }
}
