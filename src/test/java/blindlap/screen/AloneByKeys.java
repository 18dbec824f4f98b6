package blindlap.screen;

import blindlap.desk.AloneDay;
import blindlap.desk.Desk;
import blindlap.plan.Measure;
import blindlap.plan.Setting;
import blindlap.screen.part.Deaf;
import blindlap.session.SafetyCheck;
import blindlap.session.SessionState;
import blindlap.session.day.LapId;
import blindlap.session.day.SessionId;
import blindlap.wording.AloneWords;
import blindlap.wording.SwapWords;
import java.time.Duration;
import java.util.List;
import java.util.function.Consumer;
import javafx.scene.input.KeyCode;

/** What someone who swaps alone does with a keyboard on the Ride page. */
final class AloneByKeys {
  private final Desk desk;
  private final SessionId id;
  private final Keyboard keys;
  private final Consumer<Duration> clock;

  /**
   * @param clock lets time go by
   */
  AloneByKeys(Desk desk, SessionId id, Keyboard keys, Consumer<Duration> clock) {
    this.desk = desk;
    this.id = id;
    this.keys = keys;
    this.clock = clock;
  }

  SessionState state() {
    return desk.sessions().state(id).orElseThrow();
  }

  /** The page hears nothing for a moment after it has changed. */
  void heard() {
    Window.run(() -> clock.accept(Deaf.FOR));
  }

  /** Asks for what is to be mounted next. */
  void show() {
    heard();
    keys.choose(AloneWords.say("show"));
    heard();
  }

  /** Measures every setting of what is mounted; one that is given is typed as it is. */
  void measure(List<Setting> settings) {
    for (Setting setting : settings) {
      measure(setting.name(), setting.value());
    }
  }

  void measure(String setting, String value) {
    keys.goTo(setting + ", measured");
    keys.type(value);
    keys.press(KeyCode.ENTER);
  }

  /** The settings of what was shown of a stint. */
  List<Setting> settings(int stint) {
    AloneDay day = desk.aloneDays().day(state()).orElseThrow();
    return day.work(state(), stint).settings();
  }

  /** Ticks the whole safety list, and answers whether the rider is fit. */
  void safe(int stint) {
    for (SafetyCheck check : SafetyCheck.values()) {
      keys.choose(SwapWords.say("check." + check));
    }
    if (stint > 0) {
      keys.choose(AloneWords.say("fit") + ": yes");
    }
    heard();
  }

  void ride() {
    heard();
    keys.choose("Safe: ride");
    heard();
  }

  /** A timed lap with every answer that is asked for; a guess where one is asked. */
  void lap(int stint) {
    heard();
    if (stint == 1) {
      keys.choose("Who holds the watch?: rider");
      heard();
    }
    keys.choose("lap time: Start");
    Window.run(() -> clock.accept(Duration.ofMillis(93_000 + 400L * (stint % 3))));
    keys.choose("lap time: Stop");
    for (Measure measure : state().plan().measures()) {
      if (measure.kind() == Measure.Kind.LINE_SCALE && measure.assessor() == null) {
        keys.goTo(measure.name());
        keys.press(KeyCode.RIGHT);
        keys.press(KeyCode.LEFT);
      }
    }
    keys.choose("trust: none (1) to complete (9): 6");
    keys.goTo("one more");
    keys.press(KeyCode.SPACE);
    if (state().plan().blinding().guesses()) {
      keys.choose("Your guess: Shock " + (stint % 2 == 0 ? "K" : "L"));
      keys.choose("How sure?: a hunch");
    }
  }

  void done(int stint) {
    heard();
    keys.choose("Done with lap " + stint);
    heard();
    if (!state().lap(new LapId(stint, 1)).orElseThrow().ridden()) {
      throw new AssertionError("lap " + stint + " is not done");
    }
  }

  /** Opens a lap again that is done, and voids it: someone was in the way. */
  void voidLap(int stint, Consumer<String> look) {
    heard();
    keys.choose("Something happened");
    heard();
    keys.choose("traffic");
    heard();
    look.accept("void " + stint + " asked");
    keys.choose("Void lap " + stint);
    heard();
    look.accept("void " + stint);
  }
}
