package blindlap.paper;

import blindlap.plan.Plan;
import blindlap.plan.Setup;
import blindlap.seal.HelperSchedule;
import blindlap.seal.KeySheet;
import blindlap.session.SessionState;
import blindlap.wording.Words;

/** The helper's card: what to fit, stint by stint, with cautions and the key sheet. */
public final class HelperCard {
  private static final String STYLE =
      "body{font:16px/1.4 sans-serif;margin:0;border:14mm solid #000;padding:8mm}"
          + "table{border-collapse:collapse;width:100%}td,th{text-align:left;border-bottom:1px solid #999;padding:5px 8px}"
          + "pre{font-size:12px}.caution{border-left:6px solid #000;padding-left:10px}\n";

  private HelperCard() {}

  /** The card as one HTML page. */
  public static String html(SessionState state, HelperSchedule schedule, KeySheet sheet) {
    Plan plan = state.plan();
    StringBuilder body = new StringBuilder();
    body.append(Html.element("h1", "Helper. Rider: look away"));
    body.append(
        Html.element(
            "p",
            plan.title() + ", " + plan.trail() + ", rider " + plan.rider() + ", " + plan.day()));
    body.append("<p class=\"caution\">").append(caution("short")).append("</p>\n");
    body.append("<p class=\"caution\">")
        .append(caution("ride"))
        .append(' ')
        .append(caution("emergency"))
        .append("</p>\n");
    body.append(
        Html.element("p", "Warm-up laps on " + plan.setups().get(schedule.warmUp()).name() + "."));
    body.append(
        "<table>\n<tr><th>stint</th><th>code</th><th>fit</th><th>swap</th><th>safe, handed over</th></tr>\n");
    for (HelperSchedule.Fit fit : schedule.fits()) {
      body.append("<tr><td>").append(fit.stint()).append("</td><td>").append(fit.code());
      body.append("</td><td>").append(Html.text(plan.setups().get(fit.fitted()).name()));
      body.append("</td><td>");
      body.append(fit.swap() == HelperSchedule.Swap.REAL ? "real" : "dummy");
      body.append("</td><td>□</td></tr>\n");
    }
    body.append("</table>\n");
    plan.setups().forEach(setup -> body.append(setup(setup)));
    body.append(Html.element("h2", "Key sheet"));
    body.append("<pre>").append(Html.text(sheet.text())).append("</pre>\n");
    return Html.page("Helper's card", STYLE, body.toString());
  }

  private static String caution(String key) {
    return Html.text(Words.of("cautions").say(key));
  }

  private static String setup(Setup setup) {
    StringBuilder out = new StringBuilder(Html.element("h2", setup.name()));
    out.append("<ul>\n");
    setup
        .settings()
        .forEach(s -> out.append(Html.element("li", s.name() + ": " + s.value() + " " + s.unit())));
    setup.steps().forEach(step -> out.append(Html.element("li", step)));
    setup
        .limits()
        .forEach(
            limit ->
                out.append(
                    Html.element(
                        "li",
                        limit.what()
                            + ": "
                            + limit.value()
                            + ", typed in from: "
                            + limit.source())));
    setup.cautions().forEach(caution -> out.append(Html.element("li", "Caution: " + caution)));
    return out.append("</ul>\n").toString();
  }
}
