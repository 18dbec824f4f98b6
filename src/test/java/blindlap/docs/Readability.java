package blindlap.docs;

import blindlap.wording.day.WordForms;
import blindlap.wording.day.WordList;
import java.io.IOException;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * How hard the texts are that a rider or a helper reads: the longest sentence in words, and the
 * share of words that stand neither in the list of words nor among the thousand commonest. Told by
 * docs/readability.md.
 */
final class Readability {
  /** Pages of the manual that riders and helpers read. */
  static final List<String> PAGES =
      List.of("swap-day", "alone", "phones", "telling-run", "field-card");

  /** What the window, the phones and the sheets say to them, by the names of their bundles. */
  static final List<String> BUNDLES =
      List.of(
          "alone",
          "cautions",
          "day",
          "handling",
          "masks",
          "mount",
          "onestint",
          "phone",
          "phones",
          "quick",
          "ride",
          "sheets",
          "swap",
          "trials");

  private static final Path COMMON = Path.of("src/test/resources/blindlap/docs/common-words.txt");
  private static final Pattern FENCE = Pattern.compile("(?ms)^ *```.*?^ *```$");
  private static final Pattern INDENTED = Pattern.compile("(?m)^ {4}\\S.*$");
  private static final Pattern COMMENT = Pattern.compile("(?s)<!--.*?-->|<[^>]+>");
  private static final Pattern IMAGE = Pattern.compile("!\\[[^]]*]\\([^)]*\\)");
  private static final Pattern LINK = Pattern.compile("\\[([^]]*)]\\([^)]*\\)");
  private static final Pattern CODE = Pattern.compile("`[^`]*`");

  /** Where a block of text begins: after an empty line, at a bullet, a number, a heading, a row. */
  private static final Pattern BLOCK =
      Pattern.compile("\\n\\s*\\n|\\n(?=\\s*(?:[-*] |\\d+\\. |#|\\|))");

  private static final Pattern SENTENCE = Pattern.compile("(?<=[.!?])[\"”)*]*\\s+");
  private static final Pattern WORD = Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{N}'’.,-]*");
  private static final Pattern LETTERS = Pattern.compile("\\p{L}+(?:['’]\\p{L}+)*");
  private static final Pattern PLACE = Pattern.compile("\\{\\d[^}]*}");
  private static final Pattern COUNTED = Pattern.compile("\\[\\d\\|[^|\\]]*\\|([^\\]]*)]");

  /** Something in the place of code and of numbers, which is one word and none of English. */
  private static final String ONE = " 0 ";

  private final Set<String> known;

  /**
   * What was measured of a text.
   *
   * @param words how many there are
   * @param longest the longest sentence
   * @param longestWords how many words that has
   * @param outside share of words that are not known, from 0 to 1
   * @param strange words that are not known, the most frequent first
   */
  record Measured(
      int words, String longest, int longestWords, double outside, List<String> strange) {}

  /**
   * @param words the page of words
   * @param common the commonest words, one a line; lines that begin with # are notes
   */
  Readability(String words, String common) {
    known = new HashSet<>();
    common.lines().filter(line -> !line.startsWith("#")).forEach(w -> known.addAll(forms(w)));
    for (WordList.Word word : WordList.of(words).all()) {
      Matcher part = LETTERS.matcher(word.name());
      while (part.find()) {
        known.addAll(forms(part.group()));
      }
    }
  }

  private static Set<String> forms(String word) {
    return WordForms.of(word.strip());
  }

  /** By the page of words in a folder that some state of the repository was laid out in. */
  static Readability of(Path top) throws IOException {
    return new Readability(
        Files.readString(top.resolve("docs/manual/words.md")), Files.readString(COMMON));
  }

  /** Every page and bundle of a folder that is there, with what was measured of it. */
  Map<String, Measured> all(Path top) throws IOException {
    Map<String, Measured> all = new LinkedHashMap<>();
    for (String page : PAGES) {
      Path file = top.resolve("docs/manual/" + page + ".md");
      if (Files.exists(file)) {
        all.put(page + ".md", measure(page(Files.readString(file))));
      }
    }
    for (String bundle : BUNDLES) {
      Path file = top.resolve("src/main/resources/blindlap/wording/" + bundle + ".properties");
      if (Files.exists(file)) {
        all.put(bundle + ".properties", measure(bundle(file)));
      }
    }
    return all;
  }

  /** The blocks of a page in Markdown, without code, pictures and addresses. */
  static List<String> page(String markdown) {
    String text = FENCE.matcher(markdown.replace("\r", "")).replaceAll("\n");
    text = COMMENT.matcher(INDENTED.matcher(text).replaceAll("")).replaceAll("");
    text = LINK.matcher(IMAGE.matcher(text).replaceAll("")).replaceAll("$1");
    text = CODE.matcher(text).replaceAll(ONE).replace("*", "").replaceAll("(?m)^> ?", "");
    text = text.replaceAll("(?m)^#+ .*$", "$0\n"); // a heading is a block of its own
    List<String> blocks = new ArrayList<>();
    for (String block : BLOCK.split("\n" + text)) {
      String plain = block.strip().replaceAll("^(?:[-*] |\\d+\\. |#+ )", "");
      boolean row = plain.startsWith("|");
      Stream.of(row ? plain.split("\\|") : new String[] {plain}).forEach(blocks::add);
    }
    return blocks;
  }

  /** The sentences of a bundle, with something in every place. */
  private static List<String> bundle(Path file) throws IOException {
    Properties properties = new Properties();
    try (Reader reader = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
      properties.load(reader);
    }
    return properties.stringPropertyNames().stream()
        .sorted()
        .map(key -> properties.getProperty(key).replace("''", "'"))
        .map(text -> COUNTED.matcher(text).replaceAll("$1"))
        .map(text -> PLACE.matcher(text).replaceAll(ONE))
        .toList();
  }

  /** What is to be said of blocks of text. */
  Measured measure(List<String> blocks) {
    int words = 0;
    int outside = 0;
    int most = 0;
    String longest = "";
    Map<String, Integer> strange = new LinkedHashMap<>();
    for (String block : blocks) {
      for (String sentence : SENTENCE.split(block.strip().replaceAll("\\s+", " "))) {
        int here = (int) WORD.matcher(sentence).results().count();
        if (here > most) {
          most = here;
          longest = sentence;
        }
      }
      Matcher word = LETTERS.matcher(block.toLowerCase(Locale.ROOT));
      while (word.find()) {
        words++;
        if (!knows(word.group().replace('’', '\''))) {
          outside++;
          strange.merge(word.group(), 1, Integer::sum);
        }
      }
    }
    List<String> often =
        strange.entrySet().stream()
            .sorted(Map.Entry.<String, Integer>comparingByValue(Comparator.reverseOrder()))
            .map(entry -> entry.getKey() + " " + entry.getValue())
            .toList();
    return new Measured(words, longest, most, words == 0 ? 0 : outside / (double) words, often);
  }

  /** A short form such as "isn't" or "rider's" is known by what stands before its apostrophe. */
  private boolean knows(String word) {
    return known.contains(word)
        || (word.indexOf('\'') > 0 && known.contains(word.substring(0, word.indexOf('\''))));
  }

  /**
   * Prints a table of all of them, and each one's longest sentence.
   *
   * @param args folder of a state of the repository, this one if there is none; then the folder
   *     whose page of words is taken, if it is another
   */
  public static void main(String[] args) throws IOException {
    Path top = Path.of(args.length == 0 ? "" : args[0]);
    Map<String, Measured> all = of(args.length < 2 ? top : Path.of(args[1])).all(top);
    StringBuilder out = new StringBuilder();
    out.append("| text | words | longest sentence | words outside |\n| --- | --- | --- | --- |\n");
    all.forEach(
        (name, m) ->
            out.append(
                String.format(
                    Locale.ROOT,
                    "| %s | %d | %d | %.1f %% |%n",
                    name,
                    m.words(),
                    m.longestWords(),
                    100 * m.outside())));
    all.forEach(
        (name, m) ->
            out.append(
                String.format(
                    "%n%s%n  %s%n  outside: %s%n",
                    name,
                    m.longest(),
                    m.strange().stream().limit(40).collect(Collectors.joining(", ")))));
    System.out.print(out);
  }
}
