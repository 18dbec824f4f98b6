package blindlap.paper;

import static blindlap.paper.ReportPage.WORDS;
import static blindlap.paper.ReportPage.cell;

import blindlap.plan.Covariate;
import blindlap.plan.Plan;
import blindlap.review.DayRecord;
import blindlap.session.day.CovariateAt;
import blindlap.session.day.LapId;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/** What was said of covariates on the day, a row a stint or lap. */
final class ReportCovariates {
  private ReportCovariates() {}

  /** A table, where the plan declares any. */
  static void write(ReportPage page, DayRecord day) {
    Plan plan = day.plan();
    if (plan.covariates().isEmpty()) {
      return;
    }
    List<String> head = new ArrayList<>(List.of(WORDS.say("th.stint"), WORDS.say("th.lap")));
    plan.covariates().forEach(c -> head.add(c.name() + " (" + c.unit() + ")"));
    List<List<String>> rows = new ArrayList<>();
    for (int stint = 1; stint <= plan.stints(); stint++) {
      for (int lap = 0; lap <= plan.laps().perStint(); lap++) {
        row(day, stint, lap, rows);
      }
    }
    page.h3("covariates.said").table(head, rows).note(WORDS.say("covariates.note"));
  }

  private static void row(DayRecord day, int stint, int lap, List<List<String>> rows) {
    Plan plan = day.plan();
    List<String> row = new ArrayList<>();
    row.add(cell(String.valueOf(stint)));
    row.add(
        cell(lap == 0 ? "–" : String.valueOf(new LapId(stint, lap).ofDay(plan.laps().perStint()))));
    boolean any = false;
    for (Covariate covariate : plan.covariates()) {
      BigDecimal value = day.covariates().get(new CovariateAt(covariate.name(), stint, lap));
      any |= value != null;
      row.add(cell(value == null ? "–" : value.toPlainString()));
    }
    if (any) {
      rows.add(row);
    }
  }
}
