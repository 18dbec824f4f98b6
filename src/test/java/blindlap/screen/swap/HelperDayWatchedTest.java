package blindlap.screen.swap;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.compute.OrderSeeds;
import blindlap.desk.PaperForm;
import blindlap.desk.SafeKeeping;
import blindlap.desk.TestDay;
import blindlap.screen.Models;
import blindlap.seal.HelperRecord;
import blindlap.session.Fact;
import blindlap.session.KeptOnPaper;
import blindlap.session.SafetyCheck;
import blindlap.session.StoredEntry;
import blindlap.session.day.LapId;
import blindlap.store.SqliteFiles;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A whole helper's day under the magnifying glass. The same day, by the same clock and in the same
 * folder, is lived under orders that differ in real and dummy swaps, and as a null run without any
 * real swap. After every step all that the machine keeps or shows to others is compared byte for
 * byte: every file of the folder with its name, size and mode, the notebook with its count of
 * changes, the journal, backups, what was logged. Ciphertexts, fingerprints and hashes may differ,
 * each in its place and of one length; nothing else may.
 */
class HelperDayWatchedTest {
  private static final String PLAN =
      TestDay.EIGHT.replaceFirst(
              " +- .name: sag, value: 26, unit: \"%\", tolerance: 1, readings: 3.\\n", "")
          + "differences_reason: one has no sag to set\n";

  /** Fields are recognised by so many bytes in a row; the border of a page may cut one in two. */
  private static final int WINDOW = 8;

  /** Stands for every byte of such a field. */
  private static final byte HIDDEN = '*';

  @TempDir(factory = RamFolder.class)
  private static Path folder;

  /** What was there at each step, by order; the null run last. */
  private static final Map<String, List<Seen>> DAYS = new TreeMap<>();

  private static final Map<String, Set<Boolean>> SWAPS = new TreeMap<>();

  /**
   * What anyone can find at one moment.
   *
   * @param step which step of the day
   * @param files names with sizes and modes
   * @param contents of every file, fields hidden
   * @param said on the standard streams since the day began
   */
  private record Seen(
      String step, Map<String, String> files, Map<String, String> contents, String said) {}

  @BeforeAll
  static void liveTheSameDayUnderOrdersAndAsANullRun() throws IOException {
    List<Map.Entry<String, Long>> seeds = List.copyOf(OrderSeeds.of(PLAN, 3).entrySet());
    for (Map.Entry<String, Long> each : seeds) {
      new Life(each.getKey(), each.getValue(), Optional.empty()).live();
    }
    new Life("null run of A", seeds.get(0).getValue(), Optional.of(0)).live();
    new Life("null run of B", seeds.get(0).getValue(), Optional.of(1)).live();
  }

  /** Rows of bytes, none of them 0, asked for at every byte of every file: nothing is boxed. */
  private static final class Rows {
    private long[] places = new long[1 << 16];
    private int held;

    void add(long row) {
      int at = place(row);
      if (places[at] == row) {
        return;
      }
      places[at] = row;
      if (++held * 2 > places.length) {
        long[] before = places;
        places = new long[before.length * 2];
        for (long each : before) {
          if (each != 0) {
            places[place(each)] = each;
          }
        }
      }
    }

    boolean contains(long row) {
      return row != 0 && places[place(row)] == row; // 0 stands for an empty place
    }

    /** Where it stands, or would. */
    private int place(long row) {
      int at = (int) (row * 0x9E3779B97F4A7C15L >>> 40) & places.length - 1;
      while (places[at] != 0 && places[at] != row) {
        at = at + 1 & places.length - 1;
      }
      return at;
    }
  }

  /** One day from its commit to its closing. */
  private static final class Life {
    private final String name;
    private final Path home;
    private final TestDay day;
    private final SwapModel swap;
    private final SafeKeeping keeping;
    private final ByteArrayOutputStream said = new ByteArrayOutputStream();
    private final List<Seen> seen = new ArrayList<>();
    private final Rows fields = new Rows();
    private final Set<String> learned = new HashSet<>();

    Life(String name, long seed, Optional<Integer> nullRun) throws IOException {
      this.name = name;
      home = Files.createDirectory(folder.resolve("life-" + DAYS.size()));
      Path file = home.resolve("day.blindlap");
      day = new TestDay(file, PLAN, seed, nullRun);
      swap = Models.swap(day);
      SplittableRandom random = new SplittableRandom(3);
      keeping =
          new SafeKeeping(
              new SqliteFiles(
                  day.clock(),
                  () -> {
                    byte[] id = new byte[16];
                    random.nextBytes(id);
                    return id;
                  }),
              file);
    }

    void live() {
      PrintStream out = System.out;
      PrintStream err = System.err;
      PrintStream all = new PrintStream(said, true, StandardCharsets.UTF_8);
      System.setOut(all);
      System.setErr(all);
      try (day) {
        Set<Boolean> real = new HashSet<>();
        look("committed");
        swap.phrase(day.phrase());
        swap.choosePin("4711");
        look("the helper's page open");
        while (swap.phaseProperty().get() == SwapModel.Phase.OPEN) {
          int stint = swap.work().stint();
          if (stint > 1) {
            real.add(day.helper().work(stint).real());
          }
          handle(stint);
          ride(stint);
          swap.bikeReturned();
          look(stint + ": back");
          swap.reopen("4711");
          swap.tick();
        }
        look("after the last stint");
        SWAPS.put(name, real);
        DAYS.put(name, seen);
      } finally {
        System.setOut(out);
        System.setErr(err);
      }
    }

    /** A real swap has more to tick and to put right than a dummy one. */
    private void minutes(int stint) {
      boolean real = day.helper().work(stint).real();
      for (int i = 0; i < 9; i++) {
        for (int more = 0; real && more < 3; more++) {
          swap.work().step(more, i % 2 == 0);
          swap.work().typing("compression", "1" + more);
        }
        if (real && i % 3 == 0) {
          swap.later().typing(onPaper(stint, i));
        }
        day.clock().move(Duration.ofMinutes(1));
        swap.touch();
        swap.tick();
        look(stint + ": minute " + i);
      }
    }

    /** Paper of the stint that is typed half way and then given up. */
    private static PaperForm onPaper(int stint, int minute) {
      return new PaperForm(
          stint,
          KeptOnPaper.AS_SCHEDULED,
          "M. Oster",
          Set.of(SafetyCheck.BRAKES),
          Map.of("compression", "1" + minute),
          "the pencil broke");
    }

    private void handle(int stint) {
      SwapWork work = swap.work();
      work.begin();
      look(stint + ": begun");
      String fitted = Objects.requireNonNull(work.sheetProperty().get()).name();
      work.note(fitted + " is on");
      if (stint == 4) {
        swap.events().blindBroken("he asked whether it was " + fitted);
        swap.hide();
        look(stint + ": hidden in the middle");
        swap.reopen("4711");
      }
      for (SafetyCheck check : SafetyCheck.values()) {
        work.confirm(check.name(), true);
      }
      if (stint > 0) {
        work.riderFit(true);
      }
      look(stint + ": checked");
      if (stint % 3 == 1) {
        keeping.backUpIfChanged();
        look(stint + ": backed up in the middle");
      }
      minutes(stint);
      day.helper()
          .settings(stint, day.helper().work(stint).setup())
          .forEach(s -> work.measured(s.name(), s.value()));
      if (work.waitsProperty().get().whole().contains("mishap")) {
        work.mishap(false, "");
      }
      work.handOver();
      assertThat(work.troubleProperty().get()).isEmpty();
      look(stint + ": handed over");
    }

    private void ride(int stint) {
      if (stint > 0) {
        day.watched(new LapId(stint, 1), "lap time", 95 + stint * stint % 7);
        swap.touch();
        swap.tick();
        look(stint + ": ridden");
      }
    }

    private void look(String step) {
      try (Stream<Path> all = Files.walk(home)) {
        Map<String, String> files = new TreeMap<>();
        Map<String, String> contents = new TreeMap<>();
        learnFields();
        for (Path file : all.filter(Files::isRegularFile).toList()) {
          String path = home.relativize(file).toString();
          files.put(path, Files.size(file) + " " + mode(file));
          contents.put(path, hidden(Files.readAllBytes(file)));
        }
        seen.add(new Seen(step, files, contents, said.toString(StandardCharsets.UTF_8)));
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    /** What may differ, as of now and of earlier moments that backups still hold. */
    private void learnFields() {
      for (StoredEntry stored : day.desk().notebook().entries(day.id())) {
        if (!learned.add(stored.hash().hex())) {
          continue; // an entry never changes
        }
        Fact fact = stored.entry().fact();
        if (fact instanceof Fact.PlanCommitted committed) {
          add(Objects.requireNonNull(committed.key()).ciphertext());
          add(committed.fingerprint().hex());
        } else if (fact instanceof Fact.StintHandled handled) {
          HelperRecord record = handled.record();
          add(record.ciphertext());
        }
        add(stored.hash().hex());
      }
      day.desk().notebook().drafts().values().forEach(text -> add(text.split(" ")[2]));
    }

    /** Eight bytes in a row are one number. */
    private void add(String field) {
      long row = 0;
      for (int i = 0; i < field.length(); i++) {
        row = row << 8 | field.charAt(i);
        if (i + 1 >= WINDOW) {
          fields.add(row);
        }
      }
    }

    private String hidden(byte[] bytes) {
      byte[] hidden = bytes.clone();
      long row = 0;
      for (int i = 0; i < bytes.length; i++) {
        row = row << 8 | (bytes[i] & 0xff);
        if (i + 1 >= WINDOW && fields.contains(row)) {
          Arrays.fill(hidden, i + 1 - WINDOW, i + 1, HIDDEN);
        }
      }
      return new String(hidden, StandardCharsets.ISO_8859_1);
    }

    private static String mode(Path file) throws IOException {
      return Files.getFileStore(file).supportsFileAttributeView("posix")
          ? PosixFilePermissions.toString(Files.getPosixFilePermissions(file))
          : "";
    }
  }

  @Test
  void theDaysDifferInRealAndDummySwapsOrThisShowsNothing() {
    assertThat(DAYS).hasSize(5);
    assertThat(SWAPS.get("null run of A")).containsExactly(false);
    assertThat(SWAPS.get("null run of B")).containsExactly(false);
    assertThat(SWAPS.values().stream().filter(real -> real.size() == 2)).hasSizeGreaterThan(1);
  }

  @Test
  void namesSizesModesAndWhatWasSaidAreTheSameAtEveryStep() {
    List<Seen> first = DAYS.values().iterator().next();
    assertThat(first).hasSizeGreaterThan(40);
    DAYS.forEach(
        (name, day) -> {
          assertThat(day).as(name).hasSameSizeAs(first);
          for (int i = 0; i < first.size(); i++) {
            assertThat(day.get(i).step()).isEqualTo(first.get(i).step());
            assertThat(day.get(i).files())
                .as(name + ", " + day.get(i).step())
                .isEqualTo(first.get(i).files());
            assertThat(day.get(i).said()).as(name + ", " + day.get(i).step()).isEmpty();
          }
        });
  }

  @Test
  void everyByteOfEveryFileIsTheSameAtEveryStepButInCiphertextsFingerprintsAndHashes() {
    List<Seen> first = DAYS.values().iterator().next();
    DAYS.forEach(
        (name, day) -> {
          for (int i = 0; i < first.size(); i++) {
            String where = name + ", " + first.get(i).step();
            Map<String, String> expected = first.get(i).contents();
            day.get(i)
                .contents()
                .forEach(
                    (file, text) ->
                        assertThat(differences(text, Objects.requireNonNull(expected.get(file))))
                            .as(where + ", " + file)
                            .isEmpty());
          }
        });
  }

  /** Where two texts differ, with what stands around it. */
  private static List<String> differences(String one, String two) {
    List<String> found = new ArrayList<>();
    for (int at = 0; at < Math.min(one.length(), two.length()) && found.size() < 5; at++) {
      if (one.charAt(at) != two.charAt(at)) {
        int from = Math.max(0, at - 20);
        found.add(
            at
                + ": "
                + one.substring(from, Math.min(one.length(), at + 20))
                + " | "
                + two.substring(from, Math.min(two.length(), at + 20)));
        at += 64;
      }
    }
    return found;
  }

  @Test
  void oneMoreDraftOrOneOtherByteWouldBeNoticed() {
    List<Seen> first = DAYS.values().iterator().next();
    Seen checked = first.get(10);
    String text = checked.contents().get("day.blindlap");
    assertThat(differences(text, text.substring(0, 24) + "\1\1\1\1" + text.substring(28)))
        .as("another count of changes")
        .isNotEmpty();
    assertThat(text.chars().filter(c -> c == HIDDEN).count()).isLessThan(text.length() * 3L / 4);
  }
}
