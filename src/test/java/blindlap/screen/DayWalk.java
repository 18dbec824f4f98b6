package blindlap.screen;

import blindlap.desk.HelperDay;
import blindlap.desk.StepsTestDay;
import blindlap.desk.TellingTestDay;
import blindlap.desk.TestDay;
import blindlap.plan.Setting;
import blindlap.plan.TellingRun;
import blindlap.plan.TellingTask;
import blindlap.screen.part.Background;
import blindlap.screen.part.Deaf;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Shell;
import blindlap.screen.part.Theme;
import blindlap.screen.plan.PlanModel;
import blindlap.screen.plan.PlanPage;
import blindlap.screen.review.ReviewModel;
import blindlap.screen.review.ReviewPage;
import blindlap.screen.ride.RideModel;
import blindlap.screen.ride.RidePage;
import blindlap.screen.swap.SwapModel;
import blindlap.screen.swap.SwapPage;
import blindlap.session.SafetyCheck;
import blindlap.session.day.LapId;
import blindlap.wording.SwapWords;
import java.nio.file.Files;
import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.IntConsumer;
import java.util.function.Supplier;
import javafx.application.Platform;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.TitledPane;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import javafx.stage.StageStyle;

/**
 * A day in a real window, by mouse and by keyboard, small and large, at 100 % and 200 % text, in
 * every theme: practised swaps, the warm-up, a stint, a stint with a mishap, a void asked and taken
 * back, a lap opened again, a wrong fit noticed later, the end of the day and the way to the
 * review. It keeps pictures of each moment, says what cannot be reached, and counts the presses of
 * a helper's stint and a rider's lap. A program: DEVELOPERS.md has the command.
 */
public final class DayWalk {
  private static final String PIN = "4711";

  private final boolean mouse;
  private final Kind kind;
  private final String name;
  private final TestDay day;
  private final Map<String, Integer> counts = new LinkedHashMap<>();
  private final List<String> wrong = new ArrayList<>();
  private final Stage stage = new Stage();
  private final Scene scene;
  private final SwapModel swap;
  private final RideModel ride;
  private final Shell shell = new Shell();
  private final Keyboard keys;
  private final Mouse hand;

  /** What is ridden. */
  private enum Kind {
    DAY("", TestDay.EIGHT),
    STEPS("steps-", StepsTestDay.NINE),
    TELLING("telling-", TellingTestDay.levels(TellingTask.TRIANGLE, 5));

    private final String begins;
    private final String plan;

    Kind(String begins, String plan) {
      this.begins = begins;
      this.plan = plan;
    }
  }

  private DayWalk(boolean mouse, int width, int height, double scale, Theme theme, Kind kind)
      throws Exception {
    this.mouse = mouse;
    this.kind = kind;
    this.name = kind.begins + name(width + "", scale, theme, mouse);
    this.day = new TestDay(Files.createTempDirectory("walk"), kind.plan, 2);
    swap = Models.swap(day);
    ride = Models.ride(day);
    Look look = new Look();
    look.themeProperty().set(theme);
    look.textScaleProperty().set(scale);
    Map<Shell.Page, Supplier<? extends Node>> makers = new EnumMap<>(Shell.Page.class);
    Runnable toRide = () -> shell.go(Shell.Page.RIDE);
    Runnable review = () -> shell.go(Shell.Page.REVIEW);
    makers.put(Shell.Page.SWAP, () -> new SwapPage(look, swap, toRide, toRide, review));
    makers.put(
        Shell.Page.RIDE, () -> new RidePage(look, ride, () -> shell.go(Shell.Page.SWAP), review));
    PlanModel plan = Models.plan(day.desk(), shell, Background.immediate(), 0);
    makers.put(Shell.Page.PLAN, () -> new PlanPage(look, plan, new NoDialogs()));
    ReviewModel reviewed = Models.review(day.desk(), Background.immediate());
    shell.whenShown(Shell.Page.REVIEW, reviewed::open);
    makers.put(Shell.Page.REVIEW, () -> new ReviewPage(look, reviewed, new NoDialogs()));
    shell.open(Shell.Page.SWAP, day.id());
    scene =
        new Scene(new ShellView(look, shell, makers, List.of("quarry.blindlap")), width, height);
    look.dress(scene);
    stage.initStyle(StageStyle.UNDECORATED);
    stage.setScene(scene);
    stage.setX(0);
    stage.setY(0);
    stage.show();
    stage.requestFocus();
    keys = new Keyboard(scene);
    hand = new Mouse(scene);
  }

  private static String name(String width, double scale, Theme theme, boolean mouse) {
    return String.format(
        Locale.ROOT,
        "%s-%.0f-%s-%s",
        width,
        100 * scale,
        theme.name().toLowerCase(Locale.ROOT),
        mouse ? "mouse" : "keys");
  }

  private void press(String words) {
    heard(); // a page that has scrolled is deaf for a moment, and nobody is faster here
    if (mouse) {
      hand.click(words);
    } else {
      keys.choose(words);
    }
  }

  private int presses() {
    return mouse ? hand.clicks() : keys.struck();
  }

  private void type(String field, String text) {
    heard();
    if (mouse) {
      hand.click(field);
    } else {
      keys.goTo(field);
    }
    keys.type(text);
  }

  private void look(String moment) {
    Window.run(
        () -> {
          Window.picture(scene, name + "-" + moment.replace(' ', '-'));
          Reachable.wrong(scene).forEach(each -> wrong.add(name + ", " + moment + ": " + each));
        });
  }

  private void heard() {
    Window.run(() -> day.clock().move(Deaf.FOR));
  }

  private void count(String what, Runnable part) {
    int before = presses();
    part.run();
    counts.merge(what, presses() - before, Integer::sum);
  }

  private void walk() {
    if (kind != Kind.DAY) {
      whole(kind == Kind.STEPS ? this::stepsLap : this::trialLap);
      return;
    }
    practise();
    look("phrase");
    type("Helper phrase", day.phrase());
    keys.press(KeyCode.ENTER);
    pin();
    handle(0, "warm-up", 7);
    toRide();
    look("warm-up ride");
    press("Warm-up lap ridden");
    look("waiting");
    toSwap();
    handle(1, "stint", 7);
    toRide();
    lap();
    press("On to the next lap");
    heard();
    toSwap();
    later();
    handle(2, "mishap", 9);
    toRide();
    secondLap();
    endOfDay();
  }

  /** A whole day from the phrase to the finding, such as nine stints of levels, or five trials. */
  private void whole(IntConsumer lap) {
    type("Helper phrase", day.phrase());
    keys.press(KeyCode.ENTER);
    pin();
    handle(0, "warm-up", 7);
    toRide();
    press("Warm-up lap ridden");
    for (Optional<LapId> next = next(); next.isPresent(); next = next()) {
      int stint = next.get().stint();
      toSwap();
      handle(stint, "stint", 7);
      toRide();
      lap.accept(stint);
    }
    press("On to the end of the day");
    heard();
    look("all ridden");
    press("Close the day");
    heard();
    press("Close the day");
    heard();
    press("On to the review");
    heard();
    look("blind review");
    press("Close the review");
    heard();
    look("review close asked");
    press("Close the review");
    heard();
    look("review closed");
    type("Helper phrase", day.phrase());
    keys.press(KeyCode.ENTER);
    heard();
    if (!day.state().unsealed()) {
      throw new AssertionError(name + ": the key is not open");
    }
    look("finding");
  }

  private Optional<LapId> next() {
    return day.state().nextLap();
  }

  /** In trial 2 the rider falls; in all others the lap that differed is named, or the last one. */
  private void trialLap(int stint) {
    TellingRun run = Objects.requireNonNull(day.state().plan().telling());
    int trial = run.trial(stint);
    String which = run.place(stint) + " of trial " + trial;
    if (stint == run.firstStint(2)) {
      press("Something happened");
      heard();
      press("crash");
      look("void asked");
      heard();
      press("Void trial 2");
      heard();
      look("void");
    } else {
      if (stint == run.lastStint(trial)) {
        look("question");
        press("Pick one, however unsure: lap " + (trial == 4 ? 3 : 1 + differed(trial)));
        press("How sure?: fairly sure");
        look("answered");
      } else if (trial == 1) {
        look("lap of a trial");
      }
      press("Done with lap " + which);
      heard();
    }
    if (day.state().lap(new LapId(stint, 1)).isEmpty()) {
      throw new AssertionError(name + ": " + ride.troubleProperty().get());
    }
    if (next().isPresent()) {
      press("On to the next lap");
      heard();
    }
  }

  /** The lap of a trial that differs, from 0: what only the helper's phrase tells. */
  private int differed(int trial) {
    TellingRun run = Objects.requireNonNull(day.state().plan().telling());
    int[] on = new int[3];
    for (int i = 0; i < on.length; i++) {
      on[i] = day.helper().work(run.firstStint(trial) + i).setup();
    }
    return on[1] == on[2] ? 0 : on[0] == on[1] ? 2 : 1;
  }

  /** Slower by a tenth of a second a click: a trend that nine stints show. */
  private void stepsLap(int stint) {
    if (stint == 1) {
      press("Who holds the watch?: starter");
      look("sheet");
    }
    int clicks = 4 + 3 * day.helper().work(stint).setup();
    press("lap time: Start");
    Window.run(
        () ->
            day.clock().move(Duration.ofMillis(92_000 + 300L * clicks + 60L * (stint * 37 % 11))));
    press("lap time: Stop");
    press(stint % 3 == 0 ? "Your guess: don't know" : "Your guess: nearer the low end");
    look("stint " + stint);
    press("Done with lap " + stint);
    heard();
    press("Done as it is");
    heard();
    if (day.state().lap(new LapId(stint, 1)).isEmpty()) {
      throw new AssertionError(name + ": " + ride.troubleProperty().get());
    }
    if (stint < day.state().plan().stints()) {
      press("On to the next lap");
      heard();
    }
  }

  /** Swaps are practised on Plan, before any day. */
  private void practise() {
    Window.run(() -> shell.go(Shell.Page.PLAN));
    Window.run(
        () ->
            scene.getRoot().lookupAll(".titled-pane").stream()
                .filter(n -> n instanceof TitledPane t && t.getText().equals("Practise swaps"))
                .forEach(n -> ((TitledPane) n).setExpanded(true)));
    settled();
    for (String button : List.of("#practice-begin", "#practice-done")) {
      Window.run(() -> scene.getRoot().lookup(button).requestFocus());
      settled();
      keys.press(KeyCode.SPACE);
      Window.run(() -> day.clock().move(Duration.ofMinutes(3)));
    }
    Window.run(() -> Window.picture(scene, name + "-practised"));
    Window.run(() -> shell.go(Shell.Page.SWAP));
  }

  /** What unfolds and scrolls moves for a moment. */
  private static void settled() {
    try {
      Thread.sleep(700);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  /** What the helper opens beside the stint in hand. */
  private void later() {
    press("Note, next swaps");
    heard();
    look("note");
    press("Wrong fit, or kept on paper");
    heard();
    press("A wrong setup was on");
    look("wrong fit");
    press("Back to the stint");
    heard();
    press("Something happened");
    heard();
    look("helper events");
    press("Back to the stint");
    heard();
  }

  /** A lap done with answers open, opened again, void, and the void taken back. */
  private void secondLap() {
    press("lap time: Start");
    Window.run(() -> day.clock().move(Duration.ofSeconds(94)));
    press("Done with lap 2");
    heard();
    look("done asked");
    press("Done as it is");
    heard();
    look("done with the time missing");
    press("Open lap 2 again");
    heard();
    look("opened again");
    press("Something happened");
    heard();
    press("crash");
    look("void asked");
    heard();
    press("Void lap 2");
    heard();
    look("void");
    press("Take back: the void of lap 2");
    look("void taken back");
    if (day.state().lap(new LapId(2, 1)).orElseThrow().voided().isPresent()) {
      throw new AssertionError(name + ": the void stands");
    }
  }

  private void endOfDay() {
    Window.run(ride::lapDone);
    heard();
    press("Something happened");
    heard();
    type("Why? Dark", "rain");
    type("Who decided?", "R. Lind");
    press("End the day early");
    heard();
    look("end asked");
    press("End the day early");
    heard();
    look("ended");
    press("Back to the sheet");
    heard();
    press("On to the end of the day");
    heard();
    look("all ridden");
    press("Close the day");
    heard();
    look("close asked");
    press("Close the day");
    heard();
    look("closed");
    press("On to the review");
    heard();
    look("review");
    Window.run(() -> shell.go(Shell.Page.SWAP));
    look("helper over");
  }

  private void pin() {
    look("pin");
    type("Day PIN", PIN);
    keys.press(KeyCode.ENTER);
    Window.run(swap::tick);
    heard();
  }

  private void toRide() {
    Window.run(() -> shell.go(Shell.Page.RIDE));
    Window.run(ride::tick);
    heard();
  }

  private void toSwap() {
    Window.run(() -> shell.go(Shell.Page.SWAP));
    heard();
    look("safe");
    int before = presses();
    press("The bike is back");
    pin();
    // Of a PIN by mouse its digits and Enter are keys.
    counts.put("the bike is back, and the PIN", presses() - before);
  }

  private void handle(int stint, String of, int minutes) {
    HelperDay.Work work = day.helper().work(stint);
    look(of + " not begun");
    count(of + ": begin", () -> press("Begin"));
    for (Setting setting : work.settings()) {
      int digits = setting.value().length();
      int before = keys.struck();
      count(of + ": values", () -> type(setting.name() + ", measured", setting.value()));
      keys.press(KeyCode.ENTER);
      if (!mouse) {
        counts.merge(of + ": values", 1 - digits, Integer::sum); // Enter, and no digits
      }
      if (keys.struck() == before) {
        throw new AssertionError("nothing was typed");
      }
    }
    count(
        of + ": seven ticks",
        () -> {
          for (SafetyCheck check : SafetyCheck.values()) {
            if (mouse) {
              press(SwapWords.say("check." + check));
            } else {
              keys.press(KeyCode.valueOf(SwapWords.say("key." + check)));
            }
          }
        });
    if (stint > 0) {
      count(
          of + ": fit",
          () -> {
            if (mouse) {
              press("Is the rider fit to go on?: yes");
            } else {
              keys.press(KeyCode.Y);
            }
          });
    }
    Window.run(
        () -> {
          day.clock().move(Duration.ofMinutes(minutes));
          swap.touch();
          swap.tick();
        });
    look(of + " ready");
    if (swap.work().overrunProperty().get()) {
      press("Longer than planned: was there a mishap?: yes");
      heard();
      look(of + " said");
    }
    count(of + ": safe", () -> press("Safe: "));
    if (!day.state().handedOver(stint)) {
      throw new AssertionError(name + ": " + swap.work().troubleProperty().get());
    }
    heard();
  }

  private void lap() {
    press("Who holds the watch?: starter");
    // As on every later lap, where the holder is known: the focus is on Start.
    Window.run(() -> shell.go(Shell.Page.SWAP));
    toRide();
    look("sheet");
    count("lap: watch", () -> press("lap time: Start"));
    Window.run(() -> day.clock().move(Duration.ofSeconds(93)));
    count("lap: watch", () -> press("lap time: Stop"));
    count("lap: answers", () -> press("trust: none (1) to complete (9): 6"));
    for (String scale : List.of("grip in the rocks", "harshness at the hands")) {
      count("lap: answers", () -> mark(scale));
    }
    count("lap: answers", () -> press("one more"));
    count("lap: guess and sureness", () -> press("Your guess: Shock K"));
    count("lap: guess and sureness", () -> press("How sure?: a hunch"));
    look("full sheet");
    count("lap: done", () -> press("Done with lap 1"));
    heard();
    look("done");
    press("Something happened");
    heard();
    look("events");
    press("Back to the sheet");
    heard();
    if (!day.state().guesses().containsKey(1)) {
      throw new AssertionError(name + ": " + ride.troubleProperty().get());
    }
  }

  private void mark(String scale) {
    heard();
    if (mouse) {
      hand.click(scale);
    } else {
      keys.goTo(scale);
      keys.press(KeyCode.RIGHT);
    }
  }

  /**
   * Walks; the pictures go where the property blindlap.pictures says.
   *
   * @param arguments nothing for all walks, else every how many of them are walked, or a pattern of
   *     those that are, such as {@code 1366-200-.*-mouse}, or {@code steps} for a whole steps day,
   *     {@code telling} for a whole telling run
   */
  public static void main(String[] arguments) throws Exception {
    Window.start();
    Window.run(Fonts::load);
    List<String> wrong = new ArrayList<>();
    String which = arguments.length == 0 ? "1" : arguments[0];
    int each = which.matches("[0-9]+") ? Integer.parseInt(which) : 1;
    String pattern = which.matches("[0-9]+") ? ".*" : which;
    int walks = 0;
    for (Kind kind : List.of(Kind.STEPS, Kind.TELLING)) {
      for (double scale : new double[] {1, 2}) {
        boolean named = (kind.begins + name("1366", scale, Theme.PAPER, false)).matches(pattern);
        if (kind.begins.equals(which + "-")
            || named && (which.equals("1") || which.contains("-"))) {
          wrong.addAll(walk("1366x768", scale, Theme.PAPER, false, kind));
        }
      }
    }
    boolean whole = which.equals("steps") || which.equals("telling");
    for (String size : whole ? List.<String>of() : List.of("1366x768", "1920x1080")) {
      for (double scale : new double[] {1, 2}) {
        for (Theme theme : Theme.values()) {
          for (boolean mouse : new boolean[] {true, false}) {
            boolean named = name(size.split("x")[0], scale, theme, mouse).matches(pattern);
            if (walks++ % each == 0 && named) {
              wrong.addAll(walk(size, scale, theme, mouse, Kind.DAY));
            }
          }
        }
      }
    }
    wrong.forEach(System.out::println);
    Platform.exit();
    System.exit(wrong.isEmpty() ? 0 : 1);
  }

  private static List<String> walk(
      String size, double scale, Theme theme, boolean mouse, Kind kind) {
    String[] sides = size.split("x");
    DayWalk walk =
        Window.call(
            () ->
                new DayWalk(
                    mouse,
                    Integer.parseInt(sides[0]),
                    Integer.parseInt(sides[1]),
                    scale,
                    theme,
                    kind));
    try {
      walk.walk();
    } catch (AssertionError | IllegalStateException e) {
      walk.look("failed");
      walk.wrong.add(walk.name + " stopped: " + e.getMessage());
    }
    System.out.println(walk.name + " " + walk.counts);
    Window.run(walk.stage::close);
    walk.day.close();
    return walk.wrong;
  }
}
