package blindlap.screen.book;

import blindlap.desk.Planning;
import blindlap.desk.Sessions;
import blindlap.screen.part.Background;
import blindlap.screen.part.Shell;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import blindlap.wording.CommittedPlanWords;
import blindlap.wording.Headline;
import blindlap.wording.PlanSummary;
import blindlap.wording.day.Trouble;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;

/** The plan of a session, to be read. Nothing of it depends on what is sealed. */
public final class CommittedPlanModel {
  private final Sessions sessions;
  private final Planning planning;
  private final Background background;
  private final Consumer<SessionId> copy;
  private final ZoneId zone;
  private final ReadOnlyObjectWrapper<View> view = new ReadOnlyObjectWrapper<>(View.NONE);
  private Runnable whenAsked = () -> {};
  private Optional<SessionId> session = Optional.empty();

  /**
   * What is shown.
   *
   * @param headline what was fixed, and when
   * @param lead which session it is, and who signed
   * @param fingerprint the fingerprint of the plan, and who holds it
   * @param parts the plan, a heading and its lines each
   * @param file the same as a plan file
   * @param trouble what went wrong with reading it; empty mostly
   */
  public record View(
      Headline headline,
      List<String> lead,
      List<String> fingerprint,
      List<PlanSummary.Part> parts,
      String file,
      String trouble) {
    static final View NONE =
        new View(new Headline("", "", ""), List.of(), List.of(), List.of(), "", "");

    private static View failed(String trouble) {
      return new View(new Headline("", "", ""), List.of(), List.of(), List.of(), "", trouble);
    }
  }

  /**
   * @param zone of whoever reads
   * @param copy makes another plan of a session's
   */
  public CommittedPlanModel(
      Sessions sessions,
      Planning planning,
      Shell shell,
      ZoneId zone,
      Consumer<SessionId> copy,
      Background background) {
    this.sessions = sessions;
    this.planning = planning;
    this.background = background;
    this.copy = copy;
    this.zone = zone;
    shell.planOfProperty().addListener((o, before, now) -> now.ifPresent(this::read));
    shell.planOfProperty().get().ifPresent(this::read);
  }

  /** What is shown. */
  public ReadOnlyObjectProperty<View> viewProperty() {
    return view.getReadOnlyProperty();
  }

  /** Told from now on when somebody wants to read a plan. */
  void whenAsked(Runnable work) {
    whenAsked = work;
  }

  /** True if somebody has asked already. */
  boolean asked() {
    return session.isPresent();
  }

  /** Reads the plan of a session. */
  public void read(SessionId of) {
    session = Optional.of(of);
    view.set(View.NONE);
    whenAsked.run();
    again();
  }

  /** Reads it anew: it may have been unsealed or amended meanwhile. */
  void again() {
    session.ifPresent(
        of ->
            background.run(
                () -> sessions.state(of).map(this::shown),
                read -> view.set(read.orElse(View.NONE)),
                problem -> view.set(View.failed(Trouble.sentence(problem)))));
  }

  private View shown(SessionState state) {
    return new View(
        CommittedPlanWords.headline(state, zone),
        CommittedPlanWords.lead(state),
        CommittedPlanWords.fingerprint(state).lines(),
        CommittedPlanWords.parts(state, planning.answers().quick(state.plan())),
        planning.fileOf(state),
        "");
  }

  /** Makes another plan of it. */
  public void copy() {
    session.ifPresent(copy);
  }
}
