package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Mangled plans and files of laps against one oracle: the exit code is a documented one, what is
 * said is sentences, nothing is half-written, a refused file leaves the notebook as it was, and
 * what is accepted stands there as it was typed. Sixty in every build, more with {@code
 * -Dmangled=1000}.
 */
class MangledFilesTest {
  private static final int FILES = Integer.getInteger("mangled", 60);

  private static final Pattern JAVA =
      Pattern.compile(
          "\\bat [a-z]+\\.|Exception|Error\\b|java\\.|blindlap\\.[a-z]|null\\b|\\[B@|has made a mistake");

  private @TempDir(factory = RamFolder.class) Path folder;
  private int refused;
  private int accepted;
  private final List<String> broken = new ArrayList<>();

  @Test
  void noPlanBreaksTheProgram() throws IOException {
    for (int i = 0; i < FILES; i++) {
      CommandLineSession day =
          new CommandLineSession(Files.createDirectory(folder.resolve("p" + i)));
      day.run("notebook");
      byte[] bytes = new MangledFile(i, true).of(Plans.SMALL);
      Path file = Files.write(day.folder.resolve("plan.yaml"), bytes);
      judge("plan " + i, day, bytes, () -> day.run("commit", file.toString()), this::committed);
    }
    told("plans");
  }

  @Test
  void noFileOfLapsBreaksTheProgram() throws IOException {
    CommandLineSession first =
        new CommandLineSession(Files.createDirectory(folder.resolve("laps")));
    String session = first.commit(Plans.SMALL);
    byte[] notebook = Files.readAllBytes(first.notebook);
    for (int i = 0; i < FILES; i++) {
      Path place = Files.createDirectory(folder.resolve("l" + i));
      CommandLineSession day = new CommandLineSession(place);
      Files.write(day.notebook, notebook);
      String good =
          Plans.laps(8).replace("grip\n", "grip;note\n").replaceAll("(?m)(\\d)$", "$1;a note");
      byte[] bytes = new MangledFile(i, false).of(good);
      Path file = Files.write(place.resolve("laps.csv"), bytes);
      judge(
          "laps " + i,
          day,
          bytes,
          () -> day.run("record", session, file.toString()),
          this::recorded);
    }
    told("files of laps");
  }

  private interface Accepted {
    /** What is wrong with a file that was accepted; empty if nothing is. */
    String wrong(CommandLineSession day, byte[] bytes);
  }

  private void judge(
      String name,
      CommandLineSession day,
      byte[] bytes,
      java.util.function.Supplier<CommandLineSession.Ran> command,
      Accepted whenAccepted)
      throws IOException {
    byte[] before = Files.readAllBytes(day.notebook);
    List<String> files = names(day.folder);
    long start = System.nanoTime();
    CommandLineSession.Ran ran = command.get();
    long seconds = (System.nanoTime() - start) / 1_000_000_000;
    String said = ran.out() + ran.err();
    List<String> wrong = new ArrayList<>();
    if (seconds > 20) {
      wrong.add("took " + seconds + " s");
    }
    if (JAVA.matcher(said).find()) {
      wrong.add("words of the program: " + said);
    }
    if (said.codePoints().anyMatch(c -> c != '\n' && c != '\t' && Character.isISOControl(c))) {
      wrong.add("control characters");
    }
    if (!names(day.folder).equals(files)) {
      wrong.add("left files: " + names(day.folder));
    }
    if (ran.code() == ExitCode.DONE) {
      String why = whenAccepted.wrong(day, bytes);
      wrong.addAll(why.isEmpty() ? List.of() : List.of(why));
      accepted++;
    } else {
      refused++;
      if (ran.code() != ExitCode.BAD_INPUT) {
        wrong.add("exit code " + ran.code() + ": " + said);
      }
      if (ran.err().isBlank() || ran.err().lines().count() > 21) {
        wrong.add("said in " + ran.err().lines().count() + " lines");
      }
      if (!java.util.Arrays.equals(before, Files.readAllBytes(day.notebook))) {
        wrong.add("the notebook was changed");
      }
    }
    if (!wrong.isEmpty()) {
      broken.add(name + ": " + wrong);
    }
  }

  private static List<String> names(Path folder) throws IOException {
    try (Stream<Path> all = Files.list(folder)) {
      return all.map(path -> String.valueOf(path.getFileName()))
          .filter(name -> !name.endsWith("-backups") && !name.endsWith("-journal"))
          .sorted()
          .toList();
    }
  }

  /** What a plan was accepted as, compared with its bytes by other means than the reader's own. */
  private String committed(CommandLineSession day, byte[] bytes) {
    String text = new String(bytes, StandardCharsets.UTF_8);
    if (!java.util.Arrays.equals(text.getBytes(StandardCharsets.UTF_8), bytes)) {
      return "not UTF-8, but accepted";
    }
    if (text.codePoints().anyMatch(c -> c < ' ' && c != '\n' && c != '\t' && c != '\r')) {
      return "a control character was accepted";
    }
    String listed = day.run("notebook").out();
    return listed.contains("Shock") ? "" : "accepted, but not listed: " + listed;
  }

  /** Times that were accepted are those that stand in the file, read by other means. */
  private String recorded(CommandLineSession day, byte[] bytes) {
    String text = new String(bytes, StandardCharsets.UTF_8);
    if (!java.util.Arrays.equals(text.getBytes(StandardCharsets.UTF_8), bytes)) {
      return "not UTF-8, but accepted";
    }
    if (text.contains("1e") && text.lines().anyMatch(line -> line.matches("\\d+;[^;]*1e.*"))) {
      return "an exponent was accepted as a time";
    }
    if (text.codePoints().anyMatch(c -> c < ' ' && c != '\n' && c != '\t' && c != '\r')) {
      return "a control character was accepted";
    }
    Path out = day.folder.resolve("package");
    day.run("export", "latest", "--out", out.toString());
    try {
      List<String> kept = Files.readAllLines(out.resolve("laps.csv"));
      int time = List.of(kept.get(0).split(",")).indexOf("lap time");
      Map<String, BigDecimal> typed = text.contains("\"") ? Map.of() : times(text);
      for (String line : kept.subList(1, kept.size())) {
        String[] cells = line.split(",", -1);
        BigDecimal wanted = typed.get(cells[0]);
        if (wanted != null && wanted.compareTo(new BigDecimal(cells[time])) != 0) {
          return "lap " + cells[0] + " was typed " + wanted + " and is " + cells[time];
        }
      }
      return "";
    } catch (IOException e) {
      return "no package: " + e.getMessage();
    }
  }

  /** The times of a file without quotes, read by splitting alone. */
  private static Map<String, BigDecimal> times(String text) {
    List<String> lines = text.replace("\uFEFF", "").lines().filter(l -> !l.isBlank()).toList();
    String header = lines.get(0);
    String separator = header.contains(";") ? ";" : header.contains("\t") ? "\t" : ",";
    List<String> names = List.of(header.split(separator));
    Map<String, BigDecimal> times = new HashMap<>();
    for (String line : lines.subList(1, lines.size())) {
      String[] cells = line.split(separator, -1);
      String[] time = cells[names.indexOf("lap time")].strip().replace(',', '.').split(":");
      if (!time[0].isEmpty()) {
        BigDecimal seconds = BigDecimal.ZERO;
        for (String part : time) {
          seconds = seconds.multiply(BigDecimal.valueOf(60)).add(new BigDecimal(part));
        }
        times.put(cells[names.indexOf("lap")].strip(), seconds);
      }
    }
    return times;
  }

  private void told(String what) {
    System.out.printf(
        "%s: %d tried, %d refused, %d accepted, %d broken%n",
        what, FILES, refused, accepted, broken.size());
    assertThat(broken.stream().map(each -> each.substring(0, Math.min(300, each.length()))))
        .isEmpty();
    assertThat(refused).isPositive();
    assertThat(accepted).isPositive();
  }
}
