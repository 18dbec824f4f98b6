package blindlap.screen.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.Desk;
import blindlap.desk.TestDay;
import blindlap.plan.Rule;
import blindlap.plan.RuleBook;
import blindlap.screen.Models;
import blindlap.screen.part.Background;
import blindlap.screen.part.Shell;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A rule that takes long is worked out behind the page, which says so; by counted effort. */
class PlanWaitingTest {
  private static final Path SAMPLE = Path.of("sample-sessions/shocks-on-quarry-loop/plan.yaml");

  private @TempDir(factory = RamFolder.class) Path folder;
  private final Deque<Runnable> work = new ArrayDeque<>();
  private Desk desk;
  private PlanModel model;

  @BeforeEach
  void open() {
    desk = PlanDesk.open(folder, 1);
    model = Models.plan(desk, new Shell(), Background.by(work::add), 0);
    model.startFromFile(SAMPLE);
    runAll();
    assertThat(model.planProperty().get()).isPresent();
  }

  @AfterEach
  void close() {
    desk.close();
  }

  private void runAll() {
    while (!work.isEmpty()) {
      work.poll().run();
    }
  }

  /** Another longest run each time: what was worked out once is known for the program's life. */
  private void longRuns(int longest) throws IOException {
    String plan =
        Files.readString(SAMPLE)
            .replace(
                "protocol: blocks-of-four",
                "protocol: {name: long runs, setups: [2], max_run: " + longest + "}")
            .replace("stints: 16", "stints: 36");
    model.startFromFile(Files.writeString(folder.resolve("long.yaml"), plan));
    work.poll().run();
    assertThat(model.planProperty().get()).isPresent();
    assertThat(said()).contains("checking it takes a moment");
    while (said().contains("checking")) {
      work.poll().run();
    }
  }

  private String said() {
    return model.answer().waiting().wordsProperty().get();
  }

  private String sentence() {
    return model.answer().shownProperty().get().sentence().text();
  }

  @Test
  void aSmallRuleIsAnsweredAtOnce() {
    model.form().field("stints").set("24");
    assertThat(model.answer().waiting().wordsProperty().get()).isEmpty();
    assertThat(model.answered()).isPresent();
  }

  @Test
  void aLargeRuleSaysThatItTakesLongAndHowFarItIsWhileThePageGoesOn() throws IOException {
    longRuns(11);
    assertThat(said()).contains("longer than two seconds", "You can go on typing");
    assertThat(sentence()).isEqualTo("What such a day can show is being worked out.");
    assertThat(model.answered()).isEmpty();
    List<String> told = new ArrayList<>();
    model.answer().waiting().wordsProperty().addListener((o, before, now) -> told.add(now));
    model.form().field("trail").set("Mill track");
    assertThat(said()).isNotEmpty();
    runAll();
    assertThat(told).anyMatch(words -> words.contains("So far: 1 of "));
    assertThat(said()).isEmpty();
    assertThat(model.answered()).isPresent();
    model.form().field("trail").set("Mill track again");
    assertThat(said()).as("known from now on").isEmpty();
    assertThat(model.answered()).isPresent();
  }

  @Test
  void itIsStoppedAndTakenUpAgain() throws IOException {
    longRuns(12);
    model.answer().waiting().stop();
    runAll();
    assertThat(model.answered()).isEmpty();
    assertThat(said()).startsWith("Stopped");
    assertThat(sentence()).isEqualTo("What such a day can show is not worked out.");
    model.answer().waiting().begin();
    assertThat(said()).contains("longer than two seconds");
    runAll();
    assertThat(said()).isEmpty();
    assertThat(model.answered()).isPresent();
  }

  @Test
  void anotherPlanDropsWhatIsUnderWay() throws IOException {
    longRuns(13);
    model.form().field("stints").set("16");
    assertThat(said()).isEmpty();
    int small = model.answered().orElseThrow().chosen().stints();
    runAll();
    assertThat(small).isEqualTo(16);
    assertThat(model.answered().orElseThrow().chosen().stints()).isEqualTo(16);
  }

  /** A plan that holds but for what its rule is; not judged yet. */
  private void ownRule(int longest, int stints) throws IOException {
    String rule = "rule: {setups: 2, stints: %2$d, max_run: %1$d}%nstints: %2$d";
    String plan =
        TestDay.EIGHT
            .replaceFirst("(?m)^timetable: .*$", "")
            .replace("protocol: eight-stints\nstints: 8", rule.formatted(longest, stints));
    model.startFromFile(Files.writeString(folder.resolve("own.yaml"), plan));
    work.poll().run();
    assertThat(said()).contains("checking it takes a moment");
  }

  @Test
  void theSetOfALargeRuleIsMadeBehindThePageAndNotAgainWhileOneTypes() throws Exception {
    Rule rule = new Rule(2, 36, 36, List.of(), 14, null);
    RuleBook book = RuleBook.ofProgram();
    ownRule(14, 36);
    model.form().field("trail").set("Mill track");
    model.form().field("trail").set("Mill track again");
    assertThat(model.planProperty().get().orElseThrow().rule()).isEqualTo(rule);
    assertThat(book.made(rule)).as("made while typing").isFalse();
    assertThat(model.completeProperty().get()).as("nobody knows yet that it holds").isFalse();
    assertThat(sentence()).isEqualTo("What such a day can show is being worked out.");
    while (said().contains("checking")) {
      work.poll().run();
    }
    assertThat(book.made(rule)).isTrue();
    assertThat(model.completeProperty().get()).isTrue();
    model.answer().waiting().stop();
    runAll();
    model.form().field("trail").set("Mill track once more");
    assertThat(said()).contains("longer than two seconds");
    assertThat(model.completeProperty().get()).as("can be committed without an answer").isTrue();
  }

  @Test
  void aLargeRuleThatIsRefusedIsRefusedFromBehindThePage() throws IOException {
    ownRule(29, 60);
    assertThat(model.completeProperty().get()).isFalse();
    assertThat(model.problems()).noneMatch(problem -> problem.contains("cannot be counted"));
    runAll();
    assertThat(model.completeProperty().get()).isFalse();
    assertThat(model.problems()).anyMatch(problem -> problem.contains("cannot be counted"));
    assertThat(said()).isEmpty();
  }
}
