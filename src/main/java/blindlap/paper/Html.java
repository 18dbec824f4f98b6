package blindlap.paper;

/** Text for HTML, escaped; a p-value is kept on one line. */
final class Html {
  private Html() {}

  static String text(String plain) {
    StringBuilder out = new StringBuilder(plain.length() + 16);
    String text = plain.replace("p = ", "p\u00a0=\u00a0");
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      switch (c) {
        case '&' -> out.append("&amp;");
        case '<' -> out.append("&lt;");
        case '>' -> out.append("&gt;");
        case '"' -> out.append("&quot;");
        default -> out.append(c);
      }
    }
    return out.toString();
  }

  static String element(String name, String plain) {
    return "<" + name + ">" + text(plain) + "</" + name + ">\n";
  }
}
