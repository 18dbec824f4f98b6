package blindlap.screen.swap;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.compute.OrderSeeds;
import blindlap.desk.TestDay;
import blindlap.plan.Setting;
import blindlap.screen.Models;
import blindlap.session.SafetyCheck;
import blindlap.session.StoredEntry;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
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

  private @TempDir(factory = RamFolder.class) Path folder;

  /** What anyone can read of the notebook after a hand-over or in the middle of a handling. */
  private record Traces(List<String> drafts, List<String> entries, long size, int changes) {}

  private static Traces traces(TestDay day, Path file) {
    List<String> drafts = new ArrayList<>();
    day.desk()
        .notebook()
        .drafts()
        .forEach(
            (name, text) -> {
              assertThat(text).doesNotContain("Shock").doesNotContain("sag");
              String clear = text.substring(0, text.indexOf(' '));
              drafts.add(name + " " + clear + " " + text.length());
            });
    List<String> entries = new ArrayList<>();
    for (StoredEntry stored : day.desk().notebook().entries(day.id())) {
      String text = stored.text();
      entries.add(
          stored.entry().at() + " " + text.length() + " " + SECRET.matcher(text).replaceAll("*"));
    }
    try {
      // The file change counter of the SQLite format, bytes 24 to 27.
      int changes = ByteBuffer.wrap(Files.readAllBytes(file)).getInt(CHANGES);
      return new Traces(drafts, entries, Files.size(file), changes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private List<Traces> day(long seed, List<String> orders) {
    List<Traces> seen = new ArrayList<>();
    Path file = folder.resolve("day-" + seed + ".blindlap");
    try (TestDay day = new TestDay(folder, PLAN, seed)) {
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
      work.fitted(1 - sheet.fitted());
      work.fitted(sheet.fitted());
    }
  }

  @Test
  void draftsEntriesFileSizeAndNumberOfChangesAreTheSameForEveryOrder() {
    List<String> orders = new ArrayList<>();
    List<Traces> first = null;
    for (Map.Entry<String, Long> each : OrderSeeds.of(PLAN, 6).entrySet()) {
      List<Traces> seen = day(each.getValue(), orders);
      assertThat(seen).hasSize(18);
      if (first == null) {
        first = seen;
        assertThat(first.get(0).drafts()).hasSize(1);
      }
      assertThat(seen).isEqualTo(first);
    }
    assertThat(orders).doesNotHaveDuplicates().hasSize(6);
  }
}
