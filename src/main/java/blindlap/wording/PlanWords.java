package blindlap.wording;

import blindlap.plan.DeclaredNoise;
import blindlap.plan.Measure;
import blindlap.plan.NoiseKnown;
import blindlap.plan.Plan;
import blindlap.stats.compare.Scale;
import blindlap.wording.day.Words;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Words of the Plan page. */
public final class PlanWords {
  private static final Words WORDS = Words.of("plan");
  private static final DateTimeFormatter CLOCK =
      DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);
  private static final Pattern ITEM = Pattern.compile("([a-z_]+)\\[([0-9]+)\\]");

  private PlanWords() {}

  /** A sentence or label of the page. */
  public static String say(String key, Object... arguments) {
    return WORDS.say(key, arguments);
  }

  /** True if there is a sentence of this key. */
  public static boolean has(String key) {
    return WORDS.has(key);
  }

  /** The label of a field of a plan file. */
  public static String field(String name) {
    return WORDS.has("field." + name) ? WORDS.say("field." + name) : name.replace('_', ' ');
  }

  /** One line on what a field is for; empty if there is none. */
  public static String help(String name) {
    return WORDS.has("help." + name) ? WORDS.say("help." + name) : "";
  }

  /** An example of what is typed into a field, such as "such as 09:00"; empty if there is none. */
  public static String example(String name) {
    return WORDS.has("such." + name) ? WORDS.say("such." + name) : "";
  }

  /** "Saved 14:32:07". */
  public static String saved(ZonedDateTime at) {
    return WORDS.say("saved", CLOCK.format(at));
  }

  /** A place in the plan for people, with a colon after it; empty for the plan as a whole. */
  public static String place(String path) {
    return path.isEmpty() ? "" : placeOnly(path) + ": ";
  }

  /** A place in the plan for people. */
  public static String placeOnly(String path) {
    StringBuilder place = new StringBuilder();
    for (String part : path.split("\\.", -1)) {
      Matcher item = ITEM.matcher(part);
      if (!place.isEmpty()) {
        place.append(", ");
      }
      place.append(
          item.matches() ? field(item.group(1) + ".one") + " " + item.group(2) : field(part));
    }
    String text = place.toString();
    return text.isEmpty() ? "" : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }

  /** What a tester would call a draft: its setups, its trail and day, as far as typed. */
  public static String title(Map<String, ?> fields) {
    String setups = "";
    if (fields.get("setups") instanceof List<?> list) {
      setups =
          String.join(
              " against ",
              list.stream()
                  .map(s -> s instanceof Map<?, ?> m ? text(m.get("name")) : "")
                  .filter(n -> !n.isBlank())
                  .toList());
    }
    String what = setups.isBlank() ? WORDS.say("draft.untitled") : asked(fields, setups);
    String where = text(fields.get("trail"));
    String day = text(fields.get("day"));
    return what + (where.isBlank() ? "" : ", " + where) + (day.isBlank() ? "" : ", " + day);
  }

  /** Of a telling run the question, which its setups alone would not show. */
  private static String asked(Map<String, ?> fields, String setups) {
    if (!text(fields.get("kind")).strip().matches("(?i)telling[ _-]run")) {
      return setups;
    }
    Object one = fields.get("telling_run") instanceof Map<?, ?> run ? run.get("one_setting") : null;
    String setting = one instanceof Map<?, ?> map ? text(map.get("setting")) : "";
    String levels = one instanceof Map<?, ?> map ? text(map.get("levels")) : "";
    return setting.isBlank() || levels.isBlank()
        ? WORDS.say("draft.telling.title", setups)
        : WORDS.say("draft.telling.levels", setups, setting, levels);
  }

  /**
   * The noise that earlier days tell, and from which days; beside what was typed by hand it says
   * that this counts. Empty where the plan says nothing that could be compared.
   *
   * @param told by earlier days
   */
  public static Optional<String> noise(Plan plan, DeclaredNoise told) {
    DeclaredNoise used = plan.noise();
    Measure primary = plan.primary().orElse(null);
    if (used == null || primary == null) {
      return Optional.empty();
    }
    String known = NoiseWords.declared(primary, told);
    return Optional.of(
        used.equals(told)
            ? say("noise.known", known, told.source()) + otherLaps(plan, primary, told)
            : say("noise.typed", NoiseWords.declared(primary, used), known, told.source()));
  }

  /** What it is for stints as planned, where the days had another number of scored laps. */
  private static String otherLaps(Plan plan, Measure primary, DeclaredNoise told) {
    int planned = plan.laps().scored();
    int known = told.knownLaps(planned);
    NoiseKnown noise = NoiseKnown.of(told, primary, planned);
    return known == planned && !noise.split()
        ? ""
        : " " + say("noise.laps", known, planned, NoiseWords.between(primary, noise));
  }

  /**
   * Which session of its series a plan is.
   *
   * @param number of the next session, from 1; empty if none of it is committed
   * @param declared number of sessions, as typed; may be empty
   */
  public static String seriesPlace(String series, Optional<Integer> number, String declared) {
    return declared.isEmpty()
        ? say("series.number.open", number.orElse(1), series)
        : say("series.number", number.orElse(1), declared, series);
  }

  /**
   * Which two words of a helper phrase are to be typed back.
   *
   * @param first place of the first, from 1
   * @param second place of the second
   */
  public static String askedWords(int first, int second) {
    return say("commit.words.ask", nth(first), nth(second));
  }

  /** Which of the words that were typed back differ, by their places from 1: one or two. */
  public static String wrongWords(List<Integer> places) {
    return places.size() == 1
        ? say("commit.words.one", nth(places.get(0)))
        : say("commit.words.both", nth(places.get(0)), nth(places.get(1)));
  }

  private static String nth(int place) {
    return say("nth." + place);
  }

  private static String text(@Nullable Object value) {
    return value == null ? "" : String.valueOf(value);
  }

  /** The noise that a plan made from an earlier one takes from unsealed days. */
  public static String noiseTaken(Measure primary, DeclaredNoise noise) {
    return say(
        "like.noise",
        noise.sd().stripTrailingZeros().toPlainString(),
        primary.scale() == Scale.RATIO ? "%" : primary.unit(),
        noise.source());
  }
}
