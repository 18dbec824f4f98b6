package blindlap.compute;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/**
 * docs/review-json.md against the code that writes findings; what samples hold of it is walked by
 * {@code desk.SampleFindingsTest} and {@code command.NoiseTest}.
 */
class ReviewJsonDocumentTest {
  private static final List<String> WRITERS =
      List.of(
          "FindingJson",
          "BesideJson",
          "MasksJson",
          "CovariateJson",
          "RecorderJson",
          "WaitsJson",
          "LooksJson",
          "WhereJson",
          "RemarksJson",
          "NextJson",
          "NoiseJson",
          "ProfilesJson",
          "SeriesPlaceJson",
          "TellingJson",
          "TrendJson");
  private static final Pattern WRITTEN =
      Pattern.compile(
          "(?:put|putArray|putObject|putNull|set|withArray|number|numbers|interval|optional|stints"
              + "|names|level)\\(\\s*(?:\\w+(?:\\.\\w+\\(\\))*,\\s*)?\"([a-z0-9_]+)\"");

  /** The request of a telling run is written where its finding is. */
  private static final Set<String> OF_REQUESTS = Set.of("calculation", "given", "rule");

  /** A profile beside a field says this in place of how it stands to one day's opening. */
  private static final Set<String> OF_FIELDS = Set.of("days_opened_before");

  private static String source(String writer) throws IOException {
    return Files.readString(Path.of("src/main/java/blindlap/compute", writer + ".java"));
  }

  @Test
  void everyFieldThatIsWrittenIsOnThePage() throws IOException {
    Set<String> named = new TreeSet<>();
    ReviewJsonPage.read("An open noise run").rows().keySet().forEach(path -> named.add(last(path)));
    ReviewJsonPage.section("An open noise run")
        .rows()
        .keySet()
        .forEach(path -> named.add(last(path)));
    named.addAll(OF_REQUESTS);
    named.addAll(OF_FIELDS);
    int found = 0;
    for (String writer : WRITERS) {
      Set<String> written = new TreeSet<>();
      WRITTEN.matcher(source(writer)).results().forEach(each -> written.add(each.group(1)));
      written.removeIf(part -> part.endsWith("_")); // the beginning of several names
      assertThat(named).as(writer).containsAll(written);
      found += written.size();
    }
    assertThat(found).isGreaterThan(180);
  }

  /** What no sample shows is written somewhere all the same. */
  @Test
  void everyRowWithoutASampleIsWritten() throws IOException {
    StringBuilder sources = new StringBuilder();
    for (String writer : WRITERS) {
      sources.append(source(writer));
    }
    sources.append(Files.readString(Path.of("src/main/java/blindlap/desk/PackageReview.java")));
    for (String path : ReviewJsonPage.read("An open noise run").unmet()) {
      assertThat(sources.toString()).as(path).contains("\"" + last(path) + "\"");
    }
  }

  private static String last(String path) {
    return path.substring(path.lastIndexOf('.') + 1);
  }
}
