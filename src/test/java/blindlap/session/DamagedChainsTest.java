package blindlap.session;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.exchange.EntryText;
import blindlap.fault.Fault;
import blindlap.fault.Problem;
import blindlap.session.day.SessionId;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.function.BiConsumer;
import org.junit.jupiter.api.Test;

/** What is found in the chains of invented days when someone has been at them. */
class DamagedChainsTest {
  private static void each(BiConsumer<RandomDay, Random> check) {
    RandomDay.all().forEach(day -> check.accept(day, new Random(day.seed)));
  }

  private static List<Problem> problems(List<StoredEntry> entries) {
    return Chains.problems(Histories.SESSION, entries);
  }

  private static List<Fault> faults(List<StoredEntry> entries) {
    return problems(entries).stream().map(Problem::fault).toList();
  }

  private static boolean follows(StoredEntry later, StoredEntry one) {
    Entry entry = later.entry();
    return entry.seen().contains(one.head())
        || entry.notebook().equals(one.entry().notebook())
            && entry.number() == one.entry().number() + 1;
  }

  private static boolean followed(StoredEntry one, List<StoredEntry> all) {
    return all.stream().anyMatch(later -> follows(later, one));
  }

  /** An entry and all whose writers had seen it, directly or through others. */
  private static Set<StoredEntry> resting(StoredEntry one, List<StoredEntry> all) {
    Set<StoredEntry> resting = new HashSet<>(List.of(one));
    for (StoredEntry later : CausalOrder.sort(all)) {
      if (resting.stream().anyMatch(before -> follows(later, before))) {
        resting.add(later);
      }
    }
    return resting;
  }

  private static StoredEntry rewritten(StoredEntry one, long number, Hash previous, Fact fact) {
    Entry e = one.entry();
    return EntryText.write(
        new Entry(e.session(), e.notebook(), number, previous, e.seen(), e.at(), e.zone(), fact));
  }

  @Test
  void wholeChainsHaveNoProblemInAnyOrderAndAreKeptWhole() {
    each(
        (day, random) -> {
          List<StoredEntry> all = new ArrayList<>(day.book.all());
          Collections.shuffle(all, random);
          assertThat(problems(all)).as("%s", day).isEmpty();
          assertThat(Chains.verifying(Histories.SESSION, all))
              .as("%s", day)
              .containsExactlyInAnyOrderElementsOf(all);
        });
  }

  @Test
  void anEntryThatIsDroppedIsMissedByAllThatFollowedIt() {
    each(
        (day, random) -> {
          List<StoredEntry> all = day.book.all();
          for (int i = 0; i < 12; i++) {
            StoredEntry one = all.get(random.nextInt(all.size()));
            List<StoredEntry> left = new ArrayList<>(all);
            left.remove(one);
            Set<Fault> allowed =
                Set.of(ChainFault.GAP, ChainFault.SEEN_IS_MISSING, ChainFault.NO_COMMIT);
            assertThat(faults(left).isEmpty()).as("%s", day).isEqualTo(!followed(one, all));
            assertThat(allowed).containsAll(faults(left));
            List<StoredEntry> sound = new ArrayList<>(all);
            sound.removeAll(resting(one, all));
            assertThat(Chains.verifying(Histories.SESSION, left))
                .as("%s without %s", day, day.book.name(one))
                .containsExactlyInAnyOrderElementsOf(sound);
          }
        });
  }

  @Test
  void anEntryThatIsThereTwiceCountsOnceAndAnotherInItsPlaceIsAFork() {
    each(
        (day, random) -> {
          List<StoredEntry> all = new ArrayList<>(day.book.all());
          StoredEntry one = all.get(random.nextInt(all.size()));
          all.add(one);
          assertThat(problems(all)).as("%s", day).isEmpty();
          Fact other = new Fact.NoteWritten(new blindlap.session.day.LapId(1, 1), "forged");
          all.add(rewritten(one, one.entry().number(), one.entry().previous(), other));
          assertThat(faults(all)).as("%s", day).contains(ChainFault.FORKED);
          assertThat(problems(all).get(0).where())
              .isEqualTo(
                  "entry "
                      + one.entry().number()
                      + " of notebook "
                      + one.entry().notebook().text().substring(0, 8));
        });
  }

  @Test
  void twoFactsOfAChainThatChangePlacesAreFound() {
    each(
        (day, random) -> {
          List<StoredEntry> all = day.book.all();
          StoredEntry one = all.get(random.nextInt(all.size()));
          Optional<StoredEntry> next =
              all.stream()
                  .filter(e -> e.entry().notebook().equals(one.entry().notebook()))
                  .filter(e -> e.entry().number() == one.entry().number() + 1)
                  .findFirst();
          if (next.isEmpty() || next.get().entry().fact().equals(one.entry().fact())) {
            return;
          }
          List<StoredEntry> swapped = new ArrayList<>(all);
          swapped.removeAll(List.of(one, next.get()));
          swapped.add(
              rewritten(
                  one, one.entry().number(), one.entry().previous(), next.get().entry().fact()));
          swapped.add(
              rewritten(
                  next.get(),
                  next.get().entry().number(),
                  next.get().entry().previous(),
                  one.entry().fact()));
          assertThat(faults(swapped)).as("%s", day).contains(ChainFault.NOT_LINKED);
          List<StoredEntry> renumbered = new ArrayList<>(all);
          renumbered.removeAll(List.of(one, next.get()));
          renumbered.add(
              rewritten(one, one.entry().number() + 1, one.entry().previous(), one.entry().fact()));
          renumbered.add(
              rewritten(
                  next.get(),
                  one.entry().number(),
                  next.get().entry().previous(),
                  next.get().entry().fact()));
          assertThat(faults(renumbered)).as("%s", day).contains(ChainFault.NOT_LINKED);
        });
  }

  /**
   * A changed byte either gives a text that is no entry, or an entry with another hash: then all
   * that followed it says so, and where nothing had, the head that a fingerprint covers is another.
   */
  @Test
  void noByteOfAnEntryCanBeChangedUnseen() {
    int[] readable = {0};
    each(
        (day, random) -> {
          List<StoredEntry> all = day.book.all();
          for (int i = 0; i < 20; i++) {
            StoredEntry one = all.get(random.nextInt(all.size()));
            byte[] bytes = one.text().getBytes(StandardCharsets.UTF_8);
            int at = random.nextInt(bytes.length);
            bytes[at] = random.nextBoolean() ? (byte) (bytes[at] ^ 1) : (byte) random.nextInt(128);
            String text = new String(bytes, StandardCharsets.UTF_8);
            Optional<StoredEntry> read = text.equals(one.text()) ? Optional.empty() : read(text);
            if (read.isPresent()) {
              readable[0]++;
              changed(day, one, read.get());
            }
          }
        });
    assertThat(readable[0]).as("changes that still read as an entry").isGreaterThan(20);
  }

  private static Optional<StoredEntry> read(String text) {
    try {
      return Optional.of(EntryText.read(text));
    } catch (IllegalArgumentException e) {
      assertThat(e.getMessage()).isNotBlank();
      return Optional.empty();
    }
  }

  private static void changed(RandomDay day, StoredEntry one, StoredEntry other) {
    assertThat(other.hash()).isNotEqualTo(one.hash());
    List<StoredEntry> all = new ArrayList<>(day.book.all());
    boolean followed = followed(one, all);
    all.set(all.indexOf(one), other);
    List<Fault> faults = faults(all);
    if (followed) {
      assertThat(faults).as("%s: %s", day, day.book.name(one)).isNotEmpty();
    } else if (faults.isEmpty()) {
      SessionState before = SessionState.of(day.entries());
      SessionState after = SessionState.of(CausalOrder.sort(all));
      assertThat(after.heads()).as("%s", day).isNotEqualTo(before.heads());
    }
    assertThat(Chains.verifying(Histories.SESSION, all).size())
        .isLessThanOrEqualTo(all.size() - (faults.isEmpty() ? 0 : 1));
  }

  @Test
  void entriesOfAnotherSessionAreNamedAndNotKept() {
    SessionId other = SessionId.of("another session!".getBytes(StandardCharsets.UTF_8));
    each(
        (day, random) -> {
          List<StoredEntry> all = day.book.all();
          assertThat(Chains.problems(other, all))
              .hasSize(all.size())
              .allMatch(p -> p.fault() == ChainFault.OTHER_SESSION)
              .allMatch(p -> p.details().equals(List.of(Histories.SESSION.brief())));
          assertThat(Chains.verifying(other, all)).isEmpty();
        });
  }
}
