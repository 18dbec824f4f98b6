package blindlap.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class SizesTest {
  /** From this length on a file says why it is one idea; else it is cut by idea. */
  private static final long NEAR_THE_LIMIT = 360;

  private static final Map<String, String> ONE_IDEA =
      Map.ofEntries(
          Map.entry(
              "screen/plan/PlanModel.java",
              "one page's properties and commands; judging, noise, rules and commit stand apart"),
          Map.entry(
              "screen/swap/SwapStintView.java", "one page, and what stands on it at each moment"),
          Map.entry(
              "screen/review/ReviewModel.java", "one page's stages, and what leads between them"),
          Map.entry("session/Folding.java", "every kind of entry, applied, a method each"),
          Map.entry("plan/Plan.java", "every field of a plan, and what follows from them"),
          Map.entry("plan/PlanJson.java", "every field of a plan, a line each"),
          Map.entry("store/SqliteNotebook.java", "what a notebook is asked for, a method each"),
          Map.entry("session/Fact.java", "every fact of a session, a record each"),
          Map.entry("screen/swap/SwapModel.java", "one page's phases, and what leads between them"),
          Map.entry("screen/swap/SwapWork.java", "everything the helper enters of one stint"),
          Map.entry(
              "screen/book/NotebookModel.java",
              "one page's properties and commands, and its answer to where one was"),
          Map.entry("screen/book/OldDayModel.java", "one page's properties and commands"),
          Map.entry("exchange/FactWriter.java", "every kind of entry, written, a method each"),
          Map.entry("session/EntryMeaning.java", "what every kind of entry may say, a method each"),
          Map.entry("session/DayCommands.java", "what may be recorded on the day, a method each"),
          Map.entry("session/SessionState.java", "everything that is known of one session"),
          Map.entry("wording/FindingWords.java", "every sentence on one measure of two setups"),
          Map.entry("ride/RideDay.java", "the one order of events of a rider's day"),
          Map.entry("screen/plan/CommitModel.java", "one way from a draft to a sealed session"),
          Map.entry("screen/ride/RidePage.java", "one page, laid out once"));

  @Test
  void aFileNearTheLimitSaysWhyItIsOneIdeaAndNoOtherDoes() throws IOException {
    Path sources = Path.of("src/main/java/blindlap");
    Set<String> near = new TreeSet<>();
    try (Stream<Path> files = Files.walk(sources)) {
      for (Path file :
          (Iterable<Path>) files.filter(f -> f.toString().endsWith(".java"))::iterator) {
        if (Files.readAllLines(file).size() > NEAR_THE_LIMIT) {
          near.add(sources.relativize(file).toString().replace('\\', '/'));
        }
      }
    }
    assertThat(near).isEqualTo(ONE_IDEA.keySet());
    assertThat(ONE_IDEA.values()).noneMatch(String::isBlank);
  }

  @Test
  void noFileAndNoMethodOfTheApplicationIsTooLong() {
    assertThat(Sources.application().units()).isNotEmpty();
    assertThat(Sizes.tooLong(Sources.application())).isEmpty();
  }

  @Test
  void aMethodOf40LinesPassesAndOneOf41IsNamedWithItsLine() {
    assertThat(tooLong("plan", "void walks() {\n" + statements(38) + "}\n")).isEmpty();
    assertThat(tooLong("plan", "void walks() {\n" + statements(39) + "}\n"))
        .containsExactly("/Broken.java:3: method walks has 41 lines, at most 40 are allowed");
  }

  @Test
  void theCommentOfAMethodDoesNotCountButItsAnnotationsDo() {
    String comment = "/**\n" + " * Words.\n".repeat(60) + " */\n";
    String method = "void walks() {\n" + statements(38) + "}\n";
    assertThat(tooLong("plan", comment + method)).isEmpty();
    assertThat(tooLong("plan", "@Deprecated\n" + method)).hasSize(1);
  }

  @Test
  void aPublishedAlgorithmInStatsMayHave60LinesAndNot61() {
    assertThat(tooLong("stats.order", "void walks() {\n" + statements(58) + "}\n")).isEmpty();
    assertThat(tooLong("stats.order", "void walks() {\n" + statements(59) + "}\n")).hasSize(1);
  }

  @Test
  void aConstructorCounts() {
    assertThat(tooLong("plan", "Broken() {\n" + statements(39) + "}\n"))
        .containsExactly("/Broken.java:3: a constructor has 41 lines, at most 40 are allowed");
  }

  @Test
  void aCompactConstructorOfARecordCounts() {
    assertThat(tooLong("plan", "record Pair(int a) {\nPair {\n" + statements(39) + "}\n}\n"))
        .containsExactly("/Broken.java:4: a constructor has 41 lines, at most 40 are allowed");
  }

  @Test
  void aLambdaInsideAMethodIsPartOfIt() {
    String lambda = "Runnable r = () -> {\n" + statements(20) + "};\n";
    assertThat(tooLong("plan", "void walks() {\n" + statements(17) + lambda + "}\n"))
        .containsExactly("/Broken.java:3: method walks has 41 lines, at most 40 are allowed");
  }

  @Test
  void aLambdaInAFieldAndAnInitialiserCountToo() {
    assertThat(tooLong("plan", "Runnable r = () -> {\n" + statements(39) + "};\n"))
        .containsExactly("/Broken.java:3: a lambda has 41 lines, at most 40 are allowed");
    assertThat(tooLong("plan", "static {\n" + statements(39) + "}\n"))
        .containsExactly("/Broken.java:3: an initialiser has 41 lines, at most 40 are allowed");
  }

  @Test
  void aFileOf400LinesPassesAndOneOf401IsNamed() {
    assertThat(tooLong("plan", fields(397))).isEmpty();
    assertThat(tooLong("plan", fields(398)))
        .containsExactly("/Broken.java:1: the file has 401 lines, at most 400 are allowed");
  }

  /** Two lines, the members, one line. */
  private static List<String> tooLong(String part, String members) {
    String text = "package blindlap." + part + ";\nclass Broken {\n" + members + "}\n";
    return Sizes.tooLong(Sources.of(text));
  }

  private static String statements(int lines) {
    return "System.nanoTime();\n".repeat(lines);
  }

  private static String fields(int lines) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < lines; i++) {
      text.append("int field").append(i).append(";\n");
    }
    return text.toString();
  }
}
