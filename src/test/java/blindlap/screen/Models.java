package blindlap.screen;

import blindlap.desk.Desk;
import blindlap.desk.TestDay;
import blindlap.screen.alone.AloneModel;
import blindlap.screen.book.NextSession;
import blindlap.screen.book.NotebookModel;
import blindlap.screen.part.Background;
import blindlap.screen.part.Shell;
import blindlap.screen.plan.PlanAnswerModel;
import blindlap.screen.plan.PlanModel;
import blindlap.screen.review.ReviewModel;
import blindlap.screen.ride.RideModel;
import blindlap.screen.swap.SwapModel;
import java.util.function.Consumer;

/** Models of pages on a desk, as the window puts them together. */
public final class Models {
  private Models() {}

  /** The Plan page's model; days = 0 for the formula only. */
  public static PlanModel plan(Desk desk, Shell shell, Background background, int days) {
    return new PlanModel(
        desk.planning(),
        desk.history(),
        desk.helperSheets(),
        desk.helperDays(),
        desk.clock(),
        shell,
        background,
        days);
  }

  /** The Plan page's model with the usual number of simulated days. */
  public static PlanModel plan(Desk desk, Shell shell, Background background) {
    return plan(desk, shell, background, PlanAnswerModel.USUAL);
  }

  /** The Swap page's model on a test's day, with the session opened. */
  public static SwapModel swap(TestDay day) {
    SwapModel model =
        new SwapModel(
            day.desk().helperDays(),
            day.desk().riderDays(),
            day.desk().notebook()::dataVersion,
            Background.immediate(),
            day.clock(),
            day.clock()::nanos);
    model.open(day.id());
    return model;
  }

  /** The Ride page's model on a test's day, with the session opened. */
  public static RideModel ride(TestDay day) {
    return ride(day, Background.immediate());
  }

  /** The same, with work in the background. */
  public static RideModel ride(TestDay day, Background background) {
    RideModel model =
        new RideModel(
            day.desk().riderDays(),
            day.desk().notebook()::dataVersion,
            background,
            day.clock(),
            day.clock()::nanos);
    model.open(day.id());
    return model;
  }

  /** What a rider who swaps alone mounts on a test's day, with the session opened. */
  public static AloneModel alone(TestDay day, RideModel ride) {
    AloneModel model =
        new AloneModel(
            day.desk().aloneDays(),
            Background.immediate(),
            day.clock(),
            day.clock()::nanos,
            ride::tick);
    model.open(day.id());
    ride.sheetProperty().addListener((o, before, now) -> model.reload());
    return model;
  }

  /** The Review page's model. */
  public static ReviewModel review(Desk desk, Background background) {
    return review(desk, draft -> {}, background);
  }

  /** The Review page's model, with what is done with a draft made from it. */
  public static ReviewModel review(Desk desk, Consumer<String> openDraft, Background background) {
    return new ReviewModel(
        desk.sessions(),
        desk.keys(),
        desk.masks(),
        desk.reviews(),
        desk.anotherDay(),
        desk.afterSteps(),
        openDraft,
        background);
  }

  /** The Notebook page's model. */
  public static NotebookModel notebook(Desk desk, Shell shell, Background background) {
    return new NotebookModel(
        desk.sessionList(),
        desk.history(),
        new NextSession(desk.anotherDay(), shell, background),
        shell,
        background);
  }
}
