package blindlap.paper;

import blindlap.plan.Plan;
import blindlap.review.Comparison;
import blindlap.review.Finding;
import blindlap.session.LapId;
import blindlap.session.LapState;
import blindlap.session.SessionState;
import blindlap.wording.Figures;
import blindlap.wording.FindingWords;
import blindlap.wording.Words;
import java.math.BigDecimal;

/** The report of a session as one self-contained HTML page. */
public final class ReportHtml {
  private static final String STYLE =
      "body{font:17px/1.45 sans-serif;max-width:46em;margin:2em auto;padding:0 1em;color:#15202b;background:#f6f7f3}"
          + "h1{font:600 34px/1.15 serif}h2{font:600 22px serif;margin-top:1.6em}"
          + "table{border-collapse:collapse;width:100%}td,th{text-align:left;border-bottom:1px solid #c7cec9;padding:4px 8px}"
          + ".caution{border-left:6px solid;padding-left:10px}code{overflow-wrap:anywhere}\n";

  private ReportHtml() {}

  /** The page. */
  public static String write(SessionState state, Finding finding) {
    Plan plan = state.plan();
    StringBuilder body = new StringBuilder();
    body.append(
        Html.element(
            "p",
            plan.title() + " · " + plan.trail() + " · rider " + plan.rider() + " · " + plan.day()));
    new blindlap.wording.FindingText(finding).lines().forEach(line -> body.append(Html.element("p", line)));
    body.append("<p class=\"caution\">")
        .append(
            Html.text(Words.of("cautions").say("trust") + " " + Words.of("cautions").say("short")))
        .append("</p>\n");
    others(finding, plan, body);
    laps(state, finding, body);
    body.append(Html.element("h2", "Fingerprints"));
    body.append(code("plan", state.planFingerprint().grouped()));
    state.reviewFingerprint().ifPresent(f -> body.append(code("review", f.grouped())));
    body.append(Html.element("h2", "Plan as committed"));
    body.append("<pre style=\"white-space:pre-wrap\">")
        .append(Html.text(state.planText()))
        .append("</pre>\n");
    return Html.page(plan.title(), STYLE, body.toString());
  }

  private static String code(String name, String fingerprint) {
    return "<p>" + name + " <code>" + fingerprint + "</code></p>\n";
  }

  private static void others(Finding finding, Plan plan, StringBuilder body) {
  }

  private static void laps(SessionState state, Finding finding, StringBuilder body) {
    Plan plan = state.plan();
    body.append(Html.element("h2", "Every lap"));
    body.append("<table>\n<tr><th>lap</th><th>stint</th><th>code</th><th>setup</th>");
    plan.measures().forEach(m -> body.append("<th>").append(Html.text(m.name())).append("</th>"));
    body.append("<th>void</th></tr>\n");
    for (LapState lap : state.laps()) {
      LapId id = lap.id();
      body.append("<tr><td>").append(id.ofDay(plan.laps().perStint()));
      body.append("</td><td>")
          .append(id.stint())
          .append("</td><td>")
          .append(state.code(id.stint()));
      body.append("</td><td>");
      body.append(Html.text(plan.setups().get(finding.day().setup(id.stint())).name()))
          .append("</td>");
      plan.measures()
          .forEach(
              m -> {
                BigDecimal value = lap.values().get(m.name());
                body.append("<td>");
                body.append(value == null ? "–" : Figures.value(m, value.doubleValue()));
                body.append("</td>");
              });
      body.append("<td>")
          .append(lap.voided().map(v -> v.event().text()).orElse(""))
          .append("</td></tr>\n");
    }
    body.append("</table>\n");
  }
}
