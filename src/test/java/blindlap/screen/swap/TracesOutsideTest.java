package blindlap.screen.swap;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.Sheets;
import blindlap.desk.TestDay;
import blindlap.screen.Models;
import blindlap.session.KeptOnPaper;
import blindlap.session.SafetyCheck;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What a desktop and a system keep beside the notebook: lists of files used lately, preferences of
 * Java, command lines in the list of processes. A helper's day leaves nothing of the key there.
 */
class TracesOutsideTest {
  private @TempDir(factory = RamFolder.class) Path folder;

  /** Lists of files used lately and preferences of Java, by file. */
  private static Map<String, String> outside() {
    Path home = Path.of(System.getProperty("user.home"));
    List<Path> places = new ArrayList<>();
    places.add(home.resolve(".local/share/recently-used.xbel"));
    places.add(home.resolve(".recently-used"));
    places.add(home.resolve(".java/.userPrefs"));
    String data = System.getenv("XDG_DATA_HOME");
    if (data != null && !data.isBlank()) {
      places.add(Path.of(data).resolve("recently-used.xbel"));
    }
    Map<String, String> found = new TreeMap<>();
    for (Path place : places) {
      if (Files.exists(place)) {
        read(place, found);
      }
    }
    return found;
  }

  private static void read(Path place, Map<String, String> found) {
    try (Stream<Path> files = Files.walk(place)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        found.put(file.toString(), Files.readString(file, StandardCharsets.ISO_8859_1));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Command lines of this program and of whatever it has started. */
  private static List<String> commandLines() {
    return Stream.concat(Stream.of(ProcessHandle.current()), ProcessHandle.current().descendants())
        .map(each -> each.info().commandLine().orElse(""))
        .toList();
  }

  private static void look(TestDay day, Map<String, String> before, List<String> processes) {
    Map<String, String> now = outside();
    assertThat(now).isEqualTo(before);
    assertThat(commandLines()).as("no process is started").isEqualTo(processes);
    List<String> all = new ArrayList<>(now.values());
    all.addAll(now.keySet());
    all.addAll(commandLines());
    assertThat(all)
        .noneMatch(text -> text.contains("Shock K") || text.contains("Shock L"))
        .noneMatch(text -> text.contains(day.phrase()) || text.contains(day.order()));
  }

  @Test
  void recentlyUsedListsPreferencesAndProcessesCarryNothingOfTheKeyOverAHelpersDay() {
    Map<String, String> before = outside();
    List<String> processes = commandLines();
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 3)) {
      day.desk().helperSheets().write(day.state(), day.phrase(), folder, Sheets.Paper.A4, false);
      SwapModel swap = Models.swap(day);
      swap.phrase(day.phrase());
      swap.choosePin("4711");
      int stints = 0;
      while (swap.phaseProperty().get() == SwapModel.Phase.OPEN) {
        if (swap.work().stint() == 4) {
          swap.later().correct(3, 1 - setupOf(swap, 3), "boxes were swapped");
          swap.later()
              .keptOnPaper(new KeptOnPaper(4, -1, "J. Ask", Set.of(), Map.of(), "by pencil"));
        } else {
          handle(day, swap);
          swap.bikeReturned();
          swap.reopen("4711");
        }
        stints++;
        look(day, before, processes);
      }
      swap.later().dayOver();
      look(day, before, processes);
      assertThat(stints).isEqualTo(9);
      assertThat(day.state().helperRecords()).hasSize(10);
    }
  }

  private static int setupOf(SwapModel swap, int stint) {
    return swap.later().stintsProperty().get().stream()
        .filter(each -> each.stint() == stint)
        .findFirst()
        .orElseThrow()
        .setup();
  }

  private static void handle(TestDay day, SwapModel swap) {
    SwapWork work = swap.work();
    work.begin();
    int stint = work.stint();
    work.note(Objects.requireNonNull(work.sheetProperty().get()).name() + " is on");
    for (SafetyCheck check : SafetyCheck.values()) {
      work.confirm(check.name(), true);
    }
    if (stint > 0) {
      work.riderFit(true);
    }
    day.helper()
        .settings(stint, day.helper().work(stint).setup())
        .forEach(s -> work.measured(s.name(), s.value()));
    day.clock().move(Duration.ofMinutes(8));
    swap.touch();
    swap.tick();
    if (work.overrunProperty().get()) {
      work.mishap(false, "");
    }
    work.handOver();
    assertThat(work.troubleProperty().get()).isEmpty();
  }
}
