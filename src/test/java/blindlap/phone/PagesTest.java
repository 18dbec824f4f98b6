package blindlap.phone;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.fault.CanonicalJson;
import blindlap.wording.day.PhoneWords;
import blindlap.wording.day.Words;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The files that phones load, as they stand. */
class PagesTest {
  private static final Path FOLDER = Path.of("src/main/resources/blindlap/phone");

  /**
   * Keys that are asked for whole; those that are put together begin with one of the beginnings.
   */
  private static final Pattern KEY = Pattern.compile("say2?\\(\\s*\"([a-z0-9.-]+)\"(?!\\s*\\+)");

  private static final Pattern QUOTED = Pattern.compile("\"([a-z]+(?:\\.[a-zA-Z_0-9-]+)+)\"");
  private static final Pattern BEGINNING = Pattern.compile("\"([a-z.]+\\.)\" \\+");

  private static Map<String, String> files() throws IOException {
    Map<String, String> files = new TreeMap<>();
    try (Stream<Path> all = Files.list(FOLDER)) {
      for (Path file : (Iterable<Path>) all::iterator) {
        files.put(file.getFileName().toString(), Files.readString(file));
      }
    }
    return files;
  }

  private static Set<String> found(Pattern pattern) throws IOException {
    Set<String> found = new TreeSet<>();
    for (String text : files().values()) {
      Matcher matcher = pattern.matcher(text);
      while (matcher.find()) {
        found.add(matcher.group(1));
      }
    }
    return found;
  }

  @Test
  void everyWordThatAPageAsksForExists() throws IOException {
    Set<String> asked = found(KEY);
    assertThat(asked).hasSizeGreaterThan(60);
    Set<String> served = new TreeSet<>(PhoneWords.all().keySet());
    served.addAll(PhoneWords.ofTrials().keySet());
    assertThat(served).containsAll(asked);
  }

  @Test
  void everyWordOfThePagesIsAskedFor() throws IOException {
    Set<String> named = found(QUOTED);
    named.addAll(found(KEY));
    Set<String> beginnings = found(BEGINNING);
    assertThat(Words.of("phone").keys())
        .allMatch(key -> named.contains(key) || beginnings.stream().anyMatch(key::startsWith));
  }

  /** No build step, nothing from elsewhere, and all of it smaller than one photograph. */
  @Test
  void allOfItIsLessThanAHundredAndFiveThousandBytes() throws IOException {
    long bytes = CanonicalJson.bytes(PhoneWords.all()).length;
    for (String text : files().values()) {
      bytes += text.getBytes(StandardCharsets.UTF_8).length;
    }
    assertThat(bytes).isLessThan(105_000);
  }

  @Test
  void everyFileIsServedAndNoOther() throws IOException {
    Shell shell = new Shell(PhoneWords.all());
    for (String name : files().keySet()) {
      assertThat(shell.at("/" + name.replace(".html", ""))).as(name).isPresent();
    }
    assertThat(shell.at("/index")).isEmpty();
  }

  /** A phone on plain http has none of these, and words of people are never read as marks. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "serviceWorker", "caches.", "randomUUID", "wakeLock", ".subtle", "navigator.storage",
        "clipboard", "innerHTML", "outerHTML", "insertAdjacentHTML", "document.write", "eval(",
        "new Function", "style=", "onclick=", "javascript:", "http://", "https://"
      })
  void nothingIsUsedThatNeedsASecureContextOrReadsWordsAsMarks(String forbidden)
      throws IOException {
    files().forEach((name, text) -> assertThat(text).as(name).doesNotContain(forbidden));
  }
}
