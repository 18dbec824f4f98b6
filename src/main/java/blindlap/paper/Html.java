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

  static String page(String title, String style, String body) {
    return "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
        + "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
        + element("title", title)
        + "<style>\n"
        + style
        + "</style>\n</head>\n<body>\n"
        + body
        + "</body>\n</html>\n";
  }
}
