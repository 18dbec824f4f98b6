package blindlap.seal;

import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;

/**
 * The opened key in a form that survives paper: rows {@code NAME:BODY*CHECK.} with a check of their
 * own, so that a slip of the finger is found in its row. For the helper's sheet alone, as text and
 * as the content of a QR code; it prints nothing of itself elsewhere.
 *
 * <p>Rows: V version; A algorithm; O1, O2, … the order, 16 letters each; C1, C2, … the codes, eight
 * each; S1 to S4 the seed and N1 to N4 the nonce, 16 hexadecimal digits each; P the sealed part (Y
 * or N for a null run, the letter ridden then or -, the letter of the warm-up); Z a check over all.
 */
public final class KeySheet {
  static final String VERSION = "1";
  static final int LETTERS_A_ROW = 16;
  static final int CODE_DIGITS_A_ROW = 24;
  static final int HEX_A_ROW = 16;
  private static final int GROUP = 4;
  private static final int CODE_GROUP = 3;
  private static final int ROW_CHECK = 4;
  private static final int WHOLE_CHECK = 8;

  private final Map<String, String> rows;

  private KeySheet(Map<String, String> rows) {
    this.rows = rows;
  }

  static KeySheet of(OpenKey key) {
    Map<String, String> rows = new LinkedHashMap<>();
    rows.put("V", VERSION);
    rows.put("A", key.algorithm().toUpperCase(Locale.ROOT));
    split(rows, "O", key.order(), LETTERS_A_ROW);
    split(rows, "C", key.codesText().replace(",", ""), CODE_DIGITS_A_ROW);
    split(rows, "S", hex(key.seed()), HEX_A_ROW);
    split(rows, "N", hex(key.nonce()), HEX_A_ROW);
    rows.put("P", sealed(key.sealedPart()));
    rows.put("Z", wholeCheck(rows));
    return new KeySheet(Collections.unmodifiableMap(rows));
  }

  /** The rows for print, one a line, in groups; capitals, spaces and line breaks do not matter. */
  public String text() {
    StringBuilder text = new StringBuilder();
    rows.forEach(
        (name, body) ->
            text.append(name)
                .append(": ")
                .append(grouped(name, body))
                .append(" *")
                .append(check(name, body))
                .append(".\n"));
    return text.toString();
  }

  /** The same rows in one line, only characters of the QR code's alphanumeric mode. */
  public String payload() {
    StringBuilder text = new StringBuilder();
    rows.forEach(
        (name, body) ->
            text.append(name)
                .append(':')
                .append(body)
                .append('*')
                .append(check(name, body))
                .append('.'));
    return text.toString();
  }

  /** The rows by name, as they are checked. */
  Map<String, String> rows() {
    return rows;
  }

  static String check(String name, String body) {
    return digits(name + ":" + body, ROW_CHECK);
  }

  /** Over all rows but Z: their NAME:BODY with a full stop after each. */
  private static String wholeCheck(Map<String, String> rows) {
    StringBuilder all = new StringBuilder();
    rows.forEach((name, body) -> all.append(name).append(':').append(body).append('.'));
    return digits(all.toString(), WHOLE_CHECK);
  }

  private static String digits(String text, int count) {
    return hex(Fingerprint.digest(text.getBytes(StandardCharsets.US_ASCII))).substring(0, count);
  }

  private static String sealed(SealedPart part) {
    char ridden = part.nullRun() ? (char) ('A' + part.ridden().getAsInt()) : '-';
    return (part.nullRun() ? "Y" : "N") + ridden + (char) ('A' + part.warmUp());
  }

  private static String hex(byte[] bytes) {
    return HexFormat.of().withUpperCase().formatHex(bytes);
  }

  private static void split(Map<String, String> rows, String name, String body, int length) {
    for (int i = 0; i * length < body.length(); i++) {
      int end = Math.min(body.length(), (i + 1) * length);
      rows.put(name + (i + 1), body.substring(i * length, end));
    }
  }

  private static String grouped(String name, String body) {
    if (name.length() == 1) {
      return body;
    }
    int group = name.startsWith("C") ? CODE_GROUP : GROUP;
    return body.replaceAll("(.{" + group + "})(?=.)", "$1 ");
  }

  /** Says nothing of what is inside. */
  @Override
  public String toString() {
    return "KeySheet[" + rows.size() + " rows]";
  }
}
