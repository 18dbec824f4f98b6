package blindlap.architecture;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What may not stand in a file of the repository, and which files may lie at its top. */
final class Tidiness {
  private static final Set<String> AT_THE_TOP =
      Set.of(
          "LICENSE",
          "NOTICE",
          "README.md",
          "DEVELOPERS.md",
          "pom.xml",
          "src",
          "protocols",
          "sample-sessions",
          "docs",
          "blindlap",
          "blindlap.cmd");

  /** Kinds of files that people write; white space of other kinds is not looked at. */
  private static final Pattern WRITTEN =
      Pattern.compile(".*\\.(java|md|xml|css|properties|sql|json|ya?ml|py|R|sh|cmd)|blindlap");

  /** Files as others make them, read by tests; their white space is theirs. */
  private static final String FOREIGN = "src/test/resources/";

  // Put together from pieces, or this file would break its own rule.
  private static final Pattern UNFINISHED =
      Pattern.compile("\\b(TO" + "DO|FIX" + "ME|XX" + "X)\\b");
  private static final Pattern MACHINE_PATH =
      Pattern.compile("(?<![\\w.])(/(work|root|home|Users)/|[A-Z]:\\\\Users\\\\)\\S*");

  private Tidiness() {}

  /**
   * Names at the top of the repository that do not belong there; dot files, IDE files and target
   * may.
   */
  static List<String> strangers(Collection<String> names) {
    return names.stream()
        .filter(name -> !name.startsWith(".") && !name.equals("target") && !name.endsWith(".iml"))
        .filter(name -> !AT_THE_TOP.contains(name))
        .sorted()
        .toList();
  }

  /** One sentence for each fault of a file; none for a file that is not text. */
  static List<String> faults(String path, byte[] content) {
    String text = new String(content, StandardCharsets.UTF_8);
    List<String> found = new ArrayList<>();
    if (text.indexOf('\0') >= 0) {
      return found;
    }
    boolean spaces = WRITTEN.matcher(path).matches() && !path.startsWith(FOREIGN);
    String[] lines = text.split("\n", -1);
    for (int i = 0; i < lines.length; i++) {
      String where = path + ":" + (i + 1) + ": ";
      if (spaces) {
        addSpaces(where, path.endsWith(".cmd") ? lines[i].replace("\r", "") : lines[i], found);
      }
      addWords(where, lines[i], found);
    }
    return found;
  }

  private static void addSpaces(String where, String line, List<String> found) {
    if (line.indexOf('\t') >= 0) {
      found.add(where + "has a tab");
    }
    if (!line.equals(line.stripTrailing())) {
      found.add(where + "ends with a space or carriage return");
    }
  }

  private static void addWords(String where, String line, List<String> found) {
    Matcher word = UNFINISHED.matcher(line);
    if (word.find()) {
      found.add(where + "says " + word.group());
    }
    Matcher machine = MACHINE_PATH.matcher(line);
    if (machine.find()) {
      found.add(where + "names a place on one machine: " + machine.group());
    }
  }
}
