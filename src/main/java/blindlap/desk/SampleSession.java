package blindlap.desk;

import blindlap.plan.Plan;
import blindlap.seal.Sealed;
import blindlap.seal.SessionKind;
import blindlap.session.LifeCommands;
import blindlap.session.SessionState;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * An invented session of the folder {@code sample-sessions}: a plan and its laps, taken through its
 * whole life with the ordinary use cases.
 */
public final class SampleSession {
  /** Folder names of the samples, the one that the demo tells first. */
  public static final List<String> NAMES =
      List.of("shocks-on-quarry-loop", "pressures-on-beech-descent", "bars-on-mill-track");

  private final String name;
  private final Desk desk;

  /**
   * @param name folder name
   * @param desk a desk made with {@link #sources}
   */
  public SampleSession(String name, Desk desk) {
    this.name = name;
    this.desk = desk;
  }

  /** The text of the sample's plan file. */
  public String planText() {
    return BundledProtocols.text("/blindlap/sample-sessions/" + name + "/plan.yaml");
  }

  /** The sample's laps file. */
  public byte[] laps() {
    return BundledProtocols.text("/blindlap/sample-sessions/" + name + "/laps.csv")
        .getBytes(StandardCharsets.UTF_8);
  }

  /** What the planned day can show. */
  public PlanPreview preview() {
    return PlanPreview.of(planText(), desk.protocols());
  }

  /** Commits the sample's plan. */
  public Committing.Result.Committed commit() {
    Plan plan = preview().plan().orElseThrow();
    Committing.Result result =
        desk.committing()
            .commit(
                plan, SessionKind.comparison(), List.of(plan.rider(), plan.blinding().helper()));
    if (result instanceof Committing.Result.Refused refused) {
      throw new IllegalStateException("sample " + name + " is refused: " + refused.problems());
    }
    return (Committing.Result.Committed) result;
  }

  /** Records the sample's laps. */
  public SessionState record(SessionState state) {
    return done(new LapFiles(desk.sessions()).record(state, laps()));
  }

  /** Closes the day. */
  public SessionState closeDay(SessionState state) {
    return done(desk.sessions().act(state.id(), latest -> new LifeCommands(latest).closeDay()));
  }

  /** Closes the review. */
  public SessionState closeReview(SessionState state) {
    return done(desk.sessions().act(state.id(), latest -> new LifeCommands(latest).closeReview()));
  }

  /** Opens the seal with the helper's phrase. */
  public SessionState unseal(SessionState state, Sealed sealed) {
    return done(desk.keys().unseal(state, sealed.phrase().text()));
  }

  private SessionState done(Sessions.Result result) {
    if (result instanceof Sessions.Result.Refused refused) {
      throw new IllegalStateException("sample " + name + " is refused: " + refused.problems());
    }
    return ((Sessions.Result.Done) result).state();
  }
}
