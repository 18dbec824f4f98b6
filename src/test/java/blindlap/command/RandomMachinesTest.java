package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeSet;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Machines that recorded the same laps at random, by command: whatever one of them wrote down
 * counts or stands aside by name in review, JSON, report and package, whoever met whom first.
 */
class RandomMachinesTest {
  private static final List<String> MEASURES = List.of("lap time", "grip", "dabs");
  private static final String PLAN =
      Plans.SMALL.replace(
          "protocol:", "  - {name: dabs, kind: count, unit: a lap, better: lower}\nprotocol:");

  @TempDir Path folder;

  /** A value that a machine wrote down. */
  private record Written(int lap, String measure, String value) {}

  static LongStream seeds() {
    return LongStream.rangeClosed(1, Long.getLong("histories", 150) / 50);
  }

  private static CommandLineSession.Ran ok(CommandLineSession machine, String... arguments) {
    CommandLineSession.Ran ran = machine.run(arguments);
    assertThat(ran.err()).isEmpty();
    assertThat(ran.code()).isZero();
    return ran;
  }

  /** What a machine saw; all but the first miss a lap now and then, and any a value of one. */
  private static List<Written> written(Random random, boolean all) {
    List<Written> written = new ArrayList<>();
    for (int lap = 1; lap <= 8; lap++) {
      if (!all && random.nextInt(4) == 0) {
        continue;
      }
      written.add(new Written(lap, "lap time", 91 + random.nextInt(9) + "." + random.nextInt(3)));
      if (all || random.nextInt(4) > 0) {
        written.add(new Written(lap, "grip", String.valueOf(30 + random.nextInt(40))));
      }
      if (all || random.nextInt(3) > 0) {
        written.add(new Written(lap, "dabs", String.valueOf(random.nextInt(4))));
      }
    }
    return written;
  }

  private static String csv(List<Written> written) {
    Map<Integer, Map<String, String>> laps = new LinkedHashMap<>();
    for (Written each : written) {
      laps.computeIfAbsent(each.lap(), any -> new LinkedHashMap<>())
          .put(each.measure(), each.value());
    }
    StringBuilder csv = new StringBuilder("lap;" + String.join(";", MEASURES) + "\n");
    laps.forEach(
        (lap, values) -> {
          csv.append(lap);
          MEASURES.forEach(measure -> csv.append(';').append(values.getOrDefault(measure, "")));
          csv.append('\n');
        });
    return csv.toString();
  }

  /** Every machine brings in every other, in any order, so that all know all. */
  private static void meet(Random random, List<CommandLineSession> machines) {
    List<CommandLineSession[]> meetings = new ArrayList<>();
    for (CommandLineSession one : machines) {
      for (CommandLineSession other : machines) {
        if (one != other) {
          meetings.add(new CommandLineSession[] {one, other});
        }
      }
    }
    for (int twice = 0; twice < 2; twice++) {
      Collections.shuffle(meetings, random);
      meetings.forEach(m -> ok(m[0], "bring-in", m[1].notebook.toString()));
    }
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void whatever_a_machine_wrote_down_counts_or_stands_aside_on_every_surface(long seed)
      throws IOException {
    Random random = new Random(seed * 7907);
    List<CommandLineSession> machines = new ArrayList<>();
    for (int i = 0; i < 2 + random.nextInt(2); i++) {
      Path own = Files.createDirectory(folder.resolve("machine" + i));
      machines.add(new CommandLineSession(own, 10 * seed + i));
    }
    String session = machines.get(0).commit(PLAN);
    for (CommandLineSession machine : machines.subList(1, machines.size())) {
      ok(machine, "bring-in", machines.get(0).notebook.toString());
    }
    List<Written> all = new ArrayList<>();
    for (CommandLineSession machine : machines) {
      boolean first = machine == machines.get(0);
      List<Written> written = written(random, first);
      all.addAll(written);
      ok(machine, "record", session, machine.file("laps.csv", csv(written)).toString());
    }
    meet(random, machines);
    CommandLineSession closing = machines.get(random.nextInt(machines.size()));
    closing.types(machines.get(0).phrase());
    String blind = ok(closing, "close-day", session).out();
    ok(closing, "close-review", session);
    ok(closing, "unseal", session);
    meet(random, machines);

    Map<String, String> told = surfaces(closing, session);
    for (CommandLineSession machine : machines) {
      assertThat(ok(machine, "review", session).out()).isEqualTo(told.get("review"));
    }
    assertThat(notInSight(told, blind, all)).as("seed %d", seed).isEmpty();
    assertThat(told.get("review")).contains("machines recorded different values");
  }

  private Map<String, String> surfaces(CommandLineSession machine, String session)
      throws IOException {
    Map<String, String> told = new LinkedHashMap<>();
    told.put("review", ok(machine, "review", session).out());
    told.put("JSON", ok(machine, "review", session, "--json").out());
    ok(machine, "report", session, "--out", folder.resolve("report").toString());
    try (Stream<Path> files = Files.list(folder.resolve("report"))) {
      Path html = files.filter(f -> f.toString().endsWith(".html")).findFirst().orElseThrow();
      told.put("report", Files.readString(html).replaceAll("<[^>]*>", "\n"));
    }
    Path out = folder.resolve("package");
    ok(machine, "export", session, "--out", out.toString());
    told.put("record.csv", Files.readString(out.resolve("record.csv")));
    told.put("laps.csv", Files.readString(out.resolve("laps.csv")));
    told.put("package's review", ok(machine, "review", "--from", out.toString()).out());
    return told;
  }

  /** Values that some surface neither counts nor names as set aside, with that surface. */
  private static TreeSet<String> notInSight(
      Map<String, String> told, String blind, List<Written> all) {
    TreeSet<String> missing = new TreeSet<>();
    for (Written each : all) {
      String measure = each.measure();
      long apart =
          all.stream()
              .filter(w -> w.lap() == each.lap() && w.measure().equals(measure))
              .map(w -> Double.valueOf(w.value()))
              .distinct()
              .count();
      if (apart == 1) {
        continue;
      }
      // Two values: each stands in the line of its lap, whichever counts.
      String number = String.valueOf(Double.valueOf(each.value())).replaceAll("\\.0$", "");
      String word = "(?<![0-9.])" + java.util.regex.Pattern.quote(number) + "(?![0-9]|\\.[0-9])";
      String line =
          "Lap " + each.lap() + ", " + measure + ": machines recorded different values\\..*" + word;
      for (String where : List.of("review", "report", "package's review")) {
        seen(missing, where, told.getOrDefault(where, ""), line, each);
      }
      String typed =
          measure.equals("lap time")
              ? number.replaceAll("^9", "1:3").replaceAll("^(1:3[0-9])$", "$1.0")
              : number;
      seen(
          missing,
          "close-day",
          blind,
          line.substring(0, line.length() - word.length())
              + "(?<![0-9.])"
              + java.util.regex.Pattern.quote(typed)
              + "(?![0-9]|\\.[0-9])",
          each);
      seen(
          missing,
          "record.csv",
          told.getOrDefault("record.csv", ""),
          "(counts|set_aside)," + each.lap() + "," + each.lap() + "," + measure + ",.*" + word,
          each);
      seen(
          missing,
          "JSON",
          told.getOrDefault("JSON", ""),
          "two_values(?s:.*)\"" + number + "\"",
          each);
    }
    return missing;
  }

  private static void seen(
      TreeSet<String> missing, String where, String text, String pattern, Written each) {
    if (!java.util.regex.Pattern.compile(pattern).matcher(text).find()) {
      missing.add(where + ": " + each);
    }
  }
}
