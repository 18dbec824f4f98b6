package blindlap.compute;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;

/** docs/review-json.md, as rows by the path of a field. */
public final class ReviewJsonPage {
  private static final Pattern ROW =
      Pattern.compile("^\\| `([^`]+)` \\| (.+) \\| (.+) \\| (.+) \\|$", Pattern.MULTILINE);
  private static final String UNMET = "no sample: ";

  private final Map<String, String> absent = new LinkedHashMap<>();

  private ReviewJsonPage() {}

  /** All sections but the one of another kind of answer. */
  public static ReviewJsonPage read(String but) throws IOException {
    return of(text().replaceAll("(?s)\n## " + but + "\n.*?(?=\n## |\\z)", ""));
  }

  /** One section. */
  public static ReviewJsonPage section(String title) throws IOException {
    String text = text();
    return of(text.substring(text.indexOf("\n## " + title + "\n")));
  }

  private static ReviewJsonPage of(String text) {
    ReviewJsonPage page = new ReviewJsonPage();
    ROW.matcher(text)
        .results()
        .forEach(
            row ->
                assertThat(page.absent.put(row.group(1), row.group(4))).as(row.group(1)).isNull());
    return page;
  }

  static String text() throws IOException {
    return Files.readString(Path.of("docs", "review-json.md"));
  }

  Map<String, String> rows() {
    return absent;
  }

  /** Names of all fields that no sample has. */
  Set<String> unmet() {
    Set<String> unmet = new TreeSet<>();
    absent.forEach(
        (path, why) -> {
          if (why.contains(UNMET)) {
            unmet.add(path);
          }
        });
    return unmet;
  }

  /** Every field of these is a row, and every row is a field of one of them or says why not. */
  public void agreesWith(Collection<String> answers) {
    Set<String> met = new TreeSet<>();
    answers.forEach(answer -> walk("", StrictJson.parse(answer), met));
    assertThat(absent.keySet()).as("fields that are on no row").containsAll(met);
    Set<String> missing = new TreeSet<>(absent.keySet());
    missing.removeAll(met);
    assertThat(missing).as("rows of fields that no sample has").isEqualTo(unmet());
  }

  private static void walk(String before, JsonNode node, Set<String> met) {
    node.fields()
        .forEachRemaining(
            field -> {
              String path = before + field.getKey();
              met.add(path);
              JsonNode value = field.getValue();
              if (path.equals("requests[].request")) {
                return; // its fields are those of docs/compute.md
              }
              if (value.isObject()) {
                walk(path + ".", value, met);
              } else if (value.isArray()) {
                value.forEach(each -> walk(path + "[].", each, met));
              }
            });
  }
}
