package blindlap.command;

import java.io.ByteArrayOutputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Files as accidents, editors and malice leave them, made of a good one; a seed gives them again.
 */
final class MangledFile {
  private static final List<String> NUMBERS =
      List.of(
          "1e999",
          "-1e999",
          "1e-999",
          "99999999999999999999",
          "-0",
          "NaN",
          "Infinity",
          "0x10",
          "1_000",
          "2147483648",
          "999999999",
          "1,5",
          "1.2.3",
          "٣",
          "1e400000000");

  private static final List<String> DATES =
      List.of(
          "9999999-01-01",
          "+999999999-12-31",
          "-999999999-01-01",
          "2026-02-30",
          "0000-00-00",
          "2026-11-14T09:00",
          "99:99",
          "24:00");

  private final SplittableRandom random;
  private final boolean plan;

  MangledFile(long seed, boolean plan) {
    this.random = new SplittableRandom(seed);
    this.plan = plan;
  }

  private int below(int bound) {
    return random.nextInt(Math.max(1, bound));
  }

  private String one(List<String> of) {
    return of.get(below(of.size()));
  }

  /** One to three accidents. */
  byte[] of(String good) {
    byte[] bytes = once(good);
    for (int more = below(3); more > 0; more--) {
      bytes = once(new String(bytes, StandardCharsets.UTF_8));
    }
    return bytes;
  }

  private byte[] once(String text) {
    return switch (below(14)) {
      case 0 -> flipped(utf8(text));
      case 1 -> text.replace('a', 'ä').getBytes(StandardCharsets.ISO_8859_1);
      case 2 -> text.getBytes(one(List.of("a", "b")).equals("a") ? wide("UTF-16") : wide("UTF-32"));
      case 3 -> utf8("\uFEFF".repeat(1 + below(3)) + text);
      case 4 -> utf8(inserted(text, one(List.of("\0", "\u0007", "\u001B[2J", "\u202E", "\u0085"))));
      case 5 -> utf8(inNumbers(text, NUMBERS));
      case 6 -> utf8(inNumbers(text, DATES));
      case 7 ->
          utf8(inserted(text, one(List.of("\"", "'", "\"\"\"", "[", "{", "]", "}", ": ", "#"))));
      case 8 -> Arrays.copyOf(utf8(text), below(utf8(text).length));
      case 9 -> utf8(lineTwice(text));
      case 10 -> utf8(lineGone(text));
      case 11 -> utf8(plan ? deep(text) : wideRow(text));
      case 12 -> utf8(plan ? aliased(text) : text.replace(";", one(List.of(",", "\t", "|", ";;"))));
      default -> utf8(inserted(text, "x".repeat(1 << below(16))));
    };
  }

  private static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static Charset wide(String name) {
    return Charset.forName(name);
  }

  private byte[] flipped(byte[] bytes) {
    for (int i = 1 + below(8); i > 0 && bytes.length > 0; i--) {
      bytes[below(bytes.length)] ^= (byte) (1 << below(8));
    }
    return bytes;
  }

  private String inserted(String text, String what) {
    int at = below(text.length());
    return text.substring(0, at) + what + text.substring(at);
  }

  private String inNumbers(String text, List<String> others) {
    int at = below(text.length());
    java.util.regex.Matcher number = java.util.regex.Pattern.compile("\\d[-\\d.:]*").matcher(text);
    return number.find(at) || number.find(0)
        ? text.substring(0, number.start()) + one(others) + text.substring(number.end())
        : text;
  }

  private String lineTwice(String text) {
    List<String> lines = new java.util.ArrayList<>(text.lines().toList());
    if (!lines.isEmpty()) {
      lines.add(below(lines.size()), lines.get(below(lines.size())));
    }
    return String.join("\n", lines) + "\n";
  }

  private String lineGone(String text) {
    List<String> lines = new java.util.ArrayList<>(text.lines().toList());
    if (!lines.isEmpty()) {
      lines.remove(below(lines.size()));
    }
    return String.join("\n", lines) + "\n";
  }

  private String deep(String text) {
    int depth = 1 << below(17);
    String open = one(List.of("[", "{a: ", "- "));
    return text + "conditions: " + open.repeat(depth) + "\n";
  }

  private String wideRow(String text) {
    return text + ";".repeat(1 << below(21)) + "\n";
  }

  /** Anchors that double with every line: nine lines would be half a thousand million values. */
  private String aliased(String text) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(utf8("a0: &a0 [x, x, x, x, x, x, x, x, x]\n"));
    for (int i = 1; i < 9; i++) {
      String line = ("*a" + (i - 1) + ", ").repeat(9);
      out.writeBytes(utf8("a" + i + ": &a" + i + " [" + line + "]\n"));
    }
    return text.replaceFirst("rider: .*", "rider: &who R. Lind")
        + "bike: *who\n"
        + out.toString(StandardCharsets.UTF_8);
  }
}
