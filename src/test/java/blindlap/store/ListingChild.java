package blindlap.store;

import blindlap.session.SessionSummary;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;

/** Opens a notebook, lists, searches and opens sessions, and prints how long each took. */
final class ListingChild {
  private static final int REPEATS = 15;

  private ListingChild() {}

  /** Measures; args: notebook, number of sessions in it. */
  public static void main(String[] args) throws Exception {
    Path file = Path.of(args[0]);
    int sessions = Integer.parseInt(args[1]);
    long start = System.nanoTime();
    SqliteNotebook notebook = Books.open(file);
    long opened = System.nanoTime();
    List<SessionSummary> all = notebook.summaries();
    long listed = System.nanoTime();
    if (all.size() != sessions) {
      throw new IllegalStateException("listed " + all.size());
    }
    StringBuilder out = new StringBuilder();
    out.append(line("open, first in the process", (opened - start) / 1e6));
    out.append(line("list, first in the process", (listed - opened) / 1e6));
    out.append(line("list", median(notebook::summaries)));
    for (String words : List.of("lind", "oster ridge", "no such word", "2026 shock quarry 42")) {
      out.append(line("search \"" + words + "\"", median(() -> notebook.search(words))));
    }
    out.append(
        line(
            "open one session",
            median(() -> Books.state(notebook, ManySessions.session(sessions / 2)))));
    notebook.close();
    out.append(line("file, MB", Files.size(file) / 1e6));
    out.append(line("most memory of the process, MB", peak()));
    System.out.print(out);
  }

  private static String line(String what, double value) {
    return String.format(Locale.ROOT, "%-36s %9.1f%n", what, value);
  }

  private static double median(Callable<?> work) throws Exception {
    List<Double> times = new ArrayList<>();
    for (int i = 0; i < REPEATS; i++) {
      long start = System.nanoTime();
      work.call();
      times.add((System.nanoTime() - start) / 1e6);
    }
    Collections.sort(times);
    return times.get(REPEATS / 2);
  }

  /** Peak resident set, where the system tells it. */
  private static double peak() throws Exception {
    Path status = Path.of("/proc/self/status");
    if (!Files.exists(status)) {
      return Double.NaN;
    }
    return Files.readAllLines(status).stream()
        .filter(line -> line.startsWith("VmHWM:"))
        .mapToDouble(line -> Double.parseDouble(line.replaceAll("[^0-9]", "")) / 1000)
        .findFirst()
        .orElse(Double.NaN);
  }
}
