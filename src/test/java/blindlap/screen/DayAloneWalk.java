package blindlap.screen;

import blindlap.desk.AloneDay;
import blindlap.desk.Desk;
import blindlap.desk.FixedSources;
import blindlap.desk.HelperDays;
import blindlap.desk.PreparedUnits;
import blindlap.desk.SafeKeeping;
import blindlap.desk.SetClock;
import blindlap.desk.TestDay;
import blindlap.plan.Labels;
import blindlap.plan.Setting;
import blindlap.screen.book.KeepingModel;
import blindlap.screen.part.Background;
import blindlap.screen.part.Deaf;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Shell;
import blindlap.screen.part.Theme;
import blindlap.seal.SealParameters;
import blindlap.seal.SecureBytes;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import blindlap.store.SqliteFiles;
import blindlap.store.SqliteNotebook;
import blindlap.wording.AloneWords;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import javafx.application.Platform;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import javafx.stage.StageStyle;

/**
 * A whole day alone by keyboard in a real window, at every level: the commit, what a friend does
 * beforehand, eight stints with a value outside its tolerance, a wrong fit or an open cover, a void
 * before and one after the next is shown, the end of the day, and the review with the guess and the
 * masks. It keeps pictures of each moment and says what cannot be reached, and where a lap cannot
 * be started without scrolling. A program: DEVELOPERS.md has the command.
 */
public final class DayAloneWalk {
  private static final String PIN = "4711";
  private static final int STINTS = 8;
  private static final Map<String, String> LEVELS = levels();

  private final String name;
  private final boolean friend;
  private final boolean prepared;
  private final boolean masked;
  private final double scale;
  private final String draft;
  private final SetClock clock = new SetClock(Instant.parse("2026-11-13T17:00:00Z"));
  private final Shell shell = new Shell();
  private final Look look = new Look();
  private final Stage stage = new Stage();
  private final Desk desk;
  private final Scene scene;
  private final Keyboard keys;
  private final List<String> wrong = new ArrayList<>();
  private int moments;
  private String phrase = "";
  private AloneByKeys rider;

  private static Map<String, String> levels() {
    Map<String, String> levels = new LinkedHashMap<>();
    levels.put("open", "level: open");
    levels.put("drawn", "level: drawn");
    levels.put("friend", "level: masked, prepared_by: M. Oster");
    levels.put("marks", "level: masked, prepared_by: M. Oster, masks: marks");
    levels.put("prepared", "level: prepared, prepared_by: M. Oster, prepared_on: 2026-11-13");
    return levels;
  }

  private DayAloneWalk(String level, double scale, Theme theme) throws Exception {
    this.scale = scale;
    friend = level.equals("friend");
    prepared = level.equals("prepared");
    masked = friend || level.equals("marks");
    name =
        String.format(
            Locale.ROOT, "%s-%.0f-%s", level, 100 * scale, theme.name().toLowerCase(Locale.ROOT));
    Path file = Files.createTempDirectory("walk").resolve("alone.blindlap");
    Random invented = new Random(7);
    SecureBytes ids =
        count -> {
          byte[] bytes = new byte[count];
          invented.nextBytes(bytes);
          return bytes;
        };
    desk =
        new Desk(
            SqliteNotebook.open(file, ids.exactly(16), clock.instant()),
            clock,
            FixedSources.order(2),
            new SealParameters(1),
            ids);
    look.themeProperty().set(theme);
    look.textScaleProperty().set(scale);
    SafeKeeping safe = new SafeKeeping(new SqliteFiles(clock, () -> new byte[16]), file);
    Pages pages =
        new Pages(
            desk,
            shell,
            look,
            Background.immediate(),
            clock::nanos,
            new KeepingModel(desk.exchange(safe), safe, Background.immediate()),
            Optional.empty(),
            Optional.empty());
    scene = new Scene(new ShellView(look, shell, pages.makers(), List.of("alone")), 1366, 768);
    look.dress(scene);
    stage.initStyle(StageStyle.UNDECORATED);
    stage.setScene(scene);
    stage.setX(0);
    stage.setY(0);
    stage.show();
    stage.requestFocus();
    keys = new Keyboard(scene);
    String plan =
        TestDay.at(LEVELS.get(level))
            .replace("high_words: unbearable}", "high_words: unbearable, assessor: N. Falk}");
    draft = desk.planning().freshName();
    desk.planning().keep(draft, desk.planning().importText(plan).fields());
  }

  private void picture(String moment) {
    Window.run(
        () ->
            Window.picture(
                scene, String.format("%s-%02d-%s", name, moments++, moment.replace(' ', '-'))));
  }

  private void look(String moment) {
    picture(moment);
    Window.run(
        () ->
            Reachable.wrong(scene).forEach(each -> wrong.add(name + ", " + moment + ": " + each)));
  }

  private void heard() {
    Window.run(() -> clock.move(Deaf.FOR));
  }

  private void press(String words) {
    heard();
    keys.choose(words);
    heard();
  }

  private void walk() {
    commit();
    beforehand();
    Window.run(() -> clock.set(Duration.ofHours(15)));
    Window.run(() -> shell.open(Shell.Page.RIDE, id()));
    rider = new AloneByKeys(desk, id(), keys, clock::move);
    heard();
    for (int stint = 0; stint <= STINTS; stint++) {
      stint(stint);
    }
    endOfDay();
    review();
  }

  private SessionId id() {
    return desk.sessionList().find("").get(0).id();
  }

  private SessionState state() {
    return desk.sessions().state(id()).orElseThrow();
  }

  /** The commit by the buttons of the Plan page. */
  private void commit() {
    Window.run(() -> shell.openDraft(draft));
    focus("Commit this plan");
    picture("plan to commit");
    keys.press(KeyCode.SPACE);
    heard();
    if (prepared) {
      look("hand over");
      keys.goTo("PIN of these pages");
      keys.type(PIN);
      keys.press(KeyCode.ENTER);
      heard();
    }
    look("sign");
    Window.run(() -> scene.getRoot().lookup("#signed").requestFocus()); // named by its label
    keys.type("R. Lind");
    look("signed");
    if (!prepared) {
      press("Draw the order and cover it");
      look("covered");
      press("Done");
      return;
    }
    press("Sign, and show the friend's phrase");
    phrase = shown("#phrase");
    look("phrase");
    press("I have written it down");
    look("words");
    keys.goTo("Type the");
    keys.type(asked(phrase));
    press("Draw the order and seal it");
    look("sealed");
    press("Go on to the packing sheet");
    look("sheet");
    press("Done: give the machine back");
  }

  private void focus(String words) {
    Window.run(
        () ->
            scene.getRoot().lookupAll(".button").stream()
                .filter(n -> n instanceof ButtonBase b && b.getText().startsWith(words))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no button " + words))
                .requestFocus());
    keys.goTo(words);
  }

  private String shown(String label) {
    return Window.call(() -> ((Label) scene.getRoot().lookup(label)).getText());
  }

  /** The words of a phrase that are asked for. */
  private String asked(String of) {
    List<String> nth = List.of("1st", "2nd", "3rd", "4th", "5th", "6th");
    String question = keys.here();
    String[] words = of.split(" ");
    List<String> typed = new ArrayList<>();
    for (int i = 0; i < words.length; i++) {
      if (question.contains(nth.get(i))) {
        typed.add(words[i]);
      }
    }
    return String.join(" ", typed);
  }

  /** What a friend does beforehand; where nobody has anything to do the page says so. */
  private void beforehand() {
    Window.run(() -> shell.open(Shell.Page.SWAP, id()));
    heard();
    look("friend");
    if (!friend && !prepared) {
      return;
    }
    keys.goTo("Day PIN");
    keys.type(PIN);
    keys.press(KeyCode.ENTER);
    heard();
    look("friend opens");
    if (friend) {
      mask();
    } else {
      units();
    }
    look("friend done");
  }

  private void mask() {
    press("Draw it by lot");
    phrase = shown("#phrase");
    look("labels and phrase");
    press("Labels are on");
    keys.goTo("Type the");
    look("two words");
    keys.type(asked(phrase));
    press("Seal it");
  }

  private void units() {
    keys.goTo("Phrase of the friend");
    keys.type(phrase);
    keys.press(KeyCode.ENTER);
    heard();
    look("units");
    HelperDays.Opened opened = desk.helperDays().open(state(), phrase);
    List<Setting> settings =
        new PreparedUnits(((HelperDays.Opened.Day) opened).day())
            .units().stream().flatMap(unit -> unit.settings().stream()).toList();
    List<String> fields =
        Window.call(
            () ->
                scene.getRoot().lookupAll(".text-field").stream()
                    .filter(TextField.class::isInstance)
                    .map(Node::getAccessibleText)
                    .filter(text -> text != null && text.endsWith(", measured"))
                    .toList());
    for (int i = 0; i < fields.size(); i++) {
      keys.goTo(fields.get(i));
      keys.type(settings.get(i).value());
    }
    look("units measured");
    press("Record all units");
  }

  private void stint(int stint) {
    if (!prepared && !LEVELS.get("open").equals("level: " + name.split("-")[0])) {
      heard();
      if (stint < 3) {
        look("hidden " + stint);
      }
      rider.show();
    }
    if (stint < 3) {
      look("mount " + stint);
    }
    if (stint == 7) {
      voidAfter(6);
    }
    mount(stint);
    if (stint < 3) {
      look("ready " + stint);
      gate(stint);
    }
    rider.ride();
    if (stint == 0) {
      look("warm-up");
      press("Warm-up lap ridden");
      return;
    }
    if (stint < 2) {
      look("sheet");
    }
    rider.lap(stint);
    if (stint < 2) {
      look("full sheet");
    }
    rider.done(stint);
    if (stint < 2) {
      look("done");
    }
    if (stint == 5) {
      rider.voidLap(stint, this::look);
    }
    press(stint == STINTS ? "On to the end of the day" : "On to the next lap");
  }

  /** At usual text a lap starts without scrolling. */
  private void gate(int stint) {
    Window.run(
        () ->
            scene.getRoot().lookupAll(".button").stream()
                .filter(n -> n instanceof ButtonBase b && b.getText().startsWith("Safe: "))
                .forEach(
                    n -> {
                      double below = n.localToScene(n.getLayoutBounds()).getMaxY();
                      if (scale == 1 && below > scene.getHeight()) {
                        wrong.add(name + ", stint " + stint + ": the gate ends at " + below);
                      }
                    }));
  }

  private void mount(int stint) {
    List<Setting> settings = rider.settings(stint);
    if (prepared) {
      keys.choose(AloneWords.say("unit.whole") + ": " + AloneWords.say(stint == 3 ? "no" : "yes"));
      if (stint == 3) {
        keys.goTo(AloneWords.say("unit.words"));
        keys.type("tape torn");
        look("cover torn");
      }
    } else if (stint == 4) {
      settings = wrongFit(stint);
    }
    rider.measure(settings);
    if (stint == 2) {
      outside(settings);
    }
    rider.safe(stint);
  }

  private void outside(List<Setting> settings) {
    if (settings.stream().noneMatch(setting -> setting.name().equals("sag"))) {
      return; // below a cover nothing of it can be measured
    }
    keys.goTo("sag, measured");
    keys.press(KeyCode.CONTROL, KeyCode.A);
    rider.measure("sag", "29");
    look("outside");
    keys.goTo("sag, reason");
    keys.type("spacer lost");
    keys.press(KeyCode.ENTER);
    look("outside with its reason");
  }

  private List<Setting> wrongFit(int stint) {
    AloneDay day = desk.aloneDays().day(state()).orElseThrow();
    Integer shown = day.work(state(), stint).setup();
    int other = shown != null && shown == 0 ? 1 : 0;
    keys.goTo(AloneWords.say("fitted") + ": ");
    keys.press(other == 0 ? KeyCode.LEFT : KeyCode.RIGHT);
    keys.choose(AloneWords.say("fitted") + ": " + Labels.name(day.plan(), other));
    look("wrong fit");
    return day.settings(stint, other);
  }

  /** The next is shown already, and the lap before is called spoiled. */
  private void voidAfter(int stint) {
    press("Open lap " + stint + " again");
    look("opened again");
    rider.voidLap(stint, this::look);
    press("On to the next lap");
    look("back at the next");
  }

  private void endOfDay() {
    look("all ridden");
    press("Close the day");
    look("close asked");
    press("Close the day");
    look("closed");
    press("On to the review");
    look("review");
    top("review");
  }

  private void review() {
    press("Hand over to N. Falk: score by code");
    look("by code");
    keys.choose("Do you know which is which?: no");
    List<String> fields =
        Window.call(
            () ->
                scene.getRoot().lookupAll(".text-field").stream()
                    .map(Node::getAccessibleText)
                    .filter(text -> text != null && text.endsWith(", harshness at the hands"))
                    .toList());
    for (int i = 0; i < fields.size(); i++) {
      keys.goTo(fields.get(i));
      keys.type(String.valueOf(40 + i));
    }
    look("by code typed");
    press("Record what was scored");
    look("review scored");
    press("Close the review");
    look("close review asked");
    keys.goTo("Close the review"); // it was not there a moment ago: one more frame before a key
    press("Close the review");
    look("review closed");
    if (masked) {
      keys.goTo("Which is which?");
      look("guess");
      keys.press(KeyCode.DOWN);
      press("This is my guess");
    }
    if (prepared) {
      keys.goTo("Friend's phrase");
      keys.type(phrase);
      look("to open");
      press("Open the key");
    } else {
      keys.goTo("Open the whole order");
      look("to open");
      keys.press(KeyCode.SPACE);
    }
    heard();
    top("finding");
    if (masked) {
      read();
      top("finding after reading");
    }
    if (!state().unsealed()) {
      throw new AssertionError(name + ": not opened");
    }
  }

  private void read() {
    if (friend) {
      keys.goTo("Phrase of the friend");
      look("to read");
      keys.type(phrase);
      press("Read the labels");
    } else {
      keys.goTo("Which was which?");
      keys.press(KeyCode.DOWN);
      look("to read");
      press("This is what the marks say");
    }
    if (state().masksRead().isEmpty()) {
      throw new AssertionError(name + ": the labels are not read");
    }
  }

  /** What stands above and what stands below of a page that scrolls. */
  private void top(String moment) {
    for (int part = 0; part <= 4; part++) {
      double at = part / 4.0;
      Window.run(
          () ->
              scene.getRoot().lookupAll(".scroll-pane").stream()
                  .map(ScrollPane.class::cast)
                  .forEach(pane -> pane.setVvalue(at)));
      look(moment + " " + part);
    }
  }

  /**
   * Walks; the pictures go where the property blindlap.pictures says.
   *
   * @param arguments nothing for all walks, else a pattern of those that are walked, such as {@code
   *     drawn-100-.*}
   */
  public static void main(String[] arguments) throws Exception {
    Window.start();
    Window.run(Fonts::load);
    String pattern = arguments.length == 0 ? ".*" : arguments[0];
    List<String> wrong = new ArrayList<>();
    for (String level : LEVELS.keySet()) {
      for (double scale : new double[] {1, 2}) {
        Theme theme = scale == 1 ? Theme.PAPER : Theme.SUNLIGHT;
        String name = String.format(Locale.ROOT, "%s-%.0f", level, 100 * scale);
        if (name.matches(pattern)) {
          wrong.addAll(walk(level, scale, theme));
        }
      }
    }
    wrong.forEach(System.out::println);
    Platform.exit();
    System.exit(wrong.isEmpty() ? 0 : 1);
  }

  private static List<String> walk(String level, double scale, Theme theme) {
    DayAloneWalk walk = Window.call(() -> new DayAloneWalk(level, scale, theme));
    try {
      walk.walk();
    } catch (AssertionError | RuntimeException e) {
      walk.look("failed");
      walk.wrong.add(walk.name + " stopped: " + e);
      e.printStackTrace();
    }
    System.out.println(walk.name + ": " + walk.moments + " moments, " + walk.keys.struck());
    Window.run(walk.stage::close);
    walk.desk.close();
    return walk.wrong;
  }
}
