package blindlap.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plan.Measure;
import blindlap.plan.PlanJson;
import blindlap.plan.Plans;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class PlanFileDocumentTest {
  private static final Path DOCUMENT = Path.of("docs", "plan-file.md");

  @Test
  void everyFieldOfThePlanFormIsDescribed() throws IOException {
    String document = Files.readString(DOCUMENT);
    try (InputStream in = PlanFileDocumentTest.class.getResourceAsStream("plan.schema.json")) {
      Set<String> fields = new TreeSet<>();
      collect(new ObjectMapper().readTree(in), fields);

      assertThat(fields)
          .hasSizeGreaterThan(90)
          .allSatisfy(field -> assertThat(document).contains("`" + field + "`"));
    }
  }

  private static void collect(JsonNode node, Set<String> fields) {
    if (node.has("properties")) {
      node.get("properties").fieldNames().forEachRemaining(fields::add);
    }
    node.forEach(child -> collect(child, fields));
  }

  @Test
  void theExampleIsAPlanThatReads() throws IOException {
    Matcher example =
        Pattern.compile("```yaml\n(.*?)```", Pattern.DOTALL).matcher(Files.readString(DOCUMENT));

    assertThat(example.find()).isTrue();
    assertThat(PlanReader.read(example.group(1), Plans.protocols()).problems()).isEmpty();
  }

  @Test
  void everyKindOfMeasureIsDescribed() throws IOException {
    String document = Files.readString(DOCUMENT);

    assertThat(PlanJson.words(Measure.Kind.class))
        .allSatisfy(kind -> assertThat(document).contains("`" + kind + "`"));
  }
}
