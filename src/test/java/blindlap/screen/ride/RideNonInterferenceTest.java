package blindlap.screen.ride;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.compute.OrderSeeds;
import blindlap.desk.StepsTestDay;
import blindlap.desk.TellingTestDay;
import blindlap.desk.TestDay;
import blindlap.screen.Models;
import blindlap.screen.OneRideDay;
import blindlap.screen.SceneText;
import blindlap.screen.Window;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.session.StoredEntry;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import javafx.scene.Scene;
import javafx.scene.layout.StackPane;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The rider can learn nothing of the order. Clock, codes, nonce, warm-up setup, salt, IVs and
 * phrase are the same in all runs; only the seed of the order differs, and with it everything the
 * helper does.
 */
class RideNonInterferenceTest {
  private static final Pattern SECRET =
      Pattern.compile("[0-9a-f]{24,}|[A-Za-z0-9+/=]{40,}|\"[0-9a-f]{8,}\"");
  private static final List<String> VIEWS =
      List.of("sessions", "laps", "scores", "voids", "looks", "covariates");

  private @TempDir(factory = RamFolder.class) Path folder;

  /** One window for all days, as in the program: its style sheets are read and matched once. */
  private static final StackPane holder = new StackPane();

  private static Look look;
  private static Scene scene;

  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(
        () -> {
          Fonts.load();
          look = new Look();
          scene = new Scene(holder, 1280, 900);
          look.dress(scene);
        });
  }

  private List<Integer> codes = List.of();

  /** What a rider may see of a day: every look at the page, then what the notebook shows. */
  private record Seen(String order, List<String> looks, List<String> entries, List<String> rest) {}

  private Seen day(String plan, long seed, boolean everyLook) {
    try (TestDay day = new TestDay(folder, plan, seed)) {
      List<String> looks = new ArrayList<>();
      codes =
          java.util.stream.IntStream.rangeClosed(1, day.state().plan().stints())
              .mapToObj(stint -> day.state().code(stint))
              .toList();
      Window.run(
          () -> {
            RideModel model = Models.ride(day);
            holder.getChildren().setAll(new RidePage(look, model, () -> {}));
            new OneRideDay(
                    day,
                    model,
                    !everyLook,
                    moment -> {
                      if (everyLook || moment.startsWith("empty") || moment.startsWith("wait")) {
                        looks.add(moment + "\n" + SceneText.of(scene));
                      }
                    })
                .ride();
            holder.getChildren().clear();
          });
      List<String> entries = new ArrayList<>();
      for (StoredEntry stored : day.desk().notebook().entries(day.id())) {
        String text = stored.text();
        entries.add(
            stored.entry().at() + " " + text.length() + " " + SECRET.matcher(text).replaceAll("*"));
      }
      Path file = folder.resolve("day-" + seed + ".blindlap");
      return new Seen(day.order(), looks, entries, rest(file));
    }
  }

  private static List<String> rest(Path file) {
    List<String> rest = new ArrayList<>();
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      for (String view : VIEWS) {
        try (ResultSet rows = statement.executeQuery("SELECT * FROM " + view)) {
          int columns = rows.getMetaData().getColumnCount();
          while (rows.next()) {
            StringBuilder row = new StringBuilder(view);
            for (int i = 1; i <= columns; i++) {
              row.append('|').append(rows.getString(i));
            }
            rest.add(row.toString());
          }
        }
      }
      rest.add("file of " + Files.size(file) + " bytes");
    } catch (SQLException | IOException e) {
      throw new IllegalStateException(e);
    }
    return rest;
  }

  private void everyDayLooksTheSame(String plan, int orders, boolean everyLook) {
    Map<String, Long> seeds = OrderSeeds.of(plan, orders);
    Seen first = null;
    List<String> drawn = new ArrayList<>();
    for (Map.Entry<String, Long> each : seeds.entrySet()) {
      Seen seen = day(plan, each.getValue(), everyLook);
      assertThat(seen.order()).isEqualTo(each.getKey());
      drawn.add(seen.order());
      if (first == null) {
        first = seen;
        assertThat(first.looks()).isNotEmpty();
        assertThat(first.rest()).hasSizeGreaterThan(12);
      } else {
        assertThat(seen.looks()).as("pages, order %s", seen.order()).isEqualTo(first.looks());
        assertThat(seen.entries()).as("entries, order %s", seen.order()).isEqualTo(first.entries());
        assertThat(seen.rest()).as("views, order %s", seen.order()).isEqualTo(first.rest());
      }
    }
    assertThat(drawn).doesNotHaveDuplicates().hasSize(orders);
  }

  /** So many orders of each kind; DEVELOPERS.md has the command for all. */
  private static final int ORDERS = Integer.getInteger("orders", 12);

  /** There are no more of eight stints. */
  private static final int ALL_OF_EIGHT = 50;

  /** Six trials of two orders each. */
  private static final int MOST_TWO_CHOICES = 64;

  @Test
  void ordersOfEightStintsLookTheSameToTheRiderAtEveryMomentOfTheDay() {
    everyDayLooksTheSame(TestDay.EIGHT, Math.min(ALL_OF_EIGHT, ORDERS), true);
  }

  @Test
  void ordersLookTheSameWhereCovariatesAreSaid() {
    String plan =
        TestDay.EIGHT.replace(
            "protocol: eight-stints",
            """
            covariates:
              - {name: wind, kind: wind, unit: m/s, per: lap, reason: read at the start}
              - {name: legs, kind: fatigue, unit: 0 to 10, by: rider, reason: asked before}
            protocol: eight-stints\
            """);
    everyDayLooksTheSame(plan, Math.min(6, ORDERS), true);
  }

  @Test
  void ordersOfSixteenStintsLookTheSameToTheRider() {
    everyDayLooksTheSame(TestDay.SIXTEEN, ORDERS, false);
  }

  /** Levels instead of setups: what is handled differs by the order in clicks alone. */
  @Test
  void ordersOfAStepsDayLookTheSameToTheRider() {
    everyDayLooksTheSame(StepsTestDay.NINE, ORDERS, true);
  }

  /** Each trial is drawn for itself; two hundred draws by the property orders. */
  @Test
  void drawsOfTrianglesLookTheSameToTheRider() {
    everyDayLooksTheSame(TellingTestDay.TRIANGLES, ORDERS, true);
  }

  @Test
  void drawsOfDuoTriosLookTheSameToTheRider() {
    everyDayLooksTheSame(TellingTestDay.DUO_TRIOS, Math.min(6, ORDERS), true);
  }

  @Test
  void drawsOfTwoChoicesLookTheSameToTheRider() {
    everyDayLooksTheSame(TellingTestDay.TWO_CHOICES, Math.min(MOST_TWO_CHOICES, ORDERS), true);
  }

  @Test
  void whatIsComparedHoldsTheCodesAndAnswersOfTheDay() {
    Seen one = day(TestDay.EIGHT, 1, true);
    for (int stint = 1; stint <= 8; stint++) {
      String code = "'" + codes.get(stint - 1) + "'";
      assertThat(one.looks())
          .filteredOn(look -> look.startsWith("empty sheet of stint"))
          .filteredOn(look -> look.contains(code))
          .hasSize(1);
    }
    assertThat(one.looks())
        .filteredOn(look -> look.contains("'Every answer is given.'"))
        .hasSize(8);
    assertThat(one.looks()).doesNotHaveDuplicates();
  }
}
