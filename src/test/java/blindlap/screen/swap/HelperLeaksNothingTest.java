package blindlap.screen.swap;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.compute.OrderSeeds;
import blindlap.desk.DeskLook;
import blindlap.desk.HelperDay;
import blindlap.desk.StepsTestDay;
import blindlap.desk.TellingTestDay;
import blindlap.desk.TestDay;
import blindlap.plan.Setting;
import blindlap.plan.TellingTask;
import blindlap.screen.Models;
import blindlap.session.KeptOnPaper;
import blindlap.session.SafetyCheck;
import blindlap.session.StoredEntry;
import blindlap.wording.day.SafetyRow;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What the helper types, draft and entry alike, leaves the same traces whatever was drawn: the
 * setups of this plan differ in the number of settings, the helper's words name what is fitted.
 */
class HelperLeaksNothingTest {
  private static final Pattern SECRET =
      Pattern.compile("[0-9a-f]{24,}|[A-Za-z0-9+/=]{40,}|\"[0-9a-f]{8,}\"");
  private static final int CHANGES = 24;

  /** Seconds between two ticks of the page. */
  private static final int STEP = 3;

  private static final String PLAN =
      TestDay.EIGHT.replaceFirst(
              " +- .name: sag, value: 26, unit: \"%\", tolerance: 1, readings: 3.\\n", "")
          + "differences_reason: one has no sag to set\n";

  /** Every order with every kind of day, by the property orders; else a part that has each. */
  private static final boolean WHOLE = Integer.getInteger("orders") != null;

  private @TempDir(factory = RamFolder.class) Path folder;

  /** Entries with what is secret taken out, by hash: an entry never changes. */
  private final Map<String, String> masked = new HashMap<>();

  /** What anyone can read of the notebook after a hand-over or in the middle of a handling. */
  private record Traces(List<String> drafts, List<String> entries, long size, int changes) {}

  private Traces traces(TestDay day, Path file) {
    List<String> drafts = new ArrayList<>();
    day.desk()
        .notebook()
        .drafts()
        .forEach(
            (name, text) -> {
              // Ciphertext in Base64 may hold any short word by chance; none of these is short.
              assertThat(text).doesNotContain("Shock ", "\"sag\"", "compression");
              String clear = text.substring(0, text.indexOf(' '));
              drafts.add(name + " " + clear + " " + text.length());
            });
    List<String> entries = new ArrayList<>();
    for (StoredEntry stored : day.desk().notebook().entries(day.id())) {
      entries.add(masked.computeIfAbsent(stored.hash().hex(), hash -> masked(stored)));
    }
    try {
      // The file change counter of the SQLite format, bytes 24 to 27.
      int changes = ByteBuffer.wrap(Files.readAllBytes(file)).getInt(CHANGES);
      return new Traces(drafts, entries, Files.size(file), changes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String masked(StoredEntry stored) {
    String text = stored.text();
    return stored.entry().at() + " " + text.length() + " " + SECRET.matcher(text).replaceAll("*");
  }

  private List<Traces> day(String plan, long seed, List<String> orders) {
    List<Traces> seen = new ArrayList<>();
    Path file = folder.resolve("day-" + seed + ".blindlap");
    try (TestDay day = new TestDay(folder, plan, seed)) {
      orders.add(day.order());
      SwapModel swap = Models.swap(day);
      swap.phrase(day.phrase());
      swap.choosePin("4711");
      while (swap.phaseProperty().get() == SwapModel.Phase.OPEN) {
        handle(day, swap, () -> seen.add(traces(day, file)));
        seen.add(traces(day, file));
        swap.bikeReturned();
        swap.reopen("4711");
      }
      assertThat(day.desk().planning().drafts()).as("drafts that the Plan page lists").isEmpty();
      assertThat(day.desk().notebook().drafts()).isEmpty();
    }
    return seen;
  }

  private static void handle(TestDay day, SwapModel swap, Runnable halfWay) {
    SwapWork work = swap.work();
    int stint = work.stint();
    work.begin();
    String name = Objects.requireNonNull(work.sheetProperty().get()).name();
    if (stint == 3) {
      swap.events().coverOff(name + " showed under the cloth");
      swap.events().blindBroken("he asked whether it was " + name);
      swap.helperChanged("the one who fits " + name);
    }
    work.note(name + " went on easily");
    for (SafetyCheck check : SafetyCheck.values()) {
      work.confirm(check.name(), true);
    }
    if (stint > 0) {
      work.riderFit(true);
    }
    halfWay.run();
    day.desk()
        .planning()
        .drafts()
        .forEach((draft, fields) -> assertThat(draft).doesNotContain("helper"));
    work(day, swap, stint);
    if (work.overrunProperty().get()) {
      work.mishap(false, "");
    }
    work.handOver();
    assertThat(work.troubleProperty().get()).isEmpty();
  }

  /**
   * Eight minutes by the clock. In a real swap there is more to type, to tick and to put right, and
   * the helper is away from the page for longer, which then closes itself; a dummy swap has none of
   * it.
   */
  private static void work(TestDay day, SwapModel swap, int stint) {
    SwapWork work = swap.work();
    boolean real = day.helper().work(stint).real();
    List<Setting> settings = day.helper().settings(stint, day.helper().work(stint).setup());
    for (int second = 0; second < 480; second += STEP) {
      day.clock().move(Duration.ofSeconds(STEP));
      if (swap.phaseProperty().get() == SwapModel.Phase.BLANK && second % 60 == 0) {
        swap.reopen("4711");
      }
      if (swap.phaseProperty().get() == SwapModel.Phase.OPEN) {
        if (real && second % 12 == 0) {
          typed(work, settings, second);
        }
        if (!real || second < 60 || second > 300) {
          swap.touch();
        }
      }
      swap.tick();
    }
    if (swap.phaseProperty().get() == SwapModel.Phase.BLANK) {
      swap.reopen("4711");
    }
    settings.forEach(s -> work.measured(s.name(), s.value()));
    swap.touch();
    swap.tick();
  }

  private static void typed(SwapWork work, List<Setting> settings, int second) {
    Setting setting = settings.get(second / 12 % settings.size());
    work.typing(setting.name(), String.valueOf(second % 100));
    work.measured(setting.name(), setting.value());
    work.step(second / 12 % 5, second % 24 == 0);
    if (second % 96 == 0) {
      SwapSheet sheet = Objects.requireNonNull(work.sheetProperty().get());
      work.fitted((sheet.fitted() + 1) % sheet.setups().size());
      work.fitted(sheet.fitted());
    }
  }

  @Test
  void draftsEntriesFileSizeAndNumberOfChangesAreTheSameForEveryOrder() {
    sameTraces(PLAN, 18);
  }

  /** What is counted out differs with the level that comes off and the one that is set. */
  @Test
  void theyAreTheSameForEveryOrderOfAStepsDay() {
    sameTraces(StepsTestDay.NINE, 20);
  }

  /** The same of trials, each drawn for itself. */
  @Test
  void theyAreTheSameForEveryDrawOfATellingRun() {
    sameTraces(TellingTestDay.levels(TellingTask.TRIANGLE, 3), 20);
  }

  private void sameTraces(String plan, int moments) {
    List<String> orders = new ArrayList<>();
    List<Traces> first = null;
    int wanted = WHOLE ? 6 : 3;
    for (Map.Entry<String, Long> each : OrderSeeds.of(plan, wanted).entrySet()) {
      List<Traces> seen = day(plan, each.getValue(), orders);
      assertThat(seen).hasSize(moments);
      if (first == null) {
        first = seen;
        assertThat(first.get(0).drafts()).hasSize(1);
      }
      assertThat(seen).isEqualTo(first);
    }
    assertThat(orders).doesNotHaveDuplicates().hasSize(wanted);
  }

  /**
   * A day on which nobody, or the helper, notices wrong fits: before a handling, after the last
   * one, with the page closed in between; two stints are kept on paper. Seen second by second.
   */
  private List<Traces> laterDay(long seed, boolean corrected, boolean otherwise) {
    List<Traces> seen = new ArrayList<>();
    String name = "later-" + seed + corrected + otherwise + ".blindlap";
    Path file = folder.resolve(name);
    try (TestDay day = new TestDay(file, PLAN, seed, java.util.Optional.empty())) {
      SwapModel swap = Models.swap(day);
      swap.phrase(day.phrase());
      swap.choosePin("4711");
      while (swap.phaseProperty().get() == SwapModel.Phase.OPEN) {
        int stint = swap.work().stint();
        if (stint == 3 || stint == 7) {
          seconds(day, swap, file, seen, corrected ? stint - 1 : -1);
        }
        if (stint == 4 || stint == 5) {
          boolean other = otherwise && stint == 4;
          keptOnPaper(swap, stint, other ? 1 - day.helper().work(stint).setup() : -1);
        } else {
          handle(day, swap, () -> seen.add(traces(day, file)));
          swap.bikeReturned();
          swap.reopen("4711");
        }
        seen.add(traces(day, file));
      }
      seconds(day, swap, file, seen, corrected ? 8 : -1);
      assertThat(swap.later().closableProperty().get()).isTrue();
      swap.later().dayOver();
      assertThat(swap.later().troubleProperty().get()).isEmpty();
      seen.add(traces(day, file));
      assertThat(day.state().helperRecords()).hasSize(1 + 8 + 1);
      assertThat(corrections(day)).isEqualTo(corrected ? 3 : 0);
    }
    return seen;
  }

  private static long corrections(TestDay day) {
    day.desk().riderDays().closeDay(day.id());
    HelperDay helper = day.helper();
    return day.state().helperRecords().values().stream()
        .mapToLong(record -> DeskLook.corrections(helper, day.state(), record.stint()))
        .sum();
  }

  /** The page stands open for a while, is closed and opened again; perhaps something is said. */
  private void seconds(TestDay day, SwapModel swap, Path file, List<Traces> seen, int wrong) {
    for (int second = 0; second < 14; second++) {
      day.clock().move(Duration.ofSeconds(1));
      swap.touch();
      swap.tick();
      seen.add(traces(day, file));
      if (second == 3 && wrong >= 0) {
        SwapLater.Stint stint =
            swap.later().stintsProperty().get().stream()
                .filter(each -> each.stint() == wrong)
                .findFirst()
                .orElseThrow();
        swap.later().correct(wrong, 1 - stint.setup(), stint.words() + " was only on the box");
        assertThat(swap.later().troubleProperty().get()).isEmpty();
        assertThat(swap.later().saidProperty().get()).startsWith("Recorded: Stint " + wrong);
      }
      seen.add(traces(day, file));
      if (second == 9) {
        swap.hide();
        seen.add(traces(day, file));
        swap.reopen("4711");
      }
    }
  }

  private static void keptOnPaper(SwapModel swap, int stint, int otherwise) {
    SwapPaper paper = Objects.requireNonNull(swap.later().paperProperty().get());
    assertThat(paper.stint()).isEqualTo(stint);
    assertThat(paper.checks()).noneMatch(SafetyRow::yes);
    swap.later()
        .keptOnPaper(
            new KeptOnPaper(
                stint,
                otherwise,
                "J. Ask",
                Set.of(SafetyCheck.values()),
                Map.of("compression", "9"),
                otherwise < 0 ? "" : "not " + paper.head()));
    assertThat(swap.later().troubleProperty().get()).isEmpty();
  }

  @Test
  void noOrderAndNoCorrectionAndNoPaperShowsSecondBySecondInFileDraftsOrEntries() {
    List<Traces> first = null;
    int days = 0;
    int order = -1;
    for (Map.Entry<String, Long> each : OrderSeeds.of(PLAN, 4).entrySet()) {
      order++;
      for (int kind = 0; kind < 4; kind++) {
        if (!WHOLE && kind != order && kind != (order + 1) % 4) {
          continue;
        }
        List<Traces> seen = laterDay(each.getValue(), kind % 2 == 1, kind / 2 == 1);
        first = first == null ? seen : first;
        assertThat(seen).hasSizeGreaterThan(80);
        for (int i = 0; i < seen.size(); i++) {
          assertThat(seen.get(i)).as(each + ", kind " + kind + ", " + i).isEqualTo(first.get(i));
        }
        days++;
      }
    }
    assertThat(days).isEqualTo(WHOLE ? 16 : 8);
    assertThat(Objects.requireNonNull(first).stream().map(Traces::changes).distinct())
        .as("changes of the file, or this shows nothing")
        .hasSizeGreaterThan(20);
  }
}
