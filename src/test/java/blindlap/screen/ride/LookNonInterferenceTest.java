package blindlap.screen.ride;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.compute.OrderSeeds;
import blindlap.desk.Sheets;
import blindlap.desk.TestDay;
import blindlap.screen.Models;
import blindlap.screen.SceneText;
import blindlap.screen.Window;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.swap.SwapModel;
import blindlap.screen.swap.SwapPage;
import blindlap.session.DayCommands;
import blindlap.session.Fact;
import blindlap.session.LookTaken;
import blindlap.session.StoredEntry;
import blindlap.session.day.LapId;
import blindlap.session.day.Source;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.logging.Handler;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import java.util.regex.Pattern;
import javafx.scene.Scene;
import javafx.scene.layout.StackPane;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A look before the end tells its declared word and nothing else. Clock, codes, nonce, salt, IVs,
 * phrase and all values are the same in all runs; only the order differs, and with it what the look
 * finds.
 */
class LookNonInterferenceTest {
  private static final String PLAN =
      TestDay.SIXTEEN
          .replace("stints: 16", "stints: 24\nlooks: [12, 16]")
          .replace("16:38", "19:00")
          .replace("lap_budget: 20", "lap_budget: 40");

  private static final Pattern SECRET =
      Pattern.compile("[0-9a-f]{24,}|[A-Za-z0-9+/=]{40,}|\"[0-9a-f]{8,}\"");

  private @TempDir(factory = RamFolder.class) Path folder;

  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  /**
   * A day.
   *
   * @param said what people read of each look
   * @param seen everything a rider or starter may see
   */
  private record Day(List<Boolean> said, List<String> seen) {}

  private static String shown(Look look, javafx.scene.Parent page) {
    Scene scene = new Scene(new StackPane(page), 1280, 900);
    look.dress(scene);
    String text = SceneText.of(scene);
    scene.setRoot(new StackPane());
    return text;
  }

  private static void rides(TestDay day, int from, int to, String quick) {
    for (int stint = from; stint <= to; stint++) {
      LapId lap = new LapId(stint, 1);
      day.watched(
          lap, "lap time", 95 + stint * stint % 3 - (quick.charAt(stint - 1) == 'B' ? 12 : 0));
      Fact ridden = new Fact.LapRidden(lap, Source.SCREEN);
      day.desk().sessions().act(day.id(), latest -> new DayCommands(latest).note(lap, ridden));
    }
  }

  private Day day(long seed, String quick) {
    List<String> seen = new ArrayList<>();
    Handler listener = listening(seen);
    Logger.getLogger("").addHandler(listener);
    try (TestDay day = new TestDay(folder, PLAN, seed)) {
      Window.run(
          () -> {
            Look look = new Look();
            for (int end : day.state().plan().looks()) {
              rides(day, end == 12 ? 1 : 13, end, quick);
              SwapModel swap = Models.swap(day);
              swap.phrase(day.phrase());
              swap.choosePin("0417");
              swap.looks().look();
              swap.hide();
              seen.add("swap, hidden\n" + shown(look, new SwapPage(look, swap, () -> {})));
              RideModel ride = Models.ride(day);
              seen.add("ride\n" + shown(look, new RidePage(look, ride, () -> {})));
            }
          });
      for (StoredEntry stored : day.desk().notebook().entries(day.id())) {
        String text = stored.text();
        seen.add(
            stored.entry().at()
                + " "
                + text.length()
                + " "
                + SECRET
                    .matcher(text.replaceAll("\"outcome\":\"(ride on|settled)\"", "outcome"))
                    .replaceAll("*"));
      }
      new Sheets()
          .open(day.state(), Sheets.Paper.A4)
          .forEach((name, pdf) -> seen.add(name + " " + Arrays.hashCode(pdf) + " " + pdf.length));
      seen.add("summary " + day.desk().sessionList().find(""));
      seen.add("file of " + Files.size(folder.resolve("day-" + seed + ".blindlap")) + " bytes");
      return new Day(day.state().looks().values().stream().map(LookTaken::settled).toList(), seen);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    } finally {
      Logger.getLogger("").removeHandler(listener);
    }
  }

  private static Handler listening(List<String> seen) {
    return new Handler() {
      @Override
      public void publish(LogRecord entry) {
        if (String.valueOf(entry.getLoggerName()).startsWith("blindlap")) {
          seen.add("log " + entry.getLoggerName() + " " + entry.getMessage());
        }
      }

      @Override
      public void flush() {}

      @Override
      public void close() {}
    };
  }

  @Test
  void whateverALookFindsRiderAndStarterSeeTheDeclaredWordAtMost() {
    Map<String, Long> seeds = OrderSeeds.of(PLAN, 5);
    String quick = seeds.keySet().iterator().next();
    Map<String, Day> days = new TreeMap<>();
    seeds.forEach((order, seed) -> days.put(order, day(seed, quick)));

    assertThat(days.values().stream().map(Day::said).distinct())
        .as("outcomes")
        .hasSizeGreaterThan(1);
    Day first = days.get(quick);
    assertThat(first.said()).containsExactly(false, true);
    assertThat(first.seen())
        .anyMatch(text -> text.startsWith("ride"))
        .anyMatch(text -> text.contains("LookTaken"))
        .anyMatch(text -> text.startsWith("starter-sheet.pdf"))
        .noneMatch(text -> text.startsWith("ride\n") && text.contains("settled"));
    days.forEach(
        (order, day) -> assertThat(day.seen()).as("order %s", order).isEqualTo(first.seen()));
  }
}
