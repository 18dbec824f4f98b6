package blindlap.docs;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * What sources and documents point at, and whether it is there. Sources cite a document as {@code
 * docs/x.md} and the name of an anchor; documents link to each other and to pictures with Markdown
 * links.
 */
final class Citations {
  private static final Pattern CITED = Pattern.compile("docs/([\\w./-]*\\w\\.md)(#[\\w-]*)?");
  private static final Pattern BY_NUMBER =
      Pattern.compile("docs/[\\w./-]*\\w\\.md`?,?[\\s*/#]+(?:section|chapter)\\s+\\d[\\d.]*");

  /** The name that the method's text had before it was part of the repository. */
  private static final Pattern UNSHIPPED =
      Pattern.compile("(?<![\\w.])METHOD(?:-\\d)?(?:\\.md|[\\s*/,]+(?:section|\\d)|'s )");

  private static final Pattern RUN = Pattern.compile("\\bblindlap((?:\\.[a-z]+)*\\.[A-Z]\\w*)");
  private static final Pattern OF_A_ROOM = Pattern.compile("`([a-z]+(?:\\.[a-z]+)*\\.[A-Z]\\w*)");
  private static final Pattern TEST_RUN = Pattern.compile("-Dtest=(\\w+)");

  private static final Pattern LINK = Pattern.compile("\\]\\(([^)\\s]+)(?:\\s+\"[^\"]*\")?\\)");
  private static final Pattern TAG = Pattern.compile("<(?:a|img)\\s[^>]*(?:href|src)=\"([^\"]+)\"");
  private static final Pattern ID = Pattern.compile("<a id=\"([^\"]+)\">");
  private static final Pattern HEADING = Pattern.compile("(?m)^#{1,6} +(.+?) *#*$");
  private static final Pattern FENCED = Pattern.compile("(?ms)^ *```.*?^ *```");
  private static final Pattern IN_LINE_CODE = Pattern.compile("`[^`\\n]+`");
  private static final Pattern ELSEWHERE = Pattern.compile("[a-z][a-z+.-]*:.*");

  private final Path top;
  private final Map<Path, Set<String>> anchors = new HashMap<>();

  /**
   * @param top the folder that holds docs
   */
  Citations(Path top) {
    this.top = top;
  }

  /** Faults of a source or document: "path:line: what". A test may name documents it makes up. */
  List<String> cited(String path, String text) {
    List<String> faults = new ArrayList<>();
    Matcher cited = CITED.matcher(text);
    while (cited.find()) {
      Path document = top.resolve("docs").resolve(cited.group(1));
      boolean there = Files.isRegularFile(document);
      if (!there && (cited.group(2) != null || !path.startsWith("src/test/java/"))) {
        faults.add(at(path, text, cited) + "no such document: " + cited.group());
      } else if (there && cited.group(2) != null) {
        String name = cited.group(2).substring(1);
        if (!anchors(document).contains(name)) {
          faults.add(at(path, text, cited) + "no such place: " + cited.group());
        } else if (!name.isEmpty() && Character.isDigit(name.charAt(0))) {
          faults.add(at(path, text, cited) + "cites a number that may change: " + cited.group());
        }
      }
    }
    for (Pattern old : List.of(BY_NUMBER, UNSHIPPED)) {
      Matcher matcher = old.matcher(text);
      while (matcher.find()) {
        String found = matcher.group().replaceAll("[\\s*]+", " ").strip();
        faults.add(at(path, text, matcher) + "cite by document and #name instead of: " + found);
      }
    }
    return faults;
  }

  /** Faults of the links of a document, which are relative to its own folder. */
  List<String> linked(String path, String text) {
    List<String> faults = new ArrayList<>();
    String prose = blanked(IN_LINE_CODE, blanked(FENCED, text));
    for (Pattern pattern : List.of(LINK, TAG)) {
      Matcher link = pattern.matcher(prose);
      while (link.find()) {
        String target = link.group(1);
        if (!ELSEWHERE.matcher(target).matches() && !leadsSomewhere(path, target)) {
          faults.add(at(path, text, link) + "link leads nowhere: " + target);
        }
      }
    }
    return faults;
  }

  /** Classes that a document or script names or runs, and that are not where it says. */
  List<String> classes(String path, String text) {
    List<String> faults = new ArrayList<>();
    for (Pattern pattern : List.of(RUN, OF_A_ROOM, TEST_RUN)) {
      Matcher named = pattern.matcher(text);
      while (named.find()) {
        String said = named.group(1).replaceFirst("^\\.", "");
        String name = said.replace('.', '/') + ".java";
        boolean there = pattern == TEST_RUN ? somewhere(name) : inARoom(name);
        boolean ours = pattern != OF_A_ROOM || isRoom(name.substring(0, name.indexOf('/')));
        if (ours && !there) {
          faults.add(at(path, text, named) + "no such class there: " + said);
        }
      }
    }
    return faults;
  }

  private boolean inARoom(String name) {
    return homes().anyMatch(home -> Files.isRegularFile(home.resolve(name)));
  }

  private boolean isRoom(String name) {
    return homes().anyMatch(home -> Files.isDirectory(home.resolve(name)));
  }

  private Stream<Path> homes() {
    return Stream.of("main", "test").map(kind -> top.resolve("src/" + kind + "/java/blindlap"));
  }

  private boolean somewhere(String name) {
    try (Stream<Path> files = Files.walk(top.resolve("src/test/java"))) {
      return files.anyMatch(file -> file.endsWith(name));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private boolean leadsSomewhere(String path, String target) {
    int hash = target.indexOf('#');
    String file = hash < 0 ? target : target.substring(0, hash);
    Path from = top.resolve(path);
    Path to = file.isEmpty() ? from : from.resolveSibling(file).normalize();
    return Files.exists(to)
        && (hash < 0
            || to.toString().endsWith(".md") && anchors(to).contains(target.substring(hash + 1)));
  }

  /**
   * What can be pointed at in a document: explicit names, and the headings as web pages name them.
   */
  static Set<String> anchorsOf(String text) {
    Set<String> names = new HashSet<>();
    String prose = blanked(FENCED, text);
    Matcher id = ID.matcher(prose);
    while (id.find()) {
      names.add(id.group(1));
    }
    Matcher heading = HEADING.matcher(prose);
    Map<String, Integer> seen = new HashMap<>();
    while (heading.find()) {
      String words = heading.group(1).replaceAll("\\[([^]]*)]\\([^)]*\\)", "$1");
      String slug =
          words
              .toLowerCase(Locale.ROOT)
              .replaceAll("[^\\p{L}\\p{N}\\p{M}_ -]", "")
              .replace(' ', '-');
      int before = seen.merge(slug, 1, Integer::sum) - 1;
      names.add(before == 0 ? slug : slug + "-" + before);
    }
    return names;
  }

  private Set<String> anchors(Path document) {
    return anchors.computeIfAbsent(document.normalize(), file -> anchorsOf(read(file)));
  }

  static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(file.toString(), e);
    }
  }

  /** The text with every match as spaces, so that places stay. */
  private static String blanked(Pattern pattern, String text) {
    return pattern.matcher(text).replaceAll(match -> match.group().replaceAll("[^\\n]", " "));
  }

  private static String at(String path, String text, Matcher matcher) {
    long line = text.substring(0, matcher.start()).chars().filter(c -> c == '\n').count() + 1;
    return path + ":" + line + ": ";
  }
}
