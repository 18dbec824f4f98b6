package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.TellingTestDay;
import blindlap.plan.TellingTask;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A telling run of 66 laps from paper alone, from its sheets to the key typed off them. */
class TellingPaperTest {
  private static final int TRIALS = 22;
  private static final Pattern ROW =
      Pattern.compile("\\b[A-Z]\\d{0,2}: [A-Z0-9 .,-]+ \\*[A-F0-9]{4}\\.");

  private @TempDir(factory = RamFolder.class) Path folder;
  private CommandLineSession day;
  private String id = "";

  @BeforeEach
  void commit() throws Exception {
    day = new CommandLineSession(folder);
    id = day.commit(TellingTestDay.levels(TellingTask.TRIANGLE, TRIALS));
  }

  private String ok(String... words) {
    CommandLineSession.Ran ran = day.run(words);
    assertThat(ran.code()).as(ran.err()).isZero();
    return ran.out();
  }

  private String refused(String... words) {
    CommandLineSession.Ran ran = day.run(words);
    assertThat(ran.code()).isEqualTo(ExitCode.BAD_INPUT);
    return ran.err();
  }

  /** The empty table with a cell of some rows filled in. */
  private List<String> form(String command) throws IOException {
    Path form = folder.resolve("form.csv");
    ok(command, id, "--form", form.toString());
    return new ArrayList<>(Files.readAllLines(form));
  }

  private String file(String name, List<String> lines) throws IOException {
    return Files.write(folder.resolve(name), lines).toString();
  }

  private static String with(String line, int column, String words) {
    List<String> cells = new ArrayList<>(List.of(line.split(";", -1)));
    cells.set(column, words);
    return String.join(";", cells);
  }

  /** The rows under "The key", as somebody types them. */
  private static String typedKey(Path sheet) throws IOException {
    try (PDDocument document = Loader.loadPDF(sheet.toFile())) {
      String text = new PDFTextStripper().getText(document);
      return ROW.matcher(text).results().map(r -> r.group()).collect(Collectors.joining("\n"));
    }
  }

  @Test
  void aRunFromItsSheetsToItsKey() throws IOException {
    Path out = folder.resolve("sheets");
    ok("sheets", id, "--out", out.toString(), "--helper");
    assertThat(ok("codes", id).lines().toList())
        .contains("trial  stint  code")
        .anyMatch(line -> line.startsWith("   22     64   "))
        .anyMatch(line -> line.startsWith("          66   "));

    List<String> typed = form("key-in");
    assertThat(typed.get(0)).isEqualTo("lap;code;answer;sureness;void;note");
    for (int trial = 1; trial <= TRIALS; trial++) {
      typed.set(3 * trial, with(typed.get(3 * trial), 2, String.valueOf(1 + trial % 3)));
    }
    typed.set(9, with(typed.get(9), 2, ""));
    typed.set(7, with(typed.get(7), 4, "wrong line"));
    String first = file("first.csv", typed);
    List<String> slip = new ArrayList<>(typed);
    slip.set(63, with(slip.get(63), 2, "3"));
    assertThat(refused("key-in", id, first, file("second.csv", slip)))
        .contains("Trial 21, lap 63, answer: first \"1\", then \"3\".", "Nothing was recorded.");
    List<String> both = new ArrayList<>(typed);
    both.set(9, with(both.get(9), 2, "2"));
    String wrong = file("both.csv", both);
    assertThat(refused("key-in", id, wrong, wrong))
        .startsWith("Line 10: Trial 3 has both a void and an answer,");
    // 64 laps, for the last two of the void trial were not ridden; 21 answers and the void.
    assertThat(ok("key-in", id, first, first)).contains("Saved 86 entries from paper.");

    List<String> helper = form("catch-up");
    assertThat(helper).hasSize(68);
    for (int i = 1; i < helper.size(); i++) {
      helper.set(i, with(helper.get(i), 3, i == 30 ? "A" : "as scheduled"));
    }
    assertThat(ok("catch-up", id, file("helper.csv", helper)))
        .contains("recorded: 67 stints. Without a record: 0.");
    assertThat(ok("close-day", id)).contains("64 laps");
    ok("close-review", id);

    String key = typedKey(out.resolve("helper-sheet.pdf"));
    assertThat(key.lines()).hasSize(2 + 5 + 9 + 8 + 2);
    String sheet = Files.writeString(folder.resolve("key.txt"), key).toString();
    String mistyped =
        Files.writeString(folder.resolve("slip.txt"), key.replaceFirst("O4: .", "O4: C"))
            .toString();
    assertThat(refused("unseal", id, "--from-sheet", mistyped)).startsWith("The sheet's row O4 ");
    assertThat(ok("unseal", id, "--from-sheet", sheet)).contains("Unsealed.");
  }
}
