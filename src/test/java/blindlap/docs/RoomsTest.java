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
import org.junit.jupiter.api.io.TempDir;

/** Every room says at its door what it is for, and the table for contributors knows it. */
class RoomsTest {
  private static final Path HOME = Path.of("src/main/java/blindlap");
  private static final Pattern SAID = Pattern.compile("(?s)/\\*\\*(.{80,})\\*/.*?\\bpackage ");
  private static final Pattern ROW = Pattern.compile("(?m)^\\| ((?:`[a-z.]+`(?:, )?)+) \\|");
  private static final Pattern NAME = Pattern.compile("`([a-z.]+)`");

  @Test
  void everyRoomSaysWhatItIsForAndWhoMayComeIn() throws IOException {
    assertThat(rooms(HOME)).hasSizeGreaterThan(30);
    assertThat(silent(HOME)).as("rooms without package-info.java or without a word").isEmpty();
  }

  @Test
  void aRoomThatSaysNothingIsNamed(@TempDir Path home) throws IOException {
    file(home, "A.java", "class A {}");
    file(home, "package-info.java", "/** One. */\npackage blindlap;");
    file(home, "plan/B.java", "class B {}");
    file(home, "plan/package-info.java", "/** " + "What for? ".repeat(9) + "*/\npackage b;");
    file(home, "stats/order/C.java", "class C {}");

    assertThat(rooms(home)).containsExactly("", "plan", "stats.order");
    assertThat(silent(home)).containsExactly("", "stats.order");
  }

  @Test
  void theTableForContributorsNamesEveryRoomAndNoOther() throws IOException {
    List<String> rooms = new ArrayList<>(rooms(HOME));
    rooms.remove("");
    assertThat(named(Citations.read(Path.of("DEVELOPERS.md"))))
        .containsExactlyInAnyOrderElementsOf(rooms);
  }

  @Test
  void roomsAreReadFromTheFirstColumnOfATable() {
    assertThat(named("| room | what |\n| --- | --- |\n| `a`, `b.c` | not `d` |\n| `Main` | |\n"))
        .containsExactly("a", "b.c");
  }

  private static void file(Path home, String name, String text) throws IOException {
    Path file = home.resolve(name);
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
  }

  private static List<String> named(String text) {
    List<String> names = new ArrayList<>();
    Matcher row = ROW.matcher(text);
    while (row.find()) {
      Matcher name = NAME.matcher(row.group(1));
      while (name.find()) {
        names.add(name.group(1));
      }
    }
    return names;
  }

  /** Folders that hold a source, as names of packages below the root. */
  private static List<String> rooms(Path home) throws IOException {
    try (Stream<Path> files = Files.walk(home)) {
      return files
          .filter(file -> file.toString().endsWith(".java"))
          .filter(file -> !file.endsWith("package-info.java"))
          .map(file -> home.relativize(file.getParent()).toString().replaceAll("[/\\\\]", "."))
          .distinct()
          .sorted()
          .toList();
    }
  }

  private static List<String> silent(Path home) throws IOException {
    List<String> silent = new ArrayList<>();
    for (String room : rooms(home)) {
      Path info = home.resolve(room.replace('.', '/')).resolve("package-info.java");
      if (!Files.isRegularFile(info) || !SAID.matcher(Citations.read(info)).find()) {
        silent.add(room);
      }
    }
    return silent;
  }
}
