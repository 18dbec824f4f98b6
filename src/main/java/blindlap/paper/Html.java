package blindlap.paper;

/** Text for HTML, escaped. */
final class Html {
  private Html() {}

  static String text(String plain) {
    StringBuilder out = new StringBuilder(plain.length() + 16);
    for (int i = 0; i < plain.length(); i++) {
      char c = plain.charAt(i);
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
