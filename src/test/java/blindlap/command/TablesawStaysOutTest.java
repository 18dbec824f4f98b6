package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What docs/adr/0005-csv-and-tables.md says of start-up. */
class TablesawStaysOutTest {
  @TempDir Path folder;

  @Test
  void aCommandThatReadsATableLoadsTheParserAndNotTheTableLibrary() throws Exception {
    Path csv = Files.writeString(folder.resolve("old.csv"), "lap;t\n1;95,1\n2;94,2\n3;95,3\n");
    Process child =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xlog:class+load",
                "-cp",
                System.getProperty("java.class.path"),
                "blindlap.Main",
                "import-day",
                csv.toString(),
                "--rider=R. Lind",
                "--trail=Quarry loop",
                "--day=2025-05-10",
                "--map=lap time=t",
                "--new",
                "--notebook=" + folder.resolve("book.blindlap"))
            .redirectErrorStream(true)
            .start();
    String said = new String(child.getInputStream().readAllBytes(), StandardCharsets.UTF_8);

    assertThat(child.waitFor())
        .as(said.lines().filter(l -> !l.startsWith("[")).toList().toString())
        .isZero();
    assertThat(said.lines())
        .anyMatch(line -> line.contains("com.univocity.parsers.csv.CsvParser "));
    assertThat(said.lines()).noneMatch(line -> line.contains("tech.tablesaw."));
  }
}
