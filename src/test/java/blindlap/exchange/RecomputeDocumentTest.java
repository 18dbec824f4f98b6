package blindlap.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** What a reader copies out of docs/recompute.md is what .ci/run compares with the report. */
class RecomputeDocumentTest {
  private static String block(String language) throws IOException {
    Matcher block =
        Pattern.compile("```" + language + "\n(.*?)```", Pattern.DOTALL)
            .matcher(Files.readString(Path.of("docs", "recompute.md")));
    assertThat(block.find()).isTrue();
    return block.group(1);
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
  void theScriptsUseNoPackageBeyondTheLanguages() throws IOException {
    assertThat(script("recompute.py").lines().filter(l -> l.matches("(import|from) .*")))
        .containsExactly("import csv, itertools, math, os, sys");
    assertThat(script("recompute.R")).doesNotContain("library(").doesNotContain("::install");
  }
}
