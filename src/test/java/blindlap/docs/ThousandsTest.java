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

/**
 * Thousands are set off by a comma wherever people read numbers: in the program, its words and its
 * pages. Commands and whatever else is typed, seeds, years, ports and names of standards are none.
 */
class ThousandsTest {
  private static final Pattern BY_SPACE =
      Pattern.compile("(?<![\\d.,\\w])\\d{1,3}(?:[ \\u00a0\\u202f]\\d{3})+(?!\\d)");
  private static final Pattern LONG =
      Pattern.compile("(?<![\\d.,\\w#/=+-])(?<!seed )\\d{5,}(?![\\d.\\w])");
  private static final Pattern COUNTED =
      Pattern.compile(
          "(?<![\\d.,\\w#/+-])\\d{4,} (?:[a-z-]+ )?(?:days|orders|laps|stints|bytes|rounds|words"
              + "|sessions|draws|rows|cells|points|files|trials|runs|characters|entries|nodes"
              + "|seasons|histories|tries)\\b");
  private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\]|\\\\.)*)\"");

  /** Numbers that are names: of standards, of ports, of a format, of a seed. */
  private static final Pattern NAMES =
      Pattern.compile("(?:ISO|RFC|EN) \\d+(?:, \\d+)*|1 to 65535|\\b1114399088\\b|no: 20251101");

  private static List<String> faults(String where, String text) {
    List<String> faults = new ArrayList<>();
    String read = NAMES.matcher(text).replaceAll("");
    for (Pattern wrong : List.of(BY_SPACE, LONG, COUNTED)) {
      Matcher found = wrong.matcher(read);
      while (found.find()) {
        faults.add(where + ": " + found.group());
      }
    }
    return faults;
  }

  /** A page without what is typed: blocks, code in a line, where links lead. */
  private static String prose(String page) {
    StringBuilder prose = new StringBuilder();
    boolean fenced = false;
    for (String line : page.split("\n", -1)) {
      fenced ^= line.startsWith("```");
      if (!fenced && !line.matches(" {4,}(?![-*|]).*")) {
        prose
            .append(line.replaceAll("`[^`]*`", "`").replaceAll("\\]\\([^)]*\\)", "]"))
            .append('\n');
      }
    }
    return prose.toString();
  }

  @Test
  void pagesSetThousandsOffByAComma() throws IOException {
    List<String> faults = new ArrayList<>();
    int commas = 0;
    for (Path page : pages()) {
      String prose = prose(Files.readString(page));
      faults.addAll(faults(page.toString(), prose));
      commas += prose.split("\\d,\\d{3}\\b", -1).length - 1;
    }
    assertThat(faults).isEmpty();
    assertThat(commas).isGreaterThan(100);
  }

  @Test
  void wordsOfTheProgramDoSoToo() throws IOException {
    List<String> faults = new ArrayList<>();
    for (Path bundle : under("src/main/resources/blindlap", ".properties")) {
      for (String line : Files.readAllLines(bundle)) {
        if (!line.startsWith("#") && line.contains("=")) {
          faults.addAll(faults(bundle.toString(), line.substring(line.indexOf('=') + 1)));
        }
      }
    }
    for (Path source : under("src/main/java", ".java")) {
      Matcher literal = LITERAL.matcher(Files.readString(source));
      while (literal.find()) {
        if (literal.group(1).matches("(?s).*[a-z]{3,}.*") && literal.group(1).contains(" ")) {
          faults.addAll(faults(source.toString(), literal.group(1)));
        }
      }
    }
    assertThat(faults).isEmpty();
  }

  @Test
  void theTestSeesOtherSpellings() {
    assertThat(faults("x", "of 1 000 orders")).isNotEmpty();
    assertThat(faults("x", "of 46\u202f656")).isNotEmpty();
    assertThat(faults("x", "all 46656 of them")).isNotEmpty();
    assertThat(faults("x", "3000 simulated days")).isNotEmpty();
    assertThat(faults("x", "in 2019, 1,296 orders; ISO 10399; 16 stints 200 times")).isEmpty();
    assertThat(prose("run `-Dopened=100000`\n\n    mvn -Dflips=10000\n")).doesNotContain("10000");
  }

  private static List<Path> pages() throws IOException {
    List<Path> pages = new ArrayList<>(under("docs", ".md"));
    pages.add(Path.of("README.md"));
    pages.add(Path.of("DEVELOPERS.md"));
    return pages;
  }

  private static List<Path> under(String folder, String ending) throws IOException {
    try (Stream<Path> all = Files.walk(Path.of(folder))) {
      return all.filter(file -> file.toString().endsWith(ending)).sorted().toList();
    }
  }
}
