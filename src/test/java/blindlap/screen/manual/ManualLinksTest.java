package blindlap.screen.manual;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.wording.day.PhoneWords;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Every picture is linked from a page under words that are true of it, and every link to one leads
 * to a picture; and phones say what stands on theirs.
 */
class ManualLinksTest {
  private static final Pattern PICTURE = Pattern.compile("!\\[([^]]*)]\\(([^)]+)\\)");
  private static final Pattern LINK = Pattern.compile("]\\(([^)#]+)\\)");

  /** What is typed into the patterns of words: {0}, and {0} parted into one and more. */
  private static final Pattern GAP = Pattern.compile("\\[\\d+\\|[^]]*]|\\{\\d+}");

  private static final Set<ManualPicture> PHONES =
      EnumSet.of(
          ManualPicture.PHONE_RIDE, ManualPicture.PHONE_RIDE_KEPT, ManualPicture.PHONE_START);

  /** A picture as a page links it. */
  private record Linked(String words, Path file) {}

  private static List<Path> pages() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("docs"))) {
      List<Path> pages =
          new ArrayList<>(files.filter(file -> file.toString().endsWith(".md")).sorted().toList());
      pages.add(Path.of("README.md"));
      return pages;
    }
  }

  private static Path beside(Path page, String link) {
    return page.resolveSibling(link).normalize();
  }

  private static List<Linked> pictures() throws IOException {
    List<Linked> all = new ArrayList<>();
    for (Path page : pages()) {
      for (MatchResult found : PICTURE.matcher(Files.readString(page)).results().toList()) {
        all.add(new Linked(found.group(1), beside(page, found.group(2))));
      }
    }
    return all;
  }

  @Test
  void everyPictureIsLinkedUnderItsWordsAndEveryLinkLeadsToOne() throws IOException {
    Map<Path, String> known = new TreeMap<>();
    for (ManualPicture each : ManualPicture.values()) {
      known.put(each.file(".png"), each.words());
    }
    List<Linked> linked = pictures();
    for (Linked each : linked) {
      assertThat(known).as("pictures that are taken").containsKey(each.file());
      assertThat(each.words())
          .as("what stands for %s where it cannot be seen", each.file())
          .isEqualTo(known.get(each.file()));
    }
    Set<Path> shown =
        linked.stream().map(Linked::file).collect(Collectors.toCollection(TreeSet::new));
    assertThat(shown).as("pictures that a page shows").isEqualTo(known.keySet());
  }

  @Test
  void nothingElseLiesAmongThePictures() throws IOException {
    Set<Path> wanted = new TreeSet<>();
    for (ManualPicture each : ManualPicture.values()) {
      wanted.add(each.file(".png"));
      wanted.add(each.file(".txt"));
    }
    for (Path page : pages()) {
      LINK.matcher(Files.readString(page))
          .results()
          .map(found -> beside(page, found.group(1)))
          .filter(file -> file.startsWith(Album.FOLDER))
          .forEach(wanted::add);
    }
    try (Stream<Path> files = Files.list(Album.FOLDER)) {
      Set<Path> there = files.collect(Collectors.toCollection(TreeSet::new));
      assertThat(there).isEqualTo(wanted);
    }
    assertThat(Path.of("docs/pictures")).as("pictures lie in one folder").doesNotExist();
  }

  /** One sentence, and not too long for whoever has it read out. */
  @Test
  void theWordsOfAPictureAreASentence() {
    for (ManualPicture each : ManualPicture.values()) {
      assertThat(each.words()).matches("[A-Z].*\\.").hasSizeLessThan(140);
    }
  }

  /** A browser takes them and compares all of it; these are the words that it is served. */
  @Test
  void phonesSayWhatStandsOnTheirPictures() throws IOException {
    List<Pattern> served =
        PhoneWords.all().values().stream().map(ManualLinksTest::matching).toList();
    String plan = Files.readString(Album.FOLDER.resolve("plan.yaml"));
    for (ManualPicture each : PHONES) {
      String table = Files.readString(each.file(".txt"));
      List<String> lines = table.substring(table.indexOf("\n\n") + 2).lines().toList();
      assertThat(lines).hasSizeGreaterThan(10);
      for (String line : lines) {
        assertThat(
                served.stream().anyMatch(words -> words.matcher(line).matches())
                    || plan.contains(line)
                    || line.matches("[-−–+\\d]*|hh:mm"))
            .as("\"%s\" on %s is served to phones", line, each)
            .isTrue();
      }
    }
  }

  private static Pattern matching(String words) {
    StringBuilder pattern = new StringBuilder();
    int end = 0;
    String plain = words.replace("''", "'");
    for (MatchResult gap : GAP.matcher(plain).results().toList()) {
      pattern.append(Pattern.quote(plain.substring(end, gap.start()))).append(".*");
      end = gap.end();
    }
    return Pattern.compile(pattern.append(Pattern.quote(plain.substring(end))).toString());
  }
}
