package blindlap.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The scripts that every data package holds are the only ones there are: documents lead to them and
 * repeat none, so that what is read is what is run.
 */
class RecomputeDocumentTest {
  private static final Path SCRIPTS = Path.of("src", "main", "resources", "blindlap", "exchange");

  private static String packed(String name) throws IOException {
    return Files.readString(SCRIPTS.resolve(name));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "recompute.py",
        "recompute.R",
        "recompute-trials.py",
        "recompute-trials.R",
        "recompute-series.py",
        "recompute-series.R"
      })
  void theDocumentLeadsToEveryScriptAndRepeatsNone(String name) throws IOException {
    String document = Files.readString(Path.of("docs", "recompute.md"));
    assertThat(SCRIPTS.resolve(name)).exists();
    assertThat(PackageScripts.isOne(name)).isTrue();
    assertThat(document)
        .contains("[`" + name + "`](../src/main/resources/blindlap/exchange/" + name + ")")
        .doesNotContain("```python")
        .doesNotContain("```r\n");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "recompute.py|import csv, itertools, math, os, sys",
        "recompute-trials.py|import csv, json, math, os, sys",
        "recompute-series.py|import array, bisect, csv, itertools, math, os, random, sys"
      })
  void thePythonScriptsUseNothingButPython(String name, String imports) throws IOException {
    assertThat(packed(name).lines().filter(l -> l.matches("(import|from) .*")))
        .containsExactly(imports);
  }

  @Test
  void theCheckUsesNothingButPython() throws IOException {
    assertThat(packed("verify.py").lines().filter(l -> l.matches("\\s*(import|from) .*")))
        .containsExactlyElementsOf(
            List.of(
                "import csv, hashlib, io, json, math, os, re, sys, unicodedata",
                "from datetime import datetime, timezone",
                "from decimal import Decimal",
                "from fractions import Fraction",
                "from itertools import groupby"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"recompute.R", "recompute-trials.R", "recompute-series.R"})
  void theRScriptsUseNothingButR(String name) throws IOException {
    assertThat(packed(name)).doesNotContain("library(").doesNotContain("require(");
    assertThat(packed(name)).doesNotContainPattern("(?<!base)::");
  }
}
