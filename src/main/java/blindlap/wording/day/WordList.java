package blindlap.wording.day;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The words of the manual with their meanings, as the page of words has them: the program carries
 * that page with it, so that no word is explained in two ways. It knows texts and no session.
 */
public final class WordList {
  private static final String PAGE = "/blindlap/manual/words.md";
  private static final Pattern ROW = Pattern.compile("(?m)^\\| (?!-)([^|]+) \\| ([^|]+) \\|$");
  private static final Pattern LINK = Pattern.compile("\\[([^]]*)]\\([^)]*\\)");
  private static final Pattern PART = Pattern.compile("[\\p{L}\\p{N}]+(?:[-'’][\\p{L}\\p{N}]+)*");

  /** The row that names the columns. */
  private static final String HEAD = "word";

  private final List<Word> all;
  private final Map<String, Word> byForm = new HashMap<>();
  private final int longest;

  /**
   * A word with its one meaning, as plain text.
   *
   * @param name one word, or several that belong together
   */
  public record Word(String name, String meaning) {}

  private WordList(List<Word> all) {
    this.all = List.copyOf(all);
    for (Word word : all) {
      byForm.put(word.name().toLowerCase(Locale.ROOT), word);
    }
    // A row of its own goes before the ending of another.
    for (Word word : all) {
      WordForms.of(word.name()).forEach(form -> byForm.putIfAbsent(form, word));
    }
    this.longest = all.stream().mapToInt(word -> parts(word.name()).size()).max().orElse(0);
  }

  /** The words of the page that comes with the program. */
  public static WordList bundled() {
    try (InputStream page =
        Objects.requireNonNull(WordList.class.getResourceAsStream(PAGE), PAGE)) {
      return of(new String(page.readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The words of a page with a table of two columns. */
  public static WordList of(String page) {
    List<Word> words = new ArrayList<>();
    Matcher row = ROW.matcher(page.replace("\r", ""));
    while (row.find()) {
      if (!row.group(1).strip().equals(HEAD)) {
        words.add(new Word(plain(row.group(1)), plain(row.group(2))));
      }
    }
    return new WordList(words);
  }

  private static String plain(String text) {
    return LINK.matcher(text).replaceAll("$1").replace("`", "").replace("*", "").strip();
  }

  /** All of them, as the page has them. */
  public List<Word> all() {
    return all;
  }

  /**
   * What was typed, searched for: first words that are it, then those that begin with it, that hold
   * it, and whose meaning does. Nothing typed finds all.
   */
  public List<Word> search(String typed) {
    String wanted = typed.strip().toLowerCase(Locale.ROOT);
    if (wanted.isEmpty()) {
      return all;
    }
    Optional<Word> form = Optional.ofNullable(byForm.get(wanted));
    List<Word> found = new ArrayList<>();
    List<Predicate<Word>> ways =
        List.of(
            word -> form.filter(word::equals).isPresent(),
            word -> name(word).startsWith(wanted),
            word -> name(word).contains(wanted),
            word -> word.meaning().toLowerCase(Locale.ROOT).contains(wanted));
    for (Predicate<Word> way : ways) {
      all.stream().filter(way).filter(word -> !found.contains(word)).forEach(found::add);
    }
    return found;
  }

  private static String name(Word word) {
    return word.name().toLowerCase(Locale.ROOT);
  }

  /**
   * The word of the list that a text is about: of those it holds the one of most words, and of
   * several the first.
   */
  public Optional<Word> in(String text) {
    List<String> parts = parts(text);
    for (int size = Math.min(longest, parts.size()); size > 0; size--) {
      for (int from = 0; from + size <= parts.size(); from++) {
        Word word = byForm.get(String.join(" ", parts.subList(from, from + size)));
        if (word != null) {
          return Optional.of(word);
        }
      }
    }
    return Optional.empty();
  }

  private static List<String> parts(String text) {
    List<String> parts = new ArrayList<>();
    Matcher part = PART.matcher(text.toLowerCase(Locale.ROOT));
    while (part.find()) {
      parts.add(part.group());
    }
    return parts;
  }
}
