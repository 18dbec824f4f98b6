package blindlap.exchange;

import blindlap.compute.StrictJson;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.plan.Rule;
import blindlap.plan.StepsDay;
import blindlap.session.SessionState;
import blindlap.session.day.LapState;
import blindlap.stats.compare.StintSummary;
import blindlap.wording.day.Words;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** The tables of a data package with their dictionary, filled one after the other. */
final class PackageTables {
  /**
   * A column.
   *
   * @param type of the Table Schema: integer, number, string, boolean
   * @param unit empty where there is none
   * @param description what it holds
   */
  record Column(String name, String type, String unit, String description) {
    static Column of(String name, String type, String description) {
      return new Column(name, type, "", description);
    }
  }

  private static final Words WORDS = Words.of("package");

  private final List<String> said = new ArrayList<>();
  private final Map<String, byte[]> files = new LinkedHashMap<>();
  private final ArrayNode resources = StrictJson.NODES.arrayNode();

  void table(String name, List<Column> columns, List<List<String>> rows) {
    String path = name + ".csv";
    files.put(
        path,
        CsvText.write(
                columns.stream().map(c -> TextCells.written(c.name())).toList(),
                cells(columns, rows))
            .getBytes(StandardCharsets.UTF_8));
    ObjectNode resource = resources.addObject();
    resource.put("name", name);
    resource.put("path", path);
    resource.put("profile", "tabular-data-resource");
    resource.put("format", "csv");
    resource.put("mediatype", "text/csv");
    resource.put("encoding", "utf-8");
    ObjectNode schema = resource.putObject("schema");
    ArrayNode fields = schema.putArray("fields");
    for (Column column : columns) {
      ObjectNode field = fields.addObject();
      field.put("name", column.name());
      field.put("type", column.type());
      field.put("description", column.description());
      if (!column.unit().isEmpty()) {
        field.put("unit", column.unit());
      }
    }
    schema.putArray("missingValues").add("");
  }

  /** Texts are written for programs that would take some of them for a formula. */
  private static List<List<String>> cells(List<Column> columns, List<List<String>> rows) {
    List<List<String>> cells = new ArrayList<>();
    for (List<String> row : rows) {
      List<String> written = new ArrayList<>();
      for (int c = 0; c < row.size(); c++) {
        boolean text = columns.get(c).type().equals("string");
        written.add(text ? TextCells.written(row.get(c)) : row.get(c));
      }
      cells.add(written);
    }
    return cells;
  }

  void json(String name, String text) {
    files.put(name + ".json", text.getBytes(StandardCharsets.UTF_8));
    ObjectNode resource = resources.addObject();
    resource.put("name", name);
    resource.put("path", name + ".json");
    resource.put("format", "json");
    resource.put("mediatype", "application/json");
    resource.put("encoding", "utf-8");
  }

  /** The page for people: paragraphs, empty ones left out; a line for every file follows. */
  void readme(String... paragraphs) {
    java.util.Arrays.stream(paragraphs).filter(p -> !p.isBlank()).forEach(said::add);
  }

  private void readme() {
    List<String> lines = new ArrayList<>(List.of(line("README.md", "readme")));
    for (JsonNode resource : resources) {
      String path = resource.path("path").asText();
      // A session of a series has its own package, whose own page has its lines.
      lines.add(
          line(path, path.contains("/") ? "session_package" : resource.path("name").asText()));
    }
    lines.add(line(PackageProof.DESCRIPTOR, "descriptor"));
    List<String> all = new ArrayList<>(said);
    all.add(WORDS.say("files"));
    all.add(String.join("\n", lines.stream().sorted().toList()));
    text("readme", "README.md", "md", "text/markdown", String.join("\n\n", all) + "\n");
  }

  private static String line(String path, String name) {
    return WORDS.say("file.line", path, WORDS.say("file." + name));
  }

  /** The session itself, as its file. */
  void session(String text) {
    text("session", PackageProof.SESSION, "txt", "text/plain", text);
  }

  /** A file beside the tables, as it is. */
  void text(String name, String path, String format, String type, String text) {
    file(name, path, format, type, text.getBytes(StandardCharsets.UTF_8));
  }

  /** The same in bytes. */
  void file(String name, String path, String format, String type, byte[] bytes) {
    files.put(path, bytes);
    ObjectNode resource = resources.addObject();
    resource.put("name", name);
    resource.put("path", path);
    resource.put("format", format);
    resource.put("mediatype", type);
    resource.put("encoding", "utf-8");
  }

  /** All files, the description first. */
  Map<String, byte[]> files(String name, String title, String description, SessionState state) {
    session(SessionFile.text(state.id(), state.entries()));
    return files(name, title, description, root -> PackageProof.write(root, state));
  }

  /** The same for what is no single session: with a proof of its own. */
  Map<String, byte[]> files(
      String name, String title, String description, Consumer<ObjectNode> proof) {
    readme();
    for (JsonNode resource : resources) {
      byte[] file = Objects.requireNonNull(files.get(resource.path("path").asText()));
      ((ObjectNode) resource).put("bytes", file.length).put("hash", PackageProof.hash(file));
    }
    ObjectNode root = StrictJson.NODES.objectNode();
    root.put("profile", "data-package");
    root.put("name", name);
    root.put("title", title);
    root.put("description", description);
    root.set("resources", resources);
    proof.accept(root);
    Map<String, byte[]> all = new LinkedHashMap<>();
    all.put("datapackage.json", StrictJson.print(root).getBytes(StandardCharsets.UTF_8));
    all.putAll(files);
    return all;
  }

  private static final List<Column> MEASURES =
      List.of(
          Column.of("measure", "string", "name of the measure"),
          Column.of("kind", "string", "lap time, sector time, line scale, category scale, count"),
          Column.of("unit", "string", "unit of its values"),
          Column.of("low_words", "string", "words at the low end of a scale"),
          Column.of("high_words", "string", "words at the high end of a scale"),
          Column.of("role", "string", "primary, secondary, watch for harm"),
          Column.of("better", "string", "lower, higher, neither"),
          Column.of(
              "worthwhile", "number", "smallest difference that matters, in the unit or per cent"),
          Column.of("drift", "string", "what is removed: none, line, curve"),
          Column.of("scale", "string", "raw, or ratio (natural logarithms)"));

  private static final Column SUMMARY =
      Column.of(
          "summary",
          "string",
          "how the scored laps of a stint become its value: mean, or median (of all of them)");

  private static List<Column> with(List<Column> columns, Column more) {
    List<Column> all = new ArrayList<>(columns);
    all.add(more);
    return all;
  }

  void measures(Plan plan) {
    // Only where one is not usual, so that packages from before it existed are not called altered.
    boolean summaries = plan.measures().stream().anyMatch(m -> m.summary() != StintSummary.MEAN);
    List<List<String>> rows = new ArrayList<>();
    for (Measure m : plan.measures()) {
      List<String> row = new ArrayList<>();
      row.add(m.name());
      row.add(PlanJson.word(m.kind()));
      row.add(m.unit());
      row.add(m.lowWords());
      row.add(m.highWords());
      row.add(PlanJson.word(m.role()));
      row.add(PlanJson.word(m.better()));
      row.add(m.worthwhile() == null ? "" : m.worthwhile().toPlainString());
      row.add(m.drift().text());
      row.add(m.scale().text());
      if (summaries) {
        row.add(m.summary().text());
      }
      rows.add(row);
    }
    table("measures", summaries ? with(MEASURES, SUMMARY) : MEASURES, rows);
  }

  void rule(Rule rule) {
    if (rule.trials()) {
      trials(rule);
      return;
    }
    table(
        "rule",
        List.of(
            Column.of("setups", "integer", "number of setups"),
            Column.of("stints", "integer", "number of stints"),
            Column.of(
                "block", "integer", "stints in a block, which holds every setup equally often"),
            Column.of("patterns", "string", "sequences a block is restricted to, parted by spaces"),
            Column.of("max_run", "integer", "no setup more often than this in a row"),
            Column.of("min_trend_efficiency", "number", "least share left after a straight trend")),
        List.of(
            List.of(
                String.valueOf(rule.setups()),
                String.valueOf(rule.stints()),
                String.valueOf(rule.block()),
                String.join(" ", rule.patterns()),
                Objects.requireNonNullElse(rule.maxRun(), "").toString(),
                Objects.requireNonNullElse(rule.minTrendEfficiency(), "").toString())));
  }

  /** Every lap of a trial is a stint, and every trial is drawn for itself. */
  private void trials(Rule rule) {
    table(
        "rule",
        List.of(
            Column.of("setups", "integer", "number of setups"),
            Column.of("stints", "integer", "number of stints, one for every lap of a trial"),
            Column.of("trial", "integer", "laps of a trial, each trial drawn on its own"),
            Column.of("sequences", "string", "its sequences, equally likely, parted by spaces")),
        List.of(
            List.of(
                String.valueOf(rule.setups()),
                String.valueOf(rule.stints()),
                String.valueOf(rule.block()),
                String.join(" ", rule.patterns()))));
  }

  /** The levels of one setting, by the letters of the order; no table of other days. */
  void levels(Plan plan) {
    StepsDay steps = plan.oneSetting();
    if (steps == null) {
      return;
    }
    List<BigDecimal> levels = plan.levels().orElseThrow();
    List<List<String>> rows = new ArrayList<>();
    for (int i = 0; i < levels.size(); i++) {
      String letter = String.valueOf((char) ('A' + i));
      rows.add(List.of(letter, levels.get(i).toPlainString()));
    }
    table(
        "levels",
        List.of(
            Column.of("setup", "string", "letter of the level in the order"),
            new Column("level", "number", steps.unit(), steps.setting())),
        rows);
  }

  /** Columns of a lap that no key is needed for. */
  static List<Column> lapColumns(Plan plan) {
    List<Column> columns =
        new ArrayList<>(
            List.of(
                Column.of("lap", "integer", "number over the day, settling laps included"),
                Column.of("stint", "integer", "stint, from 1"),
                Column.of("lap_in_stint", "integer", "lap within the stint, from 1"),
                Column.of("scored", "boolean", "false for settling laps, never analysed"),
                Column.of("code", "integer", "code on everything the rider saw"),
                Column.of("ridden", "boolean", "true if the lap was ridden"),
                Column.of("void", "string", "event that made the lap void; empty if it counts"),
                Column.of("void_words", "string", "further words on the event"),
                Column.of(
                    "void_after_values_seen",
                    "boolean",
                    "true if decided once values could be seen"),
                Column.of("note", "string", "note of the rider")));
    plan.measures().forEach(m -> columns.add(new Column(m.name(), "number", m.unit(), m.name())));
    return columns;
  }

  static List<String> voided(java.util.Optional<LapState.Voided> voided) {
    return List.of(
        voided.map(v -> v.event().text()).orElse(""),
        voided.map(LapState.Voided::words).orElse(""),
        voided.map(v -> String.valueOf(v.afterValuesSeen())).orElse(""));
  }

  static List<String> values(Plan plan, Function<Measure, @Nullable BigDecimal> values) {
    return plan.measures().stream()
        .map(values)
        .map(v -> v == null ? "" : v.toPlainString())
        .toList();
  }
}
