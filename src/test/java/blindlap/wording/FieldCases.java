package blindlap.wording;

import blindlap.plan.Measure;
import blindlap.review.Days;
import blindlap.review.FieldDays;
import blindlap.review.FieldFinding;
import blindlap.stats.compare.Scale;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;

/** Invented fields for every sentence of a field: every way of saying a difference, every state. */
final class FieldCases {
  private static final List<String> RING = List.of("KL", "LM", "KM", "MN");
  private static final Map<Character, Double> LEADS = Map.of('L', -2.0, 'M', 0.1, 'N', 2.4);

  private FieldCases() {}

  /** A measure of a kind, with its usual base and size. */
  static Measure measure(Measure.Kind kind, Measure.Better better, Scale scale) {
    String name =
        switch (kind) {
          case LAP_TIME -> "lap time";
          case SECTOR_TIME -> "top half";
          case LINE_SCALE, CATEGORY_SCALE -> "harshness";
          case COUNT -> "missed lines";
        };
    return Days.measure(name, kind, Measure.Role.PRIMARY, better, "0.5", scale);
  }

  static double base(Measure.Kind kind) {
    return switch (kind) {
      case LAP_TIME, SECTOR_TIME -> 90;
      case LINE_SCALE -> 50;
      case CATEGORY_SCALE -> 5;
      case COUNT -> 6;
    };
  }

  private static FieldFinding field(
      Measure measure,
      List<String> days,
      Map<Character, Double> leads,
      Map<Character, Double> changed) {
    return FieldDays.finding(
        new FieldDays.Truth(measure, days, base(measure.kind()), leads, changed, 0.5),
        new Random(11));
  }

  static Map<String, FieldFinding> all() {
    Map<String, FieldFinding> cases = new LinkedHashMap<>();
    for (Measure.Kind kind : Measure.Kind.values()) {
      for (Measure.Better better : Measure.Better.values()) {
        String title =
            kind.name().toLowerCase(Locale.ROOT).replace('_', ' ')
                + ", better "
                + better.name().toLowerCase(Locale.ROOT);
        cases.put(title, field(measure(kind, better, Scale.RAW), RING, LEADS, Map.of()));
        if (kind.timed()) {
          cases.put(
              title + ", ratio", field(measure(kind, better, Scale.RATIO), RING, LEADS, Map.of()));
        }
      }
    }
    Measure time = measure(Measure.Kind.LAP_TIME, Measure.Better.LOWER, Scale.RAW);
    cases.put("a star", field(time, List.of("KL", "KM"), LEADS, Map.of()));
    cases.put("nothing told apart", field(time, List.of("KM", "KM", "KO"), LEADS, Map.of()));
    cases.put("a day of three setups", field(time, List.of("KLM", "KL"), LEADS, Map.of()));
    cases.put("two pieces", field(time, List.of("KL", "NO"), LEADS, Map.of()));
    cases.put(
        "days that do not agree",
        field(time, List.of("KN", "KL", "KM", "LM"), LEADS, Map.of('M', 4.0)));
    cases.put("one day", field(time, List.of("KL"), LEADS, Map.of()));
    cases.put("no day", field(time, List.of(), LEADS, Map.of()));
    return cases;
  }

  static void write(StringBuilder out) {
    out.append("\n## Fields\n\n");
    out.append("Days of K and L, L and M, K and M, M and N unless said otherwise;");
    out.append(" the days and sessions that follow are left out.\n\n");
    out.append("| field | sentences |\n| --- | --- |\n");
    all()
        .forEach(
            (title, finding) -> {
              FieldWords words = new FieldWords(finding);
              List<String> lines = new ArrayList<>(words.lines());
              lines.removeAll(words.days().stream().map(day -> "  " + day).toList());
              lines.remove(FieldWords.say("days.title"));
              out.append("| ").append(title).append(" | ");
              out.append(String.join("<br>", lines.stream().map(String::strip).toList()));
              out.append(" |\n");
            });
  }

  /** Every sentence by its name. */
  static void names(StringBuilder out) {
    bundle(out, "Every other sentence of a field", "field");
    bundle(out, "Every sentence of a profile", "profiles");
  }

  private static void bundle(StringBuilder out, String title, String name) {
    Words words = Words.of(name);
    out.append("\n## ").append(title).append("\n\n| name | sentence |\n| --- | --- |\n");
    words.keys().stream()
        .sorted()
        .forEach(
            key ->
                out.append("| ")
                    .append(key)
                    .append(" | ")
                    .append(words.say(key).replace("|", "\\|").strip())
                    .append(" |\n"));
  }
}
