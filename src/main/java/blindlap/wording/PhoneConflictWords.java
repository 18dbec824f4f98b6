package blindlap.wording;

import blindlap.session.CovariateSaid;
import blindlap.session.Entry;
import blindlap.session.Fact;
import blindlap.session.PhonesHeard;
import blindlap.session.PlateRead;
import blindlap.session.SessionState;
import blindlap.session.day.ByPhone;
import blindlap.session.day.CovariateAt;
import blindlap.session.day.LapId;
import blindlap.session.day.PhoneRole;
import blindlap.wording.day.RideWords;
import blindlap.wording.day.Words;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/** What a phone without signal said that does not go together with what was said meanwhile. */
public final class PhoneConflictWords {
  private static final Words WORDS = Words.of("twovalues");
  private static final Words PLACES = Words.of("remarks");

  private PhoneConflictWords() {}

  /** How much of a day was said by phone; empty where nothing was. */
  public static Optional<String> summary(SessionState state) {
    List<ByPhone> said =
        state.entries().stream()
            .map(stored -> stored.entry().phone())
            .filter(Objects::nonNull)
            .toList();
    long rider = said.stream().filter(phone -> phone.role() == PhoneRole.RIDER).count();
    long late = said.stream().filter(ByPhone::late).count();
    return said.isEmpty()
        ? Optional.empty()
        : Optional.of(
            WORDS.say("phone.summary", state.entries().size(), rider, said.size() - rider, late));
  }

  /** A sentence for each conflict, in the order of the entries; nothing where there is none. */
  public static List<String> lines(SessionState state) {
    return state.phones().conflicts().stream().map(c -> line(state, c)).toList();
  }

  private static String line(SessionState state, PhonesHeard.Conflict conflict) {
    Entry entry = conflict.entry().entry();
    return WORDS.say(
        "phone." + conflict.kind().name(),
        place(state, entry.fact()),
        EntryWords.entry(entry.fact().getClass().getSimpleName()),
        RideWords.clock(entry.when().atZone(entry.zone())));
  }

  private static String place(SessionState state, Fact fact) {
    if (fact instanceof Fact.NoteWritten note) {
      return lap(state, note.lap());
    } else if (fact instanceof Fact.ConditionsNoted conditions) {
      return lap(state, conditions.lap());
    } else if (fact instanceof CovariateSaid said) {
      CovariateAt at = said.at();
      return at.lap() == 0 ? stint(at.stint()) : lap(state, new LapId(at.stint(), at.lap()));
    } else if (fact instanceof Fact.GuessGiven guess) {
      return stint(guess.stint());
    } else if (fact instanceof Fact.GuessTakenBack guess) {
      return stint(guess.stint());
    } else if (fact instanceof PlateRead read) {
      return stint(read.stint());
    }
    return PLACES.say("day");
  }

  private static String lap(SessionState state, LapId lap) {
    return PLACES.say("lap", lap.ofDay(state.plan().laps().perStint()));
  }

  private static String stint(int stint) {
    return stint == 0 ? PLACES.say("warm.up") : PLACES.say("stint", stint);
  }
}
