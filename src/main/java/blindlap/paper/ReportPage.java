package blindlap.paper;

import blindlap.plot.Drawing;
import blindlap.plot.Ink;
import blindlap.plot.Palette;
import blindlap.plot.SvgSurface;
import blindlap.wording.Words;
import java.util.ArrayList;
import java.util.List;

/** Builds the body of a report: well-formed markup, headings with ids, tables, pictures. */
final class ReportPage {
  static final Words WORDS = Words.of("report");

  /** A heading, for the bookmarks. */
  record Heading(String id, String text, int level) {}

  private final StringBuilder out = new StringBuilder(1 << 16);
  private final List<Heading> headings = new ArrayList<>();
  private final Palette palette;
  private int pictures;

  ReportPage(ReportInput.Ink ink) {
    this.palette = ink == ReportInput.Ink.BLACK ? Palette.PRINT : Palette.PAPER;
  }

  List<Heading> headings() {
    return headings;
  }

  String body() {
    return out.toString();
  }

  ReportPage raw(String markup) {
    out.append(markup);
    return this;
  }

  ReportPage h2(String key) {
    return heading(key, 2);
  }

  ReportPage h3(String key) {
    return heading(key, 3);
  }

  private ReportPage heading(String key, int level) {
    String text = WORDS.say(key);
    String id = key.replace('.', '-');
    headings.add(new Heading(id, text, level));
    out.append("<h").append(level).append(" id=\"").append(id).append("\">");
    out.append(Html.text(text)).append("</h").append(level).append(">\n");
    return this;
  }

  ReportPage p(String text) {
    if (!text.isBlank()) {
      out.append(Html.element("p", text));
    }
    return this;
  }

  ReportPage note(String text) {
    out.append("<p class=\"note\">").append(Html.text(text)).append("</p>\n");
    return this;
  }

  ReportPage caution(String text) {
    out.append("<p class=\"caution\"><strong>").append(WORDS.say("caution"));
    out.append("</strong> ").append(Html.text(text)).append("</p>\n");
    return this;
  }

  ReportPage list(List<String> lines) {
    if (lines.isEmpty()) {
      return this;
    }
    out.append("<ul>\n");
    lines.forEach(line -> out.append(Html.element("li", line)));
    out.append("</ul>\n");
    return this;
  }

  ReportPage code(String text) {
    out.append("<p><code>").append(Html.text(text)).append("</code></p>\n");
    return this;
  }

  ReportPage pre(String text) {
    out.append("<pre>").append(Html.text(text)).append("</pre>\n");
    return this;
  }

  /** Names and values side by side; rows with an empty value are left out. */
  ReportPage facts(String... namesAndValues) {
    out.append("<table class=\"facts\">\n<tbody>\n");
    for (int i = 0; i < namesAndValues.length; i += 2) {
      if (!namesAndValues[i + 1].isBlank()) {
        out.append("<tr><th scope=\"row\">").append(Html.text(WORDS.say(namesAndValues[i])));
        out.append("</th><td>").append(Html.text(namesAndValues[i + 1])).append("</td></tr>\n");
      }
    }
    out.append("</tbody>\n</table>\n");
    return this;
  }

  /** A table; cells are markup, made with {@link #cell}. */
  ReportPage table(List<String> head, List<List<String>> rows) {
    out.append("<div class=\"wide\"><table>\n<thead>\n<tr>");
    head.forEach(h -> out.append("<th scope=\"col\">").append(Html.text(h)).append("</th>"));
    out.append("</tr>\n</thead>\n<tbody>\n");
    for (List<String> row : rows) {
      out.append("<tr>");
      row.forEach(cell -> out.append("<td>").append(cell).append("</td>"));
      out.append("</tr>\n");
    }
    out.append("</tbody>\n</table></div>\n");
    return this;
  }

  static String cell(String text) {
    return Html.text(text);
  }

  /** A picture as wide as the page. */
  ReportPage figure(Drawing drawing) {
    out.append("<figure>\n").append(svg(drawing, 744)).append("</figure>\n");
    return this;
  }

  /** The markup of a picture; on paper the page is white. */
  String svg(Drawing drawing, double width) {
    String markup = SvgSurface.svg(drawing, width, 1, palette, "picture" + ++pictures);
    return markup.replace(palette.hex(Ink.PAPER), "#FFFFFF").replace("\r\n", "\n");
  }
}
