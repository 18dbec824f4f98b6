package blindlap.exchange;

import blindlap.compute.StrictJson;
import blindlap.exchange.PackageTables.Column;
import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.plan.Setup;
import blindlap.review.SeriesFinding;
import blindlap.wording.SeriesWords;
import blindlap.wording.day.Words;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * A series as a data package: a folder with the package of every session that it has numbers of, a
 * table that says what becomes of each session, its answer, and two scripts that compute every
 * number of the answer again from the tables of the sessions alone and name what differs.
 */
public final class SeriesPackage {
  /** Parts of the answer that hold numbers computed from the sessions. */
  private static final List<String> COMPUTED =
      List.of(
          "verdict",
          "pooled_sessions",
          "these_riders_on_these_days",
          "riders_in_general",
          "agreement",
          "riders",
          "other_measures");

  private static final Words WORDS = Words.of("package");

  private final SeriesFinding finding;
  private final Plan first;
  private final Map<String, Session> sessions;
  private final PackageTables tables = new PackageTables();

  /**
   * A session of the series.
   *
   * @param plan as it was committed
   * @param files its own data package; empty for one without numbers here
   */
  public record Session(Plan plan, Map<String, byte[]> files) {
    public Session {
      files = new LinkedHashMap<>(files);
    }
  }

  private SeriesPackage(SeriesFinding finding, Plan first, Map<String, Session> sessions) {
    this.finding = finding;
    this.first = first;
    this.sessions = sessions;
  }

  /**
   * The package of a series that is at its end.
   *
   * @param finding its answer
   * @param json the same as JSON
   * @param first the plan that declared it
   * @param sessions by session id, one for every part of the finding
   * @return contents by path inside the folder, the description first
   */
  public static Map<String, byte[]> of(
      SeriesFinding finding, String json, Plan first, Map<String, Session> sessions) {
    return new SeriesPackage(finding, first, sessions).files(json);
  }

  private Map<String, byte[]> files(String json) {
    sessions();
    tables.measures(first);
    tables.json("series", json);
    answer(StrictJson.parse(json));
    PackageScripts.series(tables);
    readme();
    Map<String, byte[]> inner = new LinkedHashMap<>();
    for (int i = 0; i < finding.parts().size(); i++) {
      String folder = folder(i).orElse("");
      of(i).files().forEach((name, bytes) -> inner.put(folder + "/" + name, bytes));
      byte[] described = of(i).files().get(PackageProof.DESCRIPTOR);
      if (described != null) {
        String path = folder + "/" + PackageProof.DESCRIPTOR;
        tables.file(folder, path, "json", "application/json", described);
      }
    }
    Map<String, byte[]> files =
        tables.files(
            "blindlap-series-"
                + finding.id().replaceAll("[^A-Za-z0-9]+", "-").toLowerCase(java.util.Locale.ROOT),
            title(),
            finding.question(),
            PackageProof::series);
    inner.forEach(files::putIfAbsent);
    return files;
  }

  private String title() {
    return WORDS.say("series.title", finding.id(), finding.question());
  }

  private Session of(int part) {
    return Objects.requireNonNull(sessions.get(finding.parts().get(part).session()));
  }

  private Optional<String> folder(int part) {
    return of(part).files().isEmpty() ? Optional.empty() : Optional.of("session-" + (part + 1));
  }

  private void sessions() {
    List<List<String>> rows = new ArrayList<>();
    for (int i = 0; i < finding.parts().size(); i++) {
      SeriesFinding.Part part = finding.parts().get(i);
      rows.add(
          List.of(
              String.valueOf(i + 1),
              part.session(),
              folder(i).orElse(""),
              part.day().toString(),
              part.rider(),
              PlanJson.word(part.fate()),
              part.why(),
              folder(i).isPresent() ? letters(of(i).plan()) : "",
              finding.measure().name()));
    }
    tables.table(
        "sessions",
        List.of(
            Column.of("number", "integer", "place in the series by commit, from 1"),
            Column.of("session", "string", "id of the session"),
            Column.of(
                "folder", "string", "its own data package; empty where it has no number here"),
            Column.of("day", "date", "its day"),
            Column.of("rider", "string", "its rider"),
            Column.of("becomes", "string", "what becomes of it: pooled, or why it is not"),
            Column.of("why", "string", "why it was abandoned"),
            Column.of(
                "setups",
                "string",
                "letters of its own tables, in the order in which the first plan lists the setups"),
            Column.of("measure", "string", "the primary measure")),
        rows);
  }

  private String letters(Plan plan) {
    List<String> own = plan.setups().stream().map(Setup::id).toList();
    StringBuilder letters = new StringBuilder();
    finding.setups().forEach(s -> letters.append(DataPackage.letter(own.indexOf(s.id()))));
    return letters.toString();
  }

  /** Every number of the answer that follows from the sessions, with its place in the JSON. */
  private void answer(JsonNode root) {
    List<List<String>> rows = new ArrayList<>();
    for (String field : COMPUTED) {
      flat(field, root.path(field), rows);
    }
    for (int i = 0; i < finding.parts().size(); i++) {
      if (folder(i).isPresent() && finding.parts().get(i).estimate().isPresent()) {
        JsonNode session = root.path("sessions").path(i);
        flat("sessions/" + (i + 1) + "/estimate", session.path("estimate"), rows);
        flat("sessions/" + (i + 1) + "/interval_95", session.path("interval_95"), rows);
      }
    }
    tables.table(
        "answer",
        List.of(
            Column.of("number", "string", "its place in series.json, places of a list from 1"),
            Column.of("value", "string", "number or word; empty where nothing bounds an interval")),
        rows);
  }

  private static void flat(String at, JsonNode node, List<List<String>> rows) {
    if (node.isObject()) {
      node.properties().forEach(field -> flat(at + "/" + field.getKey(), field.getValue(), rows));
    } else if (node.isArray()) {
      for (int i = 0; i < node.size(); i++) {
        flat(at + "/" + (i + 1), node.get(i), rows);
      }
    } else if (!node.isMissingNode() && !(node.isNull() && at.equals("verdict"))) {
      rows.add(List.of(at, node.isNull() ? "" : node.asText()));
    }
  }

  private void readme() {
    List<String> said = new ArrayList<>();
    said.add(WORDS.say("title", title()));
    said.add(WORDS.say("question", finding.question()));
    said.addAll(new SeriesWords(finding).lines().stream().map(String::strip).toList());
    said.add(WORDS.say("series.files"));
    said.add(WORDS.say("series.again"));
    said.add(WORDS.say("series.sampled"));
    said.add(WORDS.say("series.sessions"));
    said.add(WORDS.say("series.proof"));
    said.add(WORDS.say("caution", Words.of("cautions").say("trust.series")));
    tables.readme(said.toArray(String[]::new));
  }
}
