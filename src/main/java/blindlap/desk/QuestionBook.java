package blindlap.desk;

import blindlap.plan.Plan;
import blindlap.review.QuestionHistory;
import blindlap.session.Notebook;
import blindlap.session.SessionState;
import blindlap.session.SessionSummary;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How often a question was asked, by the sessions of the notebook, wherever they were written. The
 * one place that every surface asks: commit, review, page, report, data package.
 */
public final class QuestionBook {
  private final Notebook notebook;
  private final SeriesBook series;

  QuestionBook(Notebook notebook, SeriesBook series) {
    this.notebook = notebook;
    this.series = series;
  }

  /** The history of a committed session: all others, earlier and later. */
  public QuestionHistory of(SessionState session) {
    return history(session.plan(), session);
  }

  /** The history of a plan that is about to be committed. */
  public QuestionHistory before(Plan plan) {
    return history(plan, null);
  }

  private QuestionHistory history(Plan plan, @Nullable SessionState session) {
    List<SessionState> others = new ArrayList<>();
    for (SessionSummary each : notebook.summaries()) {
      if (mayBeOf(plan, each) && (session == null || !each.id().equals(session.id()))) {
        others.add(SessionState.of(notebook.entries(each.id())));
      }
    }
    return QuestionHistory.of(plan, session, others, series::unfinished, OpenedDays::of);
  }

  /** What a list knows is enough to leave most sessions unread; setups go by their ids. */
  private static boolean mayBeOf(Plan plan, SessionSummary each) {
    return each.kind().drawn()
        && (same(each.question(), plan.question())
            || same(each.rider(), plan.rider()) && same(each.trail(), plan.trail()));
  }

  private static boolean same(String a, String b) {
    return QuestionHistory.plain(a).equals(QuestionHistory.plain(b));
  }
}
