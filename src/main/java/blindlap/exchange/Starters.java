package blindlap.exchange;

import blindlap.fault.Problem;
import blindlap.plan.Setting;
import blindlap.plan.Starter;
import java.util.ArrayList;
import java.util.List;

/** Reads the starting sets that come with the program. */
public final class Starters {
  private Starters() {}

  /**
   * Reads a file of starting sets.
   *
   * @throws IllegalArgumentException with the problems if it is wrong
   */
  public static Starter read(String text) {
    List<Problem> problems = new ArrayList<>();
    try {
      FieldReader fields = new FieldReader("", Located.read(text), problems);
      Starter starter =
          new Starter(
              fields.objects("components", Starters::component),
              fields.objects("measures", PlanReader::measure));
      fields.end();
      if (problems.isEmpty()) {
        return starter;
      }
    } catch (Located.Unreadable e) {
      throw new IllegalArgumentException("starting sets, line " + e.line + ": " + e.getMessage());
    }
    throw new IllegalArgumentException("starting sets: " + problems);
  }

  private static Starter.Component component(FieldReader f) {
    return new Starter.Component(
        f.requiredText("name"), f.objects("settings", Starters::setting), f.texts("cautions"));
  }

  private static Setting setting(FieldReader f) {
    return SetupReader.settingWithValue(f, "");
  }
}
