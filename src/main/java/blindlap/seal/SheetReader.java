package blindlap.seal;

import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads a typed or scanned key sheet; finds the row of a slip and says what to do. */
final class SheetReader {
  private static final Pattern ROW = Pattern.compile("([A-Z0][0-9OIL]*):([^:*]*)\\*([0-9A-Z]{4})");
  private static final Pattern BEGINNING = Pattern.compile("([A-Z0][0-9OIL]*):.*");
  private static final Pattern CODE = Pattern.compile("[1-9][0-9]{2}");
  private static final Pattern SEALED = Pattern.compile("N-[A-Z]|Y[A-Z]{2}");
  private static final int PARTS = 4;

  private static final String SHEET = "sheet";

  private final Map<String, String> rows = new LinkedHashMap<>();

  /** A slip, and the row it is in. */
  static final class Slip extends Exception {
    private static final long serialVersionUID = 1L;
    final String row;
    final SheetSlip what;
    final String detail;

    Slip(String row, SheetSlip what) {
      this(row, what, "");
    }

    Slip(String row, SheetSlip what, String detail) {
      super(what + " in row " + row);
      this.row = row;
      this.what = what;
      this.detail = detail;
    }
  }

  private SheetReader() {}

  /**
   * Reads a sheet; capitals, spaces and line breaks do not matter, nor O for 0, I and L for 1 where
   * digits stand.
   *
   * @throws Slip naming the row that cannot be read
   */
  static OpenKey read(String text) throws Slip {
    SheetReader reader = new SheetReader();
    String packed = text.replaceAll("\\s+", "").replaceAll("[‐‑–—−]", "-").toUpperCase(Locale.ROOT);
    for (String row : packed.split("\\.")) {
      reader.take(row);
    }
    return reader.key();
  }

  private void take(String row) throws Slip {
    Matcher form = ROW.matcher(row);
    if (!form.matches()) {
      Matcher beginning = BEGINNING.matcher(row);
      if (beginning.matches()) {
        throw new Slip(name(beginning.group(1)), SheetSlip.INCOMPLETE);
      }
      throw rows.isEmpty()
          ? new Slip(SHEET, SheetSlip.NO_ROW_AT_FIRST)
          : new Slip(SHEET, SheetSlip.NO_ROW, last());
    }
    String name = name(form.group(1));
    String body = "AOP".indexOf(name.charAt(0)) >= 0 ? form.group(2) : digits(form.group(2));
    if (!KeySheet.check(name, body).equals(digits(form.group(3)))) {
      throw new Slip(name, SheetSlip.CHECK_DIFFERS);
    }
    if (rows.putIfAbsent(name, body) != null) {
      throw new Slip(name, SheetSlip.TWICE);
    }
  }

  private OpenKey key() throws Slip {
    if (!one("V").equals(KeySheet.VERSION)) {
      throw new Slip("V", SheetSlip.OTHER_VERSION, one("V"));
    }
    String algorithm = one("A").toLowerCase(Locale.ROOT);
    String order = joined("O", rowCount("O"));
    String digits = joined("C", rowCount("C"));
    String seed = joined("S", PARTS);
    String nonce = joined("N", PARTS);
    String sealed = one("P");
    one("Z");
    if (!SEALED.matcher(sealed).matches()) {
      throw new Slip("P", SheetSlip.SEALED_PART);
    }
    try {
      OpenKey key =
          OpenKey.of(algorithm, order, codes(digits), bytes(seed), bytes(nonce), part(sealed));
      if (KeySheet.of(key).rows().equals(rows)) {
        return key;
      }
    } catch (IllegalArgumentException e) {
      // Rows that each fit their check but make no key: the same mixture as below.
    }
    throw new Slip(SHEET, SheetSlip.NOT_ONE_SHEET);
  }

  private String one(String name) throws Slip {
    String body = rows.get(name);
    if (body == null) {
      throw new Slip(name, SheetSlip.MISSING);
    }
    return body;
  }

  private int rowCount(String letter) {
    return (int)
        Math.max(1, rows.keySet().stream().filter(name -> name.startsWith(letter)).count());
  }

  private String joined(String letter, int count) throws Slip {
    StringBuilder all = new StringBuilder();
    for (int i = 1; i <= count; i++) {
      all.append(one(letter + i));
    }
    return all.toString();
  }

  private String last() {
    String last = "";
    for (String name : rows.keySet()) {
      last = name;
    }
    return last;
  }

  private static List<Integer> codes(String digits) {
    List<Integer> codes = new ArrayList<>();
    for (int i = 0; i < digits.length(); i += 3) {
      String code = digits.substring(i, Math.min(digits.length(), i + 3));
      if (!CODE.matcher(code).matches()) {
        throw new IllegalArgumentException("a code is no number from 100 to 999");
      }
      codes.add(Integer.valueOf(code));
    }
    return codes;
  }

  private static SealedPart part(String sealed) {
    int warmUp = sealed.charAt(2) - 'A';
    return sealed.charAt(0) == 'Y'
        ? SealedPart.nullRun(sealed.charAt(1) - 'A', warmUp)
        : SealedPart.ordinary(warmUp);
  }

  private static byte[] bytes(String hex) {
    return HexFormat.of().parseHex(hex);
  }

  /** A row's name, its first letter a letter and the rest a number. */
  private static String name(String typed) {
    return typed.substring(0, 1).replace('0', 'O') + digits(typed.substring(1));
  }

  private static String digits(String typed) {
    return typed.replace('O', '0').replace('I', '1').replace('L', '1');
  }
}
