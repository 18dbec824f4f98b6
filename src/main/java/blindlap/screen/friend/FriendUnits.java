package blindlap.screen.friend;

import blindlap.desk.HelperDay;
import blindlap.desk.MeasuredValues;
import blindlap.desk.PreparedUnits;
import blindlap.fault.Problem;
import blindlap.plan.Setting;
import blindlap.session.HelperEntry;
import blindlap.wording.FriendWords;
import blindlap.wording.SwapWords;
import blindlap.wording.day.Problems;
import java.util.ArrayList;
import java.util.List;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import org.jspecify.annotations.Nullable;

/** Units that a friend prepares: each measured once, all recorded at once. */
public final class FriendUnits {
  private final Writer writer;
  private final List<HelperEntry> entries = new ArrayList<>();
  private final ReadOnlyIntegerWrapper shown = new ReadOnlyIntegerWrapper();
  private @Nullable PreparedUnits units;
  private List<PreparedUnits.Unit> all = List.of();
  private List<String> names = List.of();

  FriendUnits(Writer writer) {
    this.writer = writer;
  }

  /** Another number whenever other units are to be shown. */
  public ReadOnlyIntegerProperty shownProperty() {
    return shown.getReadOnlyProperty();
  }

  /** True once the friend's phrase has opened them. */
  public boolean open() {
    return units != null;
  }

  void begin(HelperDay day) {
    PreparedUnits opened = new PreparedUnits(day);
    units = opened;
    all = opened.units();
    names = day.plan().setups().stream().map(setup -> setup.name()).toList();
    entries.clear();
    all.forEach(unit -> entries.add(opened.untouched(unit)));
    shown.set(shown.get() + 1);
  }

  void forget() {
    units = null;
    all = List.of();
    names = List.of();
    entries.clear();
    shown.set(shown.get() + 1);
  }

  /** How many units there are. */
  public int count() {
    return all.size();
  }

  /** "Stint 3, code 412: Shock K". */
  public String title(int unit) {
    PreparedUnits.Unit now = all.get(unit);
    String name = names.get(now.setup());
    return now.stint() == 0
        ? FriendWords.say("unit.warm.up", name)
        : FriendWords.say("unit", now.stint(), now.code(), name);
  }

  /** Names of what is measured of a unit. */
  public List<String> settings(int unit) {
    return all.get(unit).settings().stream().map(Setting::name).toList();
  }

  /** The aim of a setting. */
  public String aim(int unit, int setting) {
    return SwapWords.aim(all.get(unit).settings().get(setting));
  }

  /** A value was measured. */
  public void measured(int unit, int setting, String typed) {
    List<Setting> settings = all.get(unit).settings();
    HelperEntry from = entries.get(unit);
    entries.set(
        unit, MeasuredValues.judged(settings, from, settings.get(setting).name(), typed.strip()));
  }

  /** By how much and which way it lies outside its tolerance; empty if it does not. */
  public String outside(int unit, int setting) {
    Setting now = all.get(unit).settings().get(setting);
    return entries
        .get(unit)
        .outside(now.name())
        .map(o -> SwapWords.outside(now, o.by()))
        .orElse("");
  }

  /** Why a setting outside its tolerance is packed all the same. */
  public void accept(int unit, int setting, String reason) {
    String name = all.get(unit).settings().get(setting).name();
    entries.set(unit, entries.get(unit).because(name, reason));
  }

  /** What is missing of all units, a sentence each; empty if they can be recorded. */
  public List<String> missing() {
    PreparedUnits now = units;
    List<String> missing = new ArrayList<>();
    for (int i = 0; now != null && i < entries.size(); i++) {
      List<Problem> problems = now.missing(entries.get(i));
      if (!problems.isEmpty()) {
        missing.add(title(i) + ": " + String.join(" ", Problems.sentences(problems)));
      }
    }
    return missing;
  }

  /** Records all of them at once. */
  public void write() {
    PreparedUnits now = units;
    if (now != null) {
      List<HelperEntry> measured = List.copyOf(entries);
      writer.accept(() -> now.write(measured));
    }
  }

  /** Says nothing of what it holds. */
  @Override
  public String toString() {
    return "FriendUnits[]";
  }
}
