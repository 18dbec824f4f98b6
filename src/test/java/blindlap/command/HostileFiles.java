package blindlap.command;

import blindlap.seal.Fingerprint;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Data packages and files of sessions that somebody made to break or to deceive, from a seed, with
 * what must be true of the answer: a documented exit code, sentences and no trace, nothing left
 * half-written, and no finding but the right one without a word.
 */
final class HostileFiles {
  private static final String[] CELLS = {
    "",
    "99",
    "-5",
    "0",
    "1e999999999",
    "1e-999999999",
    "9".repeat(50),
    "abc",
    "true",
    "NaN",
    "=1+1",
    "Z",
    "\u0000",
    "2147483648",
    "traffic",
    "41.0000000000000000001"
  };
  private static final String[] VALUES = {
    "99",
    "-5",
    "0",
    "9".repeat(50),
    "2147483647",
    "99999999999999999999",
    "x",
    "",
    "1000000",
    "\u00bd"
  };
  private static final Pattern FIELD = Pattern.compile("\"([a-z_]+)\":\"([^\"\\\\]{0,40})\"");
  private static final Pattern NUMBER = Pattern.compile("\\d+(?:\\.\\d+)?");

  final Map<String, Integer> counts = new TreeMap<>();
  final List<String> broken = new ArrayList<>();
  private final Random random;
  private final Path folder;
  private final CommandLineSession day;
  private final Map<String, byte[]> whole = new TreeMap<>();
  private final String session;
  private final String text;
  private final String json;
  private int receivers;

  HostileFiles(Path folder, long seed) throws IOException {
    this.random = new Random(seed);
    this.folder = folder;
    day = new CommandLineSession(Files.createDirectory(folder.resolve("day")), seed);
    String id = day.commit(Plans.SMALL);
    day.run("record", id, day.file("laps.csv", Plans.laps(8)).toString());
    day.run("void", id, "3", "--reason", "puncture");
    day.run("close-day", id);
    day.run("close-review", id);
    day.run("unseal", id);
    day.run("amend", id, "--text", "The gauge read low.", "--reason", "found later");
    Path packed = folder.resolve("whole");
    day.run("export", id, "--out", packed.toString());
    try (Stream<Path> files = Files.list(packed)) {
      for (Path file : files.toList()) {
        whole.put(file.getFileName().toString(), Files.readAllBytes(file));
      }
    }
    session = string(whole.get("session.txt"));
    json = day.run("review", "--from", packed.toString(), "--json").out();
    text = day.run("review", "--from", packed.toString()).out();
    if (json.isEmpty() || text.isEmpty()) {
      throw new IllegalStateException("the whole package is not accepted");
    }
  }

  private static String string(byte[] bytes) {
    return new String(bytes, StandardCharsets.UTF_8);
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private <T> T any(List<T> list) {
    return list.get(random.nextInt(list.size()));
  }

  private String any(String[] list) {
    return list[random.nextInt(list.length)];
  }

  private void count(String what) {
    counts.merge(what, 1, Integer::sum);
  }

  /** One hostile package, reviewed. */
  void onePackage() throws IOException {
    Map<String, byte[]> files = new TreeMap<>(whole);
    boolean old = random.nextInt(6) == 0;
    if (old) {
      files.remove("session.txt");
      files.put("datapackage.json", bytes("{\"profile\":\"data-package\",\"resources\":[]}"));
    }
    String how = mutate(files);
    if (!old && random.nextBoolean()) {
      rehash(files);
      how += ", hashes made anew";
    }
    Path packed = folder.resolve("package");
    clear(packed);
    Files.createDirectories(packed);
    for (Map.Entry<String, byte[]> file : files.entrySet()) {
      Files.write(packed.resolve(file.getKey()), file.getValue());
    }
    boolean asJson = random.nextBoolean();
    CommandLineSession.Ran ran =
        asJson
            ? day.run("review", "--from", packed.toString(), "--json")
            : day.run("review", "--from", packed.toString());
    count("packages tried");
    boolean said = (ran.out() + ran.err()).contains("This package has no hashes");
    boolean right = asJson ? ran.out().equals(json) : ran.out().startsWith(withoutLast(text));
    if (!sound(ran)) {
      broken.add("package, " + how + ": " + ran);
    } else if (ran.code() != 0) {
      count("packages refused with " + ran.code());
    } else if (old && said) {
      count("packages without hashes answered with the sentence that they prove nothing");
    } else if (right) {
      count("packages accepted rightly");
    } else {
      broken.add("package, " + how + ", another answer: " + ran);
    }
  }

  /** The sentence on what is proven may differ with what else lies in the folder. */
  private static String withoutLast(String text) {
    List<String> lines = text.lines().toList();
    return String.join("\n", lines.subList(0, lines.size() - 1));
  }

  private String mutate(Map<String, byte[]> files) {
    List<String> names = List.copyOf(files.keySet());
    String name = any(names);
    String content = string(files.get(name));
    int kind = random.nextInt(9);
    if (kind <= 2) {
      name = any(names.stream().filter(each -> each.endsWith(".csv")).toList());
      files.put(name, bytes(cells(string(files.get(name)), kind)));
    } else if (kind == 3) {
      files.remove(name);
    } else if (kind == 4) {
      files.put(name, bytes(content.substring(0, random.nextInt(content.length() + 1))));
    } else if (kind == 5) {
      byte[] raw = files.get(name).clone();
      if (raw.length > 0) {
        raw[random.nextInt(raw.length)] ^= (byte) (1 + random.nextInt(255));
      }
      files.put(name, raw);
    } else if (kind == 6) {
      files.put(any(new String[] {"notes.txt", "extra.csv", "Record.csv"}), bytes("a,b\n1,2\n"));
    } else {
      name = any(names.stream().filter(each -> !each.endsWith(".csv")).toList());
      files.put(name, bytes(numbers(string(files.get(name)), kind)));
    }
    return "kind " + kind + " in " + name;
  }

  private String cells(String table, int kind) {
    List<String> lines = new ArrayList<>(Arrays.asList(table.split("\n", -1)));
    int row = random.nextInt(lines.size());
    if (kind == 0) {
      int other = random.nextInt(lines.size());
      String kept = lines.get(row);
      lines.set(row, lines.get(other));
      lines.set(other, kept);
    } else if (kind == 1 && random.nextInt(3) == 0) {
      lines.add(row, lines.get(row));
    } else {
      String[] cells = lines.get(row).split(",", -1);
      cells[random.nextInt(cells.length)] = any(CELLS);
      lines.set(row, String.join(",", cells));
    }
    return String.join("\n", lines);
  }

  private String numbers(String json, int kind) {
    Matcher found = NUMBER.matcher(json);
    List<int[]> places = new ArrayList<>();
    while (found.find()) {
      places.add(new int[] {found.start(), found.end()});
    }
    if (places.isEmpty()) {
      return json + "{";
    }
    int[] place = any(places);
    String other = kind == 7 ? any(CELLS) : any(new String[] {"\"x\"", "null", "[]", "{}", "7e7"});
    return json.substring(0, place[0]) + other + json.substring(place[1]);
  }

  /** Makes the hashes in the descriptor those of the files, as a forger would. */
  private static void rehash(Map<String, byte[]> files) {
    byte[] descriptor = files.get("datapackage.json");
    if (descriptor == null) {
      return;
    }
    String made = string(descriptor);
    for (Map.Entry<String, byte[]> file : files.entrySet()) {
      made =
          made.replaceFirst(
              "(?s)(\"path\" : \""
                  + Pattern.quote(file.getKey())
                  + "\".*?\"hash\" : \")sha256:[0-9a-f]{64}",
              "$1sha256:" + Fingerprint.sha256(file.getValue()).hex());
    }
    files.put("datapackage.json", bytes(made));
  }

  /** One hostile file of a session, brought in. */
  void oneSession() throws IOException {
    List<String> entries = new ArrayList<>(HostileSessions.entries(session));
    int at = random.nextInt(entries.size());
    int kind = random.nextInt(8);
    String file;
    if (kind <= 3) {
      entries.set(at, field(entries.get(at)));
      file = HostileSessions.rewritten(entries, random.nextBoolean());
    } else if (kind == 4) {
      entries.remove(at);
      file = HostileSessions.rewritten(entries, random.nextBoolean());
    } else if (kind == 5) {
      entries.add(at, entries.get(at));
      file = HostileSessions.rewritten(entries, random.nextBoolean());
    } else if (kind == 6) {
      file = session.substring(0, random.nextInt(session.length()));
    } else {
      int byteAt = random.nextInt(session.length());
      file =
          session.substring(0, byteAt) + (char) random.nextInt(256) + session.substring(byteAt + 1);
    }
    bring(
        file,
        "kind "
            + kind
            + " at entry "
            + (at + 1)
            + " "
            + entries.get(Math.min(at, entries.size() - 1)));
  }

  private void bring(String file, String how) throws IOException {
    Path home = Files.createDirectories(folder.resolve("receiver-" + receivers));
    CommandLineSession receiver = new CommandLineSession(home, 1_000L + receivers);
    Path moved = Files.writeString(folder.resolve("moved.txt"), file);
    CommandLineSession.Ran ran = receiver.run("bring-in", moved.toString());
    count("sessions tried");
    if (!sound(ran)) {
      broken.add("session, " + how + ": " + ran);
    } else if (ran.code() != 0) {
      count("sessions refused with " + ran.code());
      String brief = session.substring(session.indexOf("\"session\":\"") + 11).substring(0, 8);
      if (receiver.run("notebook").out().contains(brief) || part(home)) {
        broken.add("session, " + how + ", half of it is there");
      }
    } else {
      receivers++;
      whole(receiver, how, file.equals(session));
    }
  }

  private static boolean part(Path home) throws IOException {
    try (Stream<Path> all = Files.walk(home)) {
      return all.anyMatch(file -> file.toString().endsWith(".part"));
    }
  }

  /** What was brought in can be verified and asked for its finding without a stumble. */
  private void whole(CommandLineSession receiver, String how, boolean same) {
    CommandLineSession.Ran verified = receiver.run("notebook", "--verify");
    CommandLineSession.Ran review = receiver.run("review", "latest", "--json");
    CommandLineSession.Ran prints = receiver.run("fingerprint", "latest");
    CommandLineSession.Ran export =
        receiver.run("export", "latest", "--out", receiver.folder.resolve("out").toString());
    boolean fine =
        sound(verified) && sound(review) && sound(prints) && sound(export) && verified.code() == 0;
    if (fine && prints.code() == 0) {
      count(same ? "sessions accepted as they were" : "sessions accepted rightly");
    } else {
      broken.add("session, " + how + ", accepted: " + verified + review + prints + export);
    }
  }

  /** A documented exit code, and sentences without a trace. */
  private static boolean sound(CommandLineSession.Ran ran) {
    String all = ran.out() + ran.err();
    boolean traced =
        all.contains("Exception")
            || all.contains("\tat ")
            || all.contains("java.")
            || all.contains("jackson");
    boolean told =
        ran.code() == 0 || !ran.err().isBlank() && ran.out().isEmpty() || ran.code() == 1;
    return ran.code() >= 0 && ran.code() <= 3 && !traced && told;
  }

  private static void clear(Path folder) throws IOException {
    if (Files.exists(folder)) {
      try (Stream<Path> all = Files.walk(folder)) {
        for (Path file : all.sorted(Comparator.reverseOrder()).toList()) {
          Files.delete(file);
        }
      }
    }
  }

  private String field(String entry) {
    Matcher found = FIELD.matcher(entry);
    List<int[]> places = new ArrayList<>();
    while (found.find()) {
      if (!List.of("form", "notebook", "previous", "hash", "session").contains(found.group(1))) {
        places.add(new int[] {found.start(2), found.end(2)});
      }
    }
    int[] place = any(places);
    return entry.substring(0, place[0]) + any(VALUES) + entry.substring(place[1]);
  }
}
