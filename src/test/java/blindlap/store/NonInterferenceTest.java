package blindlap.store;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.exchange.EntryText;
import blindlap.plan.Plan;
import blindlap.seal.HelperSchedule;
import blindlap.seal.SealParameters;
import blindlap.seal.Sealed;
import blindlap.seal.Sealing;
import blindlap.seal.SealingSources;
import blindlap.seal.SecureBytes;
import blindlap.session.Entry;
import blindlap.session.Fact;
import blindlap.session.Head;
import blindlap.session.LifeCommands;
import blindlap.session.Outcome;
import blindlap.session.StoredEntry;
import blindlap.session.day.LapId;
import blindlap.session.day.SessionId;
import blindlap.session.day.VoidEvent;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The notebook file tells the rider nothing: with every source of chance fixed but the one of the
 * order, a whole sealed day is recorded for each of the 50 orders of the eight-stint set. The files
 * may differ in ciphertext, in fingerprints and in the hashes of the chain, all of one length, and
 * in not a single byte more.
 */
class NonInterferenceTest {
  private static final Plan PLAN = Days.plan("R. Lind", "Quarry loop", 8);
  private static final SessionId SESSION = Days.session(1);
  private static final int ORDERS = 50;

  /** Fields are recognised by so many bytes in a row; a page border may cut one in two. */
  private static final int WINDOW = 8;

  @TempDir private static Path folder;

  /** What is left of a day under one order: the files, and the fields that may differ. */
  private record Left(String order, byte[] notebook, byte[] journal, List<StoredEntry> entries) {
    /** Ciphertexts, fingerprints and hashes, in the order of the entries. */
    List<String> fields() {
      List<String> fields = new ArrayList<>();
      for (StoredEntry stored : entries) {
        Fact fact = stored.entry().fact();
        if (fact instanceof Fact.PlanCommitted committed) {
          fields.add(committed.key().ciphertext());
          fields.add(committed.fingerprint().hex());
        } else if (fact instanceof Fact.StintHandled handled) {
          fields.add(handled.record().ciphertext());
        } else if (fact instanceof Fact.ReviewClosed closed) {
          fields.add(closed.fingerprint().hex());
        }
        fields.add(stored.hash().hex());
      }
      return fields;
    }

    /** The texts of the entries with these fields taken out. */
    List<String> masked() {
      List<String> texts = new ArrayList<>();
      for (StoredEntry stored : entries) {
        String text = stored.text();
        for (String field : fields()) {
          text = text.replace(field, "*".repeat(field.length()));
        }
        texts.add(text);
      }
      return texts;
    }
  }

  private static Map<String, Left> days;

  @BeforeAll
  static void recordADayUnderEveryOrder() throws IOException {
    days = new LinkedHashMap<>();
    for (long seed = 0; days.size() < ORDERS; seed++) {
      assertThat(seed).as("seeds tried for %d orders", days.size()).isLessThan(3000);
      Sealing sealing = sealing(seed);
      Sealed sealed = Days.seal(PLAN, SESSION, sealing);
      String order = order(sealed.schedule());
      if (!days.containsKey(order)) {
        days.put(order, day(order, sealing, sealed));
      }
    }
  }

  /** All sources give the same bytes whatever the seed, but for the one the order is drawn from. */
  private static Sealing sealing(long seed) {
    SecureBytes order = new SeededBytes(seed);
    return new Sealing(
        new SealingSources(
            order,
            new SeededBytes(-1),
            new SeededBytes(-2),
            new SeededBytes(-3),
            new SeededBytes(-4),
            new SeededBytes(-5),
            new SeededBytes(-6)),
        new SealParameters(1));
  }

  private static String order(HelperSchedule schedule) {
    StringBuilder order = new StringBuilder();
    for (int stint = 1; stint <= PLAN.stints(); stint++) {
      order.append((char) ('A' + schedule.fit(stint).named()));
    }
    return order.toString();
  }

  private static Left day(String order, Sealing sealing, Sealed sealed) throws IOException {
    Path file = folder.resolve(order).resolve("notebook.blindlap");
    Files.createDirectory(file.getParent());
    Random random = new Random(1);
    try (SqliteNotebook notebook = Books.open(file)) {
      Books.put(notebook, SESSION, Days.committed(PLAN, sealed));
      Books.put(notebook, SESSION, new Fact.FingerprintGiven(Fact.Which.PLAN, "the starter", null));
      for (int stint = 1; stint <= PLAN.stints(); stint++) {
        HelperSchedule.Fit fit = sealed.schedule().fit(stint);
        String words =
            "fitted Shock " + (fit.fitted() == 0 ? "K" : "L") + ", a " + fit.swap() + " swap";
        Books.put(notebook, SESSION, Days.handled(sealing, sealed.lock(), SESSION, stint, words));
        Books.put(notebook, SESSION, new Fact.BikeHandedOver(stint));
        Books.put(notebook, SESSION, Days.lap(PLAN, stint, random));
        Books.put(notebook, SESSION, Days.guess(stint, random));
      }
      Books.put(notebook, SESSION, new Fact.LapVoided(new LapId(3, 1), VoidEvent.CRASH, "", false));
      Books.put(notebook, SESSION, new Fact.DayClosed());
      Outcome closing = new LifeCommands(Books.state(notebook, SESSION)).closeReview();
      Books.put(notebook, SESSION, ((Outcome.Accepted) closing).facts());
      assertThat(notebook.search("real")).isEmpty();
      List<StoredEntry> entries = notebook.entries(SESSION);
      Path journal = file.resolveSibling("notebook.blindlap-journal");
      return new Left(order, Files.readAllBytes(file), Files.readAllBytes(journal), entries);
    }
  }

  @Test
  void files_of_all_fifty_orders_are_alike_but_for_ciphertext_fingerprints_and_hashes()
      throws IOException {
    assertThat(days).hasSize(ORDERS);
    Left first = days.values().iterator().next();
    int[] place = places(first);
    for (Left other : days.values()) {
      assertThat(other.notebook()).as(other.order()).hasSameSizeAs(first.notebook());
      assertThat(other.journal()).as(other.order()).isEqualTo(first.journal());
      assertThat(names(other)).as(other.order()).isEqualTo(names(first));
      int[] otherPlace = places(other);
      for (int at = 0; at < place.length; at++) {
        if (first.notebook()[at] != other.notebook()[at]) {
          assertThat(place[at])
              .as("byte %d differs under %s and %s", at, first.order(), other.order())
              .isPositive()
              .isEqualTo(otherPlace[at]);
        }
      }
    }
  }

  private static List<String> names(Left left) throws IOException {
    try (var files = Files.list(folder.resolve(left.order()))) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  /** For every byte of the file, which byte of which field it is; 0 for none. */
  private static int[] places(Left left) {
    Map<String, Integer> windows = new HashMap<>();
    int number = 1;
    for (String field : left.fields()) {
      for (int i = 0; i + WINDOW <= field.length(); i++) {
        windows.put(field.substring(i, i + WINDOW), number + i);
      }
      number += field.length();
    }
    String text = new String(left.notebook(), StandardCharsets.ISO_8859_1);
    int[] places = new int[text.length()];
    for (int at = 0; at + WINDOW <= text.length(); at++) {
      Integer found = windows.get(text.substring(at, at + WINDOW));
      for (int i = 0; found != null && i < WINDOW; i++) {
        places[at + i] = found + i;
      }
    }
    return places;
  }

  @Test
  void entries_of_all_fifty_orders_say_the_same_once_these_fields_are_masked() {
    Left first = days.values().iterator().next();
    List<String> masked = first.masked();
    List<Integer> lengths = first.fields().stream().map(String::length).toList();
    for (Left other : days.values()) {
      assertThat(other.fields().stream().map(String::length).toList()).isEqualTo(lengths);
      assertThat(other.masked()).as(other.order()).isEqualTo(masked);
    }
  }

  @Test
  void one_byte_that_follows_the_order_would_be_noticed_in_entries_and_in_files() {
    Left first = days.values().iterator().next();
    Left other =
        days.values().stream()
            .filter(left -> left.order().charAt(1) != first.order().charAt(1))
            .findFirst()
            .orElseThrow();
    assertThat(leaking(first).masked()).isNotEqualTo(leaking(other).masked());
    int zero = new String(first.notebook(), StandardCharsets.ISO_8859_1).indexOf("\0\0\0\0");
    assertThat(places(first)[zero]).as("a byte outside of all fields").isZero();
  }

  /** A day with a note that gives one stint away. */
  private static Left leaking(Left left) {
    StoredEntry commit = left.entries().get(0);
    Head head = commit.head();
    Fact leak = new Fact.NoteWritten(new LapId(1, 1), "felt like " + left.order().charAt(1));
    StoredEntry note =
        EntryText.write(
            new Entry(
                SESSION,
                head.notebook(),
                head.number() + 1,
                head.hash(),
                List.of(),
                Days.MORNING,
                Days.ZONE,
                leak));
    return new Left(left.order(), left.notebook(), left.journal(), List.of(commit, note));
  }
}
