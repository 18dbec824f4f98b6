package blindlap.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import blindlap.exchange.EntryText;
import blindlap.exchange.SessionFile;
import blindlap.plan.Plan;
import blindlap.session.Fact;
import blindlap.session.FactKinds;
import blindlap.session.StoredEntry;
import blindlap.session.day.SessionId;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What docs/file-format.md says is what the program does. */
class FileFormatDocumentTest {
  private static final Path DOCUMENT = Path.of("docs", "file-format.md");
  private static final Pattern EXAMPLE =
      Pattern.compile("^([A-Z][A-Za-z]+) (\\{.*\\})$", Pattern.MULTILINE);
  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir private Path folder;

  private static String document() throws IOException {
    return Files.readString(DOCUMENT);
  }

  private static Map<String, String> examples() throws IOException {
    Map<String, String> examples = new TreeMap<>();
    Matcher example = EXAMPLE.matcher(document());
    while (example.find()) {
      examples.put(example.group(1), example.group(2));
    }
    return examples;
  }

  private static String wholeEntry() throws IOException {
    String text = document();
    int start = text.indexOf("{\"at\":");
    return text.substring(start, text.indexOf("```", start)).replace("\n", "");
  }

  @Test
  void the_whole_entry_on_the_page_is_one() throws IOException {
    assertThat(EntryText.read(wholeEntry()).entry().fact()).isInstanceOf(Fact.NoteWritten.class);
  }

  @Test
  void there_is_an_example_of_every_kind_with_exactly_its_fields() throws IOException {
    Map<String, String> examples = examples();
    Map<String, JsonNode> written = new TreeMap<>();
    try (var in =
        FileFormatDocumentTest.class.getResourceAsStream("/blindlap/exchange/entries-1.txt")) {
      for (String text : new String(in.readAllBytes(), StandardCharsets.UTF_8).split("\n")) {
        JsonNode entry = JSON.readTree(text);
        written.put(entry.get("kind").textValue(), entry.get("body"));
      }
    }
    for (Class<?> kind : FactKinds.all()) {
      String name = kind.getSimpleName();
      assertThat(examples).containsKey(name);
      assertThat(fields(JSON.readTree(examples.get(name))))
          .as(name)
          .isEqualTo(fields(written.get(name)));
    }
  }

  private static TreeSet<String> fields(JsonNode node) {
    TreeSet<String> names = new TreeSet<>();
    node.properties().forEach(field -> names.add(field.getKey()));
    if (node.path("key").isObject()) {
      node.get("key").properties().forEach(field -> names.add("key." + field.getKey()));
    }
    return names;
  }

  @Test
  void every_example_that_is_not_cut_is_read_as_it_stands() throws IOException {
    List<String> read = new ArrayList<>();
    for (Map.Entry<String, String> example : examples().entrySet()) {
      if (!example.getValue().contains("…")) {
        String text =
            wholeEntry()
                .replace(
                    "{\"lap\":\"1\",\"stint\":\"3\",\"text\":\"wind from the west\"}",
                    example.getValue())
                .replace("\"NoteWritten\"", "\"" + example.getKey() + "\"");
        assertThat(EntryText.kind(EntryText.read(text).entry())).isEqualTo(example.getKey());
        read.add(example.getKey());
      }
    }
    // Those with what is encrypted, or was, are cut: commit, handling, look, masks and opening.
    assertThat(read).hasSize(FactKinds.all().size() - 5);
  }

  @Test
  void versions_and_names_on_the_page_are_those_of_the_program() throws IOException {
    assertThat(document())
        .contains(EntryText.VERSION, SessionFile.VERSION, SummaryTable.FORM)
        .contains("(`PRAGMA user_version`), 4 bytes, big-endian | " + NotebookFile.VERSION + " |")
        .contains(String.valueOf(NotebookFile.APPLICATION_ID));
    Path file = folder.resolve("notebook.blindlap");
    Books.open(file).close();
    byte[] header = Files.readAllBytes(file);
    assertThat(new String(header, 68, 4, StandardCharsets.US_ASCII)).isEqualTo("Blap");
    assertThat(header[63]).isEqualTo((byte) NotebookFile.VERSION);
  }

  @Test
  void the_program_on_the_page_reads_and_checks_a_notebook() throws Exception {
    Path file = folder.resolve("notebook.blindlap");
    int entries = makeNotebook(file);
    String said = run(file);
    assertThat(said)
        .contains(" R. Lind on Quarry loop")
        .contains("stint 2 lap 1 grip")
        .endsWith(entries + " entries in 3 chains verify\n");
    sessionFiles(file);
    Books.sql(
        file,
        "DROP TRIGGER entry_is_not_changed",
        "UPDATE entry SET text = replace(text, 'no rain', 'rain') WHERE kind = 'NoteWritten'");
    assertThat(run(file)).contains("an entry was changed");
  }

  private void sessionFiles(Path notebook) throws Exception {
    SessionId session = Days.session(1);
    String text;
    try (SqliteNotebook open = Books.open(notebook)) {
      text = SessionFile.text(session, open.entries(session));
    }
    Path moved = folder.resolve("moved.session.txt");
    Files.writeString(moved, "\uFEFF" + text.replace("\n", "\r\n") + "\r\n");
    assertThat(run(moved))
        .contains("stint 2 lap 1 grip")
        .endsWith("16 entries in 2 chains verify\n");
    Files.writeString(moved, text.replace("no rain", "rain"));
    assertThat(run(moved)).contains("the file was changed");
    Files.writeString(moved, text.substring(0, text.lastIndexOf("{\"entries\"")));
    assertThat(run(moved)).contains("the file was cut off");
  }

  private int makeNotebook(Path file) throws IOException {
    Plan plan = Days.plan("R. Lind", "Quarry loop", 8);
    SessionId session = Days.session(1);
    SessionId second = Days.session(2);
    try (SqliteNotebook notebook = Books.open(file);
        SqliteNotebook other = Books.open(folder.resolve("other.blindlap"), 2)) {
      Books.put(notebook, session, Days.committed(plan, session, 1));
      Books.put(notebook, second, Days.committed(plan, second, 2));
      other.addEntries(notebook.entries(session));
      Books.put(other, session, Days.lap(plan, 1, new Random(1)));
      notebook.addEntries(other.entries(session));
      Books.put(notebook, session, Days.lap(plan, 2, new Random(2)));
      Fact note =
          new Fact.NoteWritten(
              new blindlap.session.day.LapId(2, 1), "no rain \"yet\" – \u2028 Ä \u0001 🚵 \\ \t");
      List<StoredEntry> last = Books.put(notebook, session, note);
      assertThat(last).hasSize(1);
      return notebook.entries(session).size() + notebook.entries(second).size();
    }
  }

  private String run(Path file) throws Exception {
    String text = document();
    int start = text.indexOf("```python\n") + "```python\n".length();
    Path program = folder.resolve("reader.py");
    Files.writeString(program, text.substring(start, text.indexOf("```\n", start)));
    Process python;
    try {
      ProcessBuilder builder =
          new ProcessBuilder("python3", program.toString(), file.toString())
              .redirectErrorStream(true);
      builder.environment().put("PYTHONIOENCODING", "utf-8");
      python = builder.start();
    } catch (IOException absent) {
      assumeTrue(false, "python3 is not on this machine");
      return "";
    }
    String said = new String(python.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(python.waitFor(60, TimeUnit.SECONDS)).isTrue();
    return said;
  }
}
