package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import blindlap.exchange.PackageProof;
import blindlap.fault.Problem;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SeriesPackageTest {
  @TempDir Path folder;

  private static String text(Map<String, byte[]> files, String name) {
    return new String(files.get(name), StandardCharsets.UTF_8);
  }

  private record Ran(int code, List<String> lines) {
    List<String> differing() {
      return lines.stream().filter(line -> line.startsWith("DIFFERS")).toList();
    }
  }

  private Ran run(String program, String script, Path there) throws Exception {
    Process process;
    try {
      process =
          new ProcessBuilder(program, there.resolve(script).toString())
              .redirectErrorStream(true)
              .start();
    } catch (IOException absent) {
      assumeTrue(false, program + " is not on this machine");
      throw absent;
    }
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor(120, TimeUnit.SECONDS)).isTrue();
    return new Ran(process.exitValue(), said.lines().toList());
  }

  @Test
  void everyNumberOfEverySampleSeriesComesAgainFromTheTablesAlone() throws Exception {
    for (String name : SeriesSample.all().keySet()) {
      Path there = folder.resolve(name);
      SeriesSample.with(name, days -> written(there, SeriesSample.packaged(days)));
      Ran python = run("python3", "recompute-series.py", there);
      assertThat(python.differing()).as(name).isEmpty();
      assertThat(python.code()).as("%s: %s", name, python.lines()).isZero();
      assertThat(python.lines().get(python.lines().size() - 1)).endsWith(", 0 differ");
      assertThat(python.lines()).as(name).hasSizeGreaterThan(15);
    }
  }

  @Test
  void aValueThatWasChangedIsFoundByBothScriptsWithExitCode1() throws Exception {
    SeriesSample.with("one-rider", days -> written(folder, SeriesSample.packaged(days)));
    Path units = folder.resolve("session-2").resolve("units.csv");
    String before = Files.readString(units);
    Files.writeString(units, before.replaceFirst("lap time,1,(.),\\d+", "lap time,1,$1,99"));
    assertThat(Files.readString(units)).isNotEqualTo(before);
    for (Ran ran :
        List.of(
            run("python3", "recompute-series.py", folder),
            run("Rscript", "recompute-series.R", folder))) {
      assertThat(ran.code()).as("%s", ran.lines()).isEqualTo(1);
      assertThat(ran.differing())
          .anyMatch(line -> line.contains("sessions/2/estimate"))
          .anyMatch(line -> line.contains("these_riders_on_these_days/estimate"))
          .noneMatch(line -> line.contains("sessions/1/"));
    }
  }

  @Test
  void aNumberThatIsMissingOnEitherSideIsNamed() throws Exception {
    SeriesSample.with("one-rider", days -> written(folder, SeriesSample.packaged(days)));
    Path answer = folder.resolve("answer.csv");
    String all = Files.readString(answer);
    String gone = "these_riders_on_these_days/p,";
    String one = all.lines().filter(line -> line.startsWith(gone)).findFirst().orElseThrow();
    Files.writeString(answer, all.replace(one + "\n", "") + "riders/9/estimate,1.5\n");
    Ran ran = run("python3", "recompute-series.py", folder);
    assertThat(ran.code()).isEqualTo(1);
    assertThat(ran.differing())
        .anyMatch(line -> line.contains("these_riders_on_these_days/p is not in the answer"))
        .anyMatch(line -> line.contains("riders/9/estimate is in the answer, and not computed"));
  }

  private static void written(Path folder, Map<String, byte[]> files) {
    try {
      WholeFiles.write(folder, files);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  @Test
  void everyFileOfItIsHeldByAHashAndEverySessionsPackageStandsByItself() throws Exception {
    SeriesSample.with(
        "riders",
        days -> {
          Map<String, byte[]> files = SeriesSample.packaged(days);
          PackageProof.Held held = PackageProof.held(outer(files), Set.of());
          assertThat(held.hashed()).isTrue();
          assertThat(held.unnamed()).isEmpty();
          assertThat(held.problems()).extracting(Problem::where).containsOnly("datapackage.json");
          for (int i = 1; i <= 6; i++) {
            PackageReview review = PackageReview.of(inner(files, "session-" + i + "/"));
            assertThat(review.altered()).isEmpty();
            assertThat(review.notes())
                .anyMatch(note -> note.startsWith("Every file gives its hash"));
          }
          Map<String, byte[]> changed = new LinkedHashMap<>(files);
          changed.put("session-3/datapackage.json", "{}".getBytes(StandardCharsets.UTF_8));
          assertThat(PackageProof.held(outer(changed), Set.of()).problems())
              .extracting(Problem::where)
              .contains("session-3/datapackage.json");
        });
  }

  /** Without the files that a session's own description stands for. */
  private static Map<String, byte[]> outer(Map<String, byte[]> files) {
    Map<String, byte[]> outer = new LinkedHashMap<>(files);
    outer.keySet().removeIf(name -> name.contains("/") && !name.endsWith("/datapackage.json"));
    return outer;
  }

  private static Map<String, byte[]> inner(Map<String, byte[]> files, String start) {
    Map<String, byte[]> inner = new LinkedHashMap<>();
    files.forEach(
        (name, bytes) -> {
          if (name.startsWith(start)) {
            inner.put(name.substring(start.length()), bytes);
          }
        });
    return inner;
  }

  @Test
  void theRowsOfTheAnswerAreThoseOfItsJsonAndNoComputedNumberIsLeftOut() throws Exception {
    SeriesSample.with(
        "riders",
        days -> {
          Map<String, byte[]> files = SeriesSample.packaged(days);
          Set<String> rows = new TreeSet<>();
          text(files, "answer.csv").lines().skip(1).forEach(l -> rows.add(l.split(",")[0]));
          assertThat(rows)
              .contains(
                  "verdict",
                  "riders_in_general/interval_95/1",
                  "these_riders_on_these_days/p",
                  "riders/5/estimate",
                  "other_measures/1/p_adjusted",
                  "other_measures/3/harm/second_against_first",
                  "sessions/6/interval_95/2");
          JsonNode json = parsed(text(files, "series.json"));
          for (String row : rows) {
            JsonNode at = json;
            for (String step : row.split("/")) {
              at = step.matches("\\d+") ? at.path(Integer.parseInt(step) - 1) : at.path(step);
            }
            assertThat(at.isMissingNode()).as(row).isFalse();
            assertThat(text(files, "answer.csv"))
                .contains(row + "," + (at.isNull() ? "" : at.asText()));
          }
        });
  }

  private static JsonNode parsed(String text) {
    try {
      return new ObjectMapper().readTree(text);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  @Test
  void beforeTheEndNoPackageIsMade() throws Exception {
    try (SeriesDays days = new SeriesDays(folder, 3)) {
      days.ride(new SeriesDays.Day("R. Lind", "2026-10-03", 2, -1, 0.7, true));
      SeriesReports.Result result = days.desk().seriesPackages().of(SeriesDays.SERIES);
      assertThat(((SeriesReports.Result.Refused) result).problems())
          .extracting(Problem::fault)
          .containsExactly(DeskFault.SERIES_SEALED);
      SeriesReports.Result none = days.desk().seriesPackages().of("no-such");
      assertThat(((SeriesReports.Result.Refused) none).problems())
          .extracting(Problem::fault)
          .containsExactly(DeskFault.NO_SUCH_SERIES);
    }
  }

  @Test
  void aPackageThatCannotBeWrittenWholeLeavesNothing() throws Exception {
    SeriesSample.with(
        "one-rider",
        days -> {
          Map<String, byte[]> files = SeriesSample.packaged(days);
          Path there = folder.resolve("whole");
          written(
              there,
              Map.of(
                  "session-2", "a file where a folder should be".getBytes(StandardCharsets.UTF_8)));
          assertThat(org.assertj.core.api.Assertions.catchThrowable(() -> written(there, files)))
              .hasCauseInstanceOf(IOException.class);
          assertThat(there.toFile().list()).containsExactly("session-2");
        });
  }
}
