package blindlap.paper;

import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Palette;
import blindlap.plot.surface.SvgSurface;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Builds the body of a report: well-formed markup, headings with ids, tables, pictures. */
final class ReportPage {
  static final Words WORDS = Words.of("report");
  private static final double DRAWN = 744;
  private static final double PRINTED = 650;
  private static final double SMALL = 480;
  private static final double HALF = 316;
  private static final double PHONE = 358;
  private static final String NARROW = "<!--narrow-->";
  private static final String NARROW_END = "<!--end-->";
  private static final double HALF_DRAWN = 450;
  private static final double SEVERAL = 540;
  private static final Pattern SIZE = Pattern.compile("width=\"([\\d.]+)\" height=\"([\\d.]+)\"");

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

  /** The body without what is drawn a second time for narrow screens. */
  String bodyForPaper() {
    StringBuilder paper = new StringBuilder(out);
    for (int at = paper.indexOf(NARROW); at >= 0; at = paper.indexOf(NARROW, at)) {
      paper.delete(at, paper.indexOf(NARROW_END, at) + NARROW_END.length());
    }
    return paper.toString();
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
    return table("wide", head, rows);
  }

  /** A table of this class, which its widths may depend on. */
  ReportPage table(String style, List<String> head, List<List<String>> rows) {
    out.append("<div class=\"").append(style).append("\"><table>\n<thead>\n<tr>");
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
    return figure(drawing, PRINTED);
  }

  /** A picture printed smaller, so that two pages hold what a reader in a hurry needs. */
  ReportPage small(Drawing drawing) {
    return figure(drawing, SMALL);
  }

  /** Two pictures beside one another; one alone is printed smaller than the page. */
  ReportPage beside(Optional<Drawing> left, Optional<Drawing> right) {
    if (left.isEmpty() || right.isEmpty()) {
      left.or(() -> right).ifPresent(this::small);
      return this;
    }
    out.append("<div class=\"two\">\n");
    for (Drawing each : List.of(left.get(), right.get())) {
      out.append("<div class=\"column\">\n<figure>\n");
      out.append(svg(each, HALF_DRAWN, HALF / HALF_DRAWN)).append("</figure>\n</div>\n");
    }
    out.append("</div>\n");
    return this;
  }

  /** A picture of many pairs, so that what was fixed and ridden fits under it. */
  ReportPage several(Drawing drawing) {
    return figure(drawing, SEVERAL);
  }

  private ReportPage figure(Drawing drawing, double printed) {
    out.append("<figure class=\"broad\">\n");
    out.append(svg(drawing, DRAWN, printed / DRAWN)).append("</figure>\n");
    out.append(NARROW).append("<figure class=\"narrow\">\n");
    out.append(svg(drawing, PHONE, 1)).append("</figure>").append(NARROW_END).append('\n');
    return this;
  }

  /**
   * Gives a picture its size in a style too, which the PDF goes by; {@code scale} 1 is as drawn.
   */
  private static String sized(String svg, double scale) {
    Matcher size = SIZE.matcher(svg);
    if (!size.find()) {
      return svg;
    }
    String style =
        String.format(
            Locale.ROOT,
            "%s style=\"width:%.1fpx;height:%.1fpx\"",
            size.group(),
            scale * Double.parseDouble(size.group(1)),
            scale * Double.parseDouble(size.group(2)));
    return size.replaceFirst(Matcher.quoteReplacement(style));
  }

  /** The markup of a picture in a cell. */
  String svg(Drawing drawing, double width) {
    return svg(drawing, width, 1);
  }

  // On paper the page is white, so that words on a picture lie on white too.
  private String svg(Drawing drawing, double width, double scale) {
    String markup = SvgSurface.svg(drawing, width, 1, palette, "picture" + ++pictures);
    String white = markup.replace(palette.hex(Ink.PAPER), "#FFFFFF").replace("\r\n", "\n");
    return sized(white, scale);
  }

  /** The words of a caution, for the place where it is needed. */
  static String cautionWords(String key) {
    return Words.of("cautions").say(key);
  }
}
