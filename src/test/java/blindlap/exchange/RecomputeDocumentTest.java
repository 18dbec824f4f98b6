package blindlap.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** What a reader copies out of docs/recompute.md is what .ci/run compares with the report. */
class RecomputeDocumentTest {
  private static String block(String language) throws IOException {
    return blocks(language).get(0);
  }

  private static List<String> blocks(String language) throws IOException {
    Matcher block =
        Pattern.compile("```" + language + "\n(.*?)```", Pattern.DOTALL)
            .matcher(Files.readString(Path.of("docs", "recompute.md")));
    return block.results().map(found -> found.group(1)).toList();
  }

  private static String packed(String name) throws IOException {
    return Files.readString(Path.of("src", "main", "resources", "blindlap", "exchange", name));
  }

  private static String script(String name) throws IOException {
    return Files.readString(Path.of("src", "test", "scripts", name));
  }

  @Test
  void theScriptsOfTheDocumentAreTheOnesThatAreRun() throws IOException {
    assertThat(block("python")).isEqualTo(script("recompute.py"));
    assertThat(block("r")).isEqualTo(script("recompute.R"));
  }

  @Test
  void theScriptsOfASeriesAreTheOnesThatItsPackageHolds() throws IOException {
    assertThat(blocks("python").get(1)).isEqualTo(packed("recompute-series.py"));
    assertThat(blocks("r").get(1)).isEqualTo(packed("recompute-series.R"));
  }

  @Test
  void theScriptsOfATellingRunAreTheOnesThatAreRun() throws IOException {
    assertThat(blocks("python").get(2)).isEqualTo(script("recompute-trials.py"));
    assertThat(blocks("r").get(2)).isEqualTo(script("recompute-trials.R"));
  }

  @Test
  void theScriptsUseNoPackageBeyondTheLanguages() throws IOException {
    assertThat(script("recompute.py").lines().filter(l -> l.matches("(import|from) .*")))
        .containsExactly("import csv, itertools, math, os, sys");
    assertThat(script("recompute-trials.py").lines().filter(l -> l.matches("(import|from) .*")))
        .containsExactly("import csv, json, math, sys");
    assertThat(script("recompute-trials.R")).doesNotContain("library(").doesNotContain("::");
    assertThat(packed("recompute-series.py").lines().filter(l -> l.matches("(import|from) .*")))
        .containsExactly("import array, bisect, csv, itertools, math, os, random, sys");
    assertThat(packed("recompute-series.R")).doesNotContain("library(").doesNotContain("::");
    assertThat(script("recompute.R")).doesNotContain("library(").doesNotContain("::install");
  }
}
