package blindlap.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every row of docs/method.md, part three, says how much of its source was seen. */
class MethodSourcesTest {
  private static final Pattern SEEN = Pattern.compile("\\b(?:read|looked up|from memory|own)\\b");
  private static final Pattern NEEDS_MORE = Pattern.compile("\\b(?:from memory|own)\\b");
  private static final Pattern TEST = Pattern.compile("`[a-z.]+\\.[A-Z]\\w*Test`");
  private static final Pattern OUTSIDE = Pattern.compile("(?:`[A-Z]\\d\\d|\\b[A-Z]\\d\\d\\b|NIST)");
  private static final Pattern CHECK = Pattern.compile("`(own/)?([A-Z]?\\d\\d)(?:-\\d)?`");

  /** The cells of every row. */
  private static List<String[]> rows(String page) {
    String part = page.substring(page.indexOf("## Part three"), page.indexOf("## Part four"));
    return part.lines()
        .filter(line -> line.startsWith("| ") && !line.startsWith("| ---"))
        .skip(1)
        .map(line -> line.substring(2, line.length() - 2).split(" \\| "))
        .toList();
  }

  /** Rows without what they must say. */
  private static List<String> silent(String page) {
    List<String> faults = new ArrayList<>();
    for (String[] row : rows(page)) {
      if (row.length != 4 || !SEEN.matcher(row[2]).find()) {
        faults.add(row[0] + ": does not say how much was seen");
      } else if (NEEDS_MORE.matcher(row[2]).find()
          && !TEST.matcher(row[3]).find()
          && !OUTSIDE.matcher(row[3]).find()) {
        faults.add(row[0] + ": own or from memory, and no second way");
      }
    }
    return faults;
  }

  @Test
  void everyRowSaysHowMuchWasSeenAndGoesASecondWayWhereThatIsNothing() throws IOException {
    String page = Citations.read(Path.of("docs/method.md"));
    assertThat(rows(page)).hasSizeGreaterThan(35);
    assertThat(silent(page)).isEmpty();
  }

  @Test
  void everyCheckThatIsNamedLiesWhereThePageSays() throws IOException {
    String page = Citations.read(Path.of("docs/method.md"));
    Path checks = Path.of("src/test/resources/blindlap/checks");
    List<String> missing = new ArrayList<>();
    int named = 0;
    for (String[] row : rows(page)) {
      Matcher check = CHECK.matcher(row[3]);
      while (check.find()) {
        // "own/28, 29": the second has no folder of its own.
        boolean own = check.group(1) != null || Character.isDigit(check.group(2).charAt(0));
        named++;
        try (Stream<Path> files = Files.list(checks.resolve(own ? "own" : "outside"))) {
          String id = check.group(2);
          if (files.noneMatch(file -> file.getFileName().toString().startsWith(id))) {
            missing.add(row[0] + ": " + check.group());
          }
        }
      }
    }
    assertThat(named).isGreaterThan(40);
    assertThat(missing).isEmpty();
  }

  @Test
  void aRowThatDoesNotSayIsNoticed() {
    String page =
        """
        ## Part three
        | procedure | published | seen | checked by |
        | --- | --- | --- | --- |
        | one | A 1900 | looked up | by nobody |
        | two | B 1900 | somewhere | `stats.OneTest` |
        | three | C 1900 | from memory | by nobody |
        | four | own rule | own | `stats.OneTest` |
        ## Part four
        """;
    assertThat(silent(page))
        .containsExactly(
            "two: does not say how much was seen", "three: own or from memory, and no second way");
  }
}
