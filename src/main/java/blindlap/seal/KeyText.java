package blindlap.seal;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The bytes that are encrypted: the key as lines of text, of one length for a number of stints. */
final class KeyText {
  static final String VERSION = "blindlap-key-1";
  private static final Pattern FORM =
      Pattern.compile(
          VERSION
              + "\nalgorithm=(?<algorithm>[^\n]+)\norder=(?<order>[A-Z]+)\ncodes=(?<codes>[0-9,]+)"
              + "\nseed=(?<seed>[0-9a-f]{64})\nnonce=(?<nonce>[0-9a-f]{64})"
              + "\nsealed=(?<sealed>[^\n]+)\n");

  private KeyText() {}

  static byte[] write(OpenKey key) {
    return String.join(
            "\n",
            VERSION,
            "algorithm=" + key.algorithm(),
            "order=" + key.order(),
            "codes=" + key.codesText(),
            "seed=" + HexFormat.of().formatHex(key.seed()),
            "nonce=" + HexFormat.of().formatHex(key.nonce()),
            "sealed=" + new String(key.sealedPart().padded(), StandardCharsets.US_ASCII),
            "")
        .getBytes(StandardCharsets.UTF_8);
  }

  /**
   * Reads what {@link #write} wrote.
   *
   * @throws IllegalArgumentException if it is anything else
   */
  static OpenKey read(byte[] text) {
    Matcher form = FORM.matcher(new String(text, StandardCharsets.UTF_8));
    if (!form.matches()) {
      throw new IllegalArgumentException("the opened key is not in the form " + VERSION);
    }
    List<Integer> codes =
        Arrays.stream(form.group("codes").split(",", -1)).map(Integer::valueOf).toList();
    return OpenKey.of(
        form.group("algorithm"),
        form.group("order"),
        codes,
        HexFormat.of().parseHex(form.group("seed")),
        HexFormat.of().parseHex(form.group("nonce")),
        SealedPart.parse(form.group("sealed").getBytes(StandardCharsets.US_ASCII)));
  }
}
