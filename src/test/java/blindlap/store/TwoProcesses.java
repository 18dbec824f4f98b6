package blindlap.store;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.session.Chains;
import blindlap.session.StoredEntry;
import blindlap.session.day.SessionId;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** Two processes that append to one notebook at once, and what must be there afterwards. */
final class TwoProcesses {
  private TwoProcesses() {}

  /** Runs them and tells how many entries each wrote. */
  static String append(Path folder, int seconds) throws IOException, InterruptedException {
    Path file = folder.resolve("notebook.blindlap");
    SessionId session = Days.session(1);
    try (SqliteNotebook notebook = Books.open(file)) {
      Books.put(
          notebook, session, Days.committed(Days.plan("R. Lind", "Quarry loop", 8), session, 1));
    }
    List<Process> two = new ArrayList<>();
    for (String name : List.of("helper", "rider")) {
      two.add(
          new ProcessBuilder(
                  Kills.command(
                      AppendingChild.class, file.toString(), name, "" + seconds, session.text()))
              .redirectErrorStream(true)
              .start());
    }
    List<List<String>> said = new ArrayList<>();
    for (Process one : two) {
      String text = new String(one.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      assertThat(one.waitFor()).as(text).isZero();
      said.add(text.lines().toList());
    }
    try (SqliteNotebook notebook = Books.open(file)) {
      assertThat(notebook.verify().problems()).isEmpty();
      List<StoredEntry> entries = notebook.entries(session);
      assertThat(Chains.problems(session, entries)).isEmpty();
      Set<String> found =
          entries.stream().map(entry -> "saved " + entry.hash().hex()).collect(Collectors.toSet());
      int acknowledged = 0;
      for (List<String> lines : said) {
        assertThat(lines.get(lines.size() - 1)).startsWith("moved on");
        List<String> saved = lines.subList(0, lines.size() - 1);
        assertThat(found).containsAll(saved);
        assertThat(saved).as("each had its turns").isNotEmpty();
        acknowledged += saved.size();
      }
      assertThat(entries).as("nothing lost, nothing twice").hasSize(1 + acknowledged);
    }
    return "%d and %d entries; %s, %s times the session had moved on"
        .formatted(
            said.get(0).size() - 1,
            said.get(1).size() - 1,
            last(said.get(0)).substring("moved on ".length()),
            last(said.get(1)).substring("moved on ".length()));
  }

  private static String last(List<String> lines) {
    return lines.get(lines.size() - 1);
  }
}
