package blindlap.paper;

import static blindlap.paper.ReportPage.WORDS;

import blindlap.plan.Plan;
import blindlap.wording.Headline;

/** How every report of a session begins: what was asked, and the answer. */
final class ReportHead {
  private ReportHead() {}

  /**
   * Writes it.
   *
   * @param headline the answer
   * @param lead what it means
   */
  static void write(ReportPage page, Plan plan, Headline headline, String lead) {
    page.raw("<header class=\"running\">");
    page.raw("<span class=\"brand\">" + Html.text(WORDS.say("brand")) + "</span> ");
    String running =
        WORDS.say("running", plan.title(), plan.trail(), plan.rider(), plan.day().toString());
    page.raw(Html.text(running));
    page.raw("</header>\n<main>\n");
    page.raw("<p class=\"question\">" + Html.text(plan.question()) + "</p>\n");
    page.raw("<h1>" + Html.text(headline.before()));
    if (!headline.phrase().isEmpty()) {
      page.raw("<span class=\"phrase\">" + Html.text(headline.phrase()) + "</span>");
    }
    page.raw(Html.text(headline.after()) + "</h1>\n");
    page.raw("<p class=\"lead\">" + Html.text(lead + " " + WORDS.say("holds")) + "</p>\n");
  }
}
