package blindlap.exchange;

import blindlap.fault.Problem;
import blindlap.plan.BlindLevel;
import blindlap.plan.Plan;
import blindlap.plan.PlanFault;
import blindlap.plan.Protocol;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/** The protocols that plan files may name, read from protocol files (docs/plan-file.md). */
public final class Protocols {
  /** No protocol at all, for stored plans, which carry their own. */
  public static final Protocols NONE = new Protocols(List.of());

  private static final Map<Integer, String> LEVELS =
      Map.of(3, "three-levels", 4, "four-levels", 5, "five-levels", 6, "six-levels");

  private final Map<String, Protocol> byName = new LinkedHashMap<>();

  /** A collection of protocols; of two with one name the later counts. */
  public Protocols(Collection<Protocol> protocols) {
    protocols.forEach(p -> byName.put(p.name(), p));
  }

  /** The protocol of a name. */
  public Optional<Protocol> named(String name) {
    return Optional.ofNullable(byName.get(name));
  }

  /** All names in order. */
  public List<String> names() {
    return List.copyOf(byName.keySet());
  }

  /** All protocols in order. */
  public Collection<Protocol> all() {
    return List.copyOf(byName.values());
  }

  /**
   * The protocol that is taken when a plan names none: where each setup is shown only when it is to
   * be mounted, one whose blocks do not tell what comes.
   */
  static String usualFor(Plan.Kind kind, int setups, BlindLevel level) {
    if (kind == Plan.Kind.STEPS_DAY) {
      // A day of too few or too many levels is refused for that, not for its rule.
      return Objects.requireNonNull(LEVELS.getOrDefault(setups, "three-levels"));
    }
    return switch (setups) {
      case 3 -> "three-setups";
      case 4 -> "four-setups";
      default -> level == BlindLevel.DRAWN ? "whole-day" : "blocks-of-four";
    };
  }

  /**
   * Reads one protocol file.
   *
   * @param text its text
   * @param file its name, for messages
   * @throws IllegalArgumentException with the problems if it is wrong
   */
  public static Protocol read(String text, String file) {
    List<Problem> problems = new ArrayList<>();
    try {
      FieldReader reader = new FieldReader("", Located.read(text), problems);
      Protocol protocol = fields(reader);
      reader.end();
      if (problems.isEmpty()) {
        return protocol;
      }
    } catch (Located.Unreadable e) {
      problems.add(
          Problem.of(
              PlanFault.NOT_READABLE, "line " + e.line + ", column " + e.column, e.getMessage()));
    }
    throw new IllegalArgumentException("protocol file " + file + ": " + problems);
  }

  static Protocol fields(FieldReader f) {
    return new Protocol(
        f.requiredText("name"),
        f.text("title", ""),
        f.text("when", ""),
        f.integers("setups"),
        f.integer("block"),
        f.texts("patterns"),
        f.integer("max_run"),
        f.share("min_trend_efficiency"),
        f.integer("usual_stints", 16),
        f.bool("levels", false));
  }
}
