package blindlap.compute;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Every outside check; each test is named by title and source. */
class CheckFilesTest {
  private final Calculations calculations = Calculations.standard();

  @TestFactory
  Stream<DynamicTest> everyOutsideCheckPasses() throws Exception {
    return checks().stream()
        .map(
            check ->
                dynamicTest(
                    check.id() + ": " + check.title() + " | " + check.source(),
                    () -> passes(check)));
  }

  @Test
  void everyCalculationHasAnOutsideCheckAndEveryCheckItsCalculation() throws Exception {
    Set<String> wanted =
        checks().stream()
            .map(check -> check.request().calculation())
            .collect(Collectors.toCollection(TreeSet::new));
    assertThat(calculations.names()).isEqualTo(wanted);
    assertThat(checks()).hasSize(262);
  }

  private void passes(CheckFile check) {
    assertThat(check.shortfalls(calculations.answer(check.request()))).isEmpty();
  }

  static List<CheckFile> checks() throws IOException, URISyntaxException {
    try (Stream<Path> files = Files.walk(folder())) {
      return files
          .filter(file -> file.toString().endsWith(".json"))
          .sorted()
          .flatMap(file -> parse(file).stream())
          .toList();
    }
  }

  static Path folder() throws URISyntaxException {
    URI uri = Objects.requireNonNull(CheckFilesTest.class.getResource("/blindlap/checks")).toURI();
    return Path.of(uri);
  }

  private static List<CheckFile> parse(Path file) {
    try {
      return CheckFile.parse(Files.readString(file));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
