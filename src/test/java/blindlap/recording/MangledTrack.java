package blindlap.recording;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/** Recordings as accidents, converters and malice leave them, made of a good one by a seed. */
final class MangledTrack {
  private static final Pattern NUMBER = Pattern.compile("(?<=[\">])-?\\d+\\.\\d+(?=[\"<])");
  private static final Pattern TIME = Pattern.compile("\\d{4}-\\d\\d-\\d\\dT[\\d:.]+Z?");
  private static final Pattern TAG = Pattern.compile("</?\\w+");

  private static final List<String> NUMBERS =
      List.of(
          "NaN",
          "Infinity",
          "-Infinity",
          "1e999",
          "-1e-999",
          "1e400000000",
          "90",
          "-90",
          "180",
          "-180.0000001",
          "360",
          "361",
          "0x1p3",
          "1d",
          "1,5",
          "1_0",
          "٣",
          "",
          " ",
          "--1",
          "9".repeat(400),
          "0." + "0".repeat(400) + "1");

  private static final List<String> TIMES =
      List.of(
          "NaN",
          "",
          "yesterday",
          "1970-01-01T00:00:00Z",
          "+999999999-12-31T23:59:59.999999999Z",
          "-999999999-01-01T00:00:00Z",
          "2026-02-30T00:00:00Z",
          "2026-01-01T24:00:00Z",
          "2026-01-01T00:00:60Z",
          "2026-01-01",
          "2026-01-01T00:00:00",
          "2026-01-01T00:00:00+18:00",
          "2026-01-01T00:00:00+99:00",
          "1767225600",
          "2026-01-01T00:00:00.9999999999999Z");

  private static final List<String> INSERTED =
      List.of(
          "<",
          ">",
          "&",
          "\"",
          "&lt;",
          "&undefined;",
          "&#0;",
          "&#x110000;",
          "]]>",
          "<![CDATA[",
          "<!--",
          "-->",
          "<?x?>",
          "<!DOCTYPE a>",
          "</gpx>",
          "<gpx>",
          "<trkpt/>",
          "<Trackpoint>",
          "</trkseg><trkseg>",
          "\0",
          "\u0007",
          "\u001B[2J",
          "\u202E",
          "\uFEFF",
          "\uD800",
          "<extensions><trkpt lat=\"x\" lon=\"y\"/></extensions>",
          "<hdop>-1e9</hdop>",
          "<hdop>NaN</hdop>",
          "<ele>Infinity</ele>",
          "<time/>",
          "xmlns=\"\" ",
          "<b:a>");

  private final SplittableRandom random;

  MangledTrack(long seed) {
    this.random = new SplittableRandom(seed);
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
    return switch (below(16)) {
      case 0 -> flipped(utf8(text));
      case 1 -> Arrays.copyOf(utf8(text), below(utf8(text).length));
      case 2 -> encoded(text);
      case 3, 4 -> utf8(inserted(text, one(INSERTED)));
      case 5, 6, 13 -> utf8(replaced(text, NUMBER, NUMBERS));
      case 7, 8, 14 -> utf8(replaced(text, TIME, TIMES));
      case 9, 15 ->
          utf8(replaced(text, TAG, List.of("<x", "</x", "<trkpt", "</trkpt", "<Time", "<")));
      case 10 -> utf8(moved(text));
      case 11 -> utf8(inserted(text, one(List.of("<a>", " ", "x", "<a/>")).repeat(1 << below(16))));
      default -> utf8(text.replaceFirst("\\?>", "?>" + laughs()));
    };
  }

  private static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private byte[] flipped(byte[] bytes) {
    for (int flips = 1 + below(5); flips > 0 && bytes.length > 0; flips--) {
      bytes[below(bytes.length)] ^= (byte) (1 << below(8));
    }
    return bytes;
  }

  private byte[] encoded(String text) {
    String name = one(List.of("UTF-16", "UTF-16LE", "UTF-32", "ISO-8859-1", "IBM037", "US-ASCII"));
    String said = one(List.of("UTF-8", "UTF-16", "UTF-16BE", "UTF-7", "x-none", "IBM037", name));
    String declared = text.replaceFirst("encoding=(.).*?\\1", "encoding=\"" + said + "\"");
    return ("\uFEFF".repeat(below(2)) + declared).getBytes(Charset.forName(name));
  }

  private String inserted(String text, String what) {
    int at = below(text.length() + 1);
    return text.substring(0, at) + what + text.substring(at);
  }

  /** One to three places of a kind; sometimes all. */
  private String replaced(String text, Pattern pattern, List<String> by) {
    List<MatchResult> found = pattern.matcher(text).results().toList();
    if (found.isEmpty()) {
      return text;
    }
    String with = one(by);
    if (below(8) == 0) {
      return pattern.matcher(text).replaceAll(with);
    }
    MatchResult one = found.get(below(found.size()));
    return text.substring(0, one.start()) + with + text.substring(one.end());
  }

  /** A stretch taken out and put in elsewhere, or twice. */
  private String moved(String text) {
    int from = below(text.length());
    int to = from + below(Math.min(4000, text.length() - from));
    String rest = below(2) == 0 ? text : text.substring(0, from) + text.substring(to);
    return inserted(rest, text.substring(from, to));
  }

  private static String laughs() {
    StringBuilder all = new StringBuilder("<!DOCTYPE gpx [<!ENTITY a0 \"ha\">");
    for (int i = 1; i < 12; i++) {
      all.append("<!ENTITY a").append(i).append(" \"");
      all.append(("&a" + (i - 1) + ";").repeat(10)).append("\">");
    }
    return all.append("]>").toString();
  }
}
