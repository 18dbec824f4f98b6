package blindlap.sample;

import blindlap.desk.BundledProtocols;
import blindlap.desk.Committing;
import blindlap.desk.Desk;
import blindlap.desk.HelperDay;
import blindlap.desk.HelperDays;
import blindlap.desk.LapFiles;
import blindlap.desk.Looking;
import blindlap.desk.PlanPreview;
import blindlap.desk.Sessions;
import blindlap.plan.Plan;
import blindlap.seal.HelperRecord;
import blindlap.seal.SealParameters;
import blindlap.seal.Sealed;
import blindlap.seal.Sealing;
import blindlap.seal.SealingSources;
import blindlap.seal.SessionKind;
import blindlap.session.DayCommands;
import blindlap.session.Fact;
import blindlap.session.LifeCommands;
import blindlap.session.Outcome;
import blindlap.session.SessionState;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Properties;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * An invented session of the folder {@code sample-sessions}: a plan and its laps, taken through its
 * whole life with the ordinary use cases.
 */
public final class SampleSession {
  /** Folder names of the samples that the demo shows, the one it tells first. */
  public static final List<String> NAMES =
      List.of("shocks-on-quarry-loop", "pressures-on-beech-descent", "bars-on-mill-track");

  /** All samples: one for every verdict, and for what may go otherwise on a day. */
  public static final List<String> ALL =
      List.of(
          "shocks-on-quarry-loop",
          "pressures-on-beech-descent",
          "bars-on-mill-track",
          "bearings-on-clay-steps",
          "springs-on-ridge-line",
          "pads-on-long-drop",
          "tyres-on-fern-trail",
          "tyres-on-root-garden",
          "null-run-on-quarry-loop",
          "clicks-on-wet-steps",
          "dampers-on-dust-track",
          "levers-on-flat-lap",
          "grips-on-moor-path",
          "wheels-on-windy-ridge",
          "oils-on-larch-line",
          "saddles-on-stone-ladder",
          "pedals-on-gravel-bowl",
          "inserts-on-chalk-cutting",
          "forks-on-juniper-chute",
          "rebound-on-heron-line",
          "air-on-otter-traverse",
          "clicks-told-on-alder-bank",
          "pads-told-on-slate-run",
          "same-dial-on-alder-bank");

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

  /** What went otherwise than planned on the sample's day; empty for most. */
  private Properties events() {
    Properties events = new Properties();
    String path = "/blindlap/sample-sessions/" + name + "/events.properties";
    try (InputStream in = SampleSession.class.getResourceAsStream(path)) {
      if (in != null) {
        events.load(new InputStreamReader(in, StandardCharsets.UTF_8));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return events;
  }

  private SessionKind kind() {
    String setup = events().getProperty("null_run");
    return setup == null ? SessionKind.comparison() : SessionKind.nullRun(Integer.parseInt(setup));
  }

  /** Takes the sample through its whole life, up to the opened seal. */
  public SessionState whole() {
    Plan plan = preview().plan().orElseThrow();
    if (AloneSample.is(plan)) {
      return new AloneSample(desk, plan, events()).whole(laps());
    }
    Committing.Result.Committed committed = commit();
    SessionState state = record(committed.state());
    return unseal(closeReview(closeDay(happenings(state, committed.sealed()))), committed.sealed());
  }

  /** Writes down what went otherwise than planned. */
  public SessionState happenings(SessionState state, Sealed sealed) {
    Properties events = events();
    SessionState now = state;
    for (String stint : events.getProperty("wrong_fits", "").split(" ")) {
      now = stint.isEmpty() ? now : wrongFit(now, sealed, Integer.parseInt(stint));
    }
    String broken = events.getProperty("blind_broken");
    if (broken != null) {
      String what = events.getProperty("blind_broken_what");
      now = act(now, latest -> latest.blindBroken(Integer.parseInt(broken), what));
    }
    for (String stint : events.getProperty("looks", "").split(" ")) {
      now = stint.isEmpty() ? now : look(now, sealed, Integer.parseInt(stint));
    }
    String last = events.getProperty("last_stint");
    if (last != null) {
      now =
          act(
              now,
              latest ->
                  latest.cutShort(
                      Integer.parseInt(last),
                      events.getProperty("cut_reason"),
                      events.getProperty("cut_by"),
                      false));
    }
    return now;
  }

  private SessionState look(SessionState state, Sealed sealed, int stint) {
    HelperDays.Opened opened = desk.helperDays().open(state, sealed.phrase().text());
    HelperDay day = ((HelperDays.Opened.Day) opened).day();
    if (new Looking(day).look(stint) instanceof Looking.Result.Taken taken) {
      return taken.state();
    }
    throw new IllegalStateException("sample " + name + " is refused a look after stint " + stint);
  }

  /** The helper's record of a stint on which the other of two setups, or the next one, was on. */
  private SessionState wrongFit(SessionState state, Sealed sealed, int stint) {
    int other = (sealed.schedule().fit(stint).fitted() + 1) % state.plan().setups().size();
    char fitted = (char) ('A' + other);
    SealingSources sources = SampleSources.of(name + "/helper");
    HelperRecord record =
        new Sealing(sources, SealParameters.standard())
            .record(sealed.lock(), state.id().text(), stint, "{\"fitted\":\"" + fitted + "\"}");
    Fact fact = new Fact.StintHandled(record);
    return done(
        desk.sessions().act(state.id(), latest -> new DayCommands(latest).stint(stint, fact)));
  }

  private SessionState act(SessionState state, Function<LifeCommands, Outcome> decision) {
    return done(
        desk.sessions().act(state.id(), latest -> decision.apply(new LifeCommands(latest))));
  }

  /** Commits the plan of a sample that one person rides alone; its order is covered. */
  public SessionState cover() {
    return new AloneSample(desk, preview().plan().orElseThrow(), events()).commit();
  }

  /** Commits the sample's plan. */
  public Committing.Result.Committed commit() {
    Plan typed = preview().plan().orElseThrow();
    Plan plan = RecordedSample.is(name) ? recorded().plan(typed) : typed;
    List<String> signedBy =
        Stream.of(plan.rider(), plan.blinding().helper()).filter(name -> !name.isBlank()).toList();
    Committing.Begun first = desk.committing().begin(plan);
    Committing.Begun sealed =
        first instanceof Committing.Begun.Alone ? desk.committing().beginSealed(plan) : first;
    if (!(sealed instanceof Committing.Begun.Phrase begun)) {
      throw new IllegalStateException("sample " + name + " is refused");
    }
    Committing.Result result =
        desk.committing().seal(plan, kind(), signedBy, begun.asked().unasked());
    if (result instanceof Committing.Result.Refused refused) {
      throw new IllegalStateException("sample " + name + " is refused: " + refused.problems());
    }
    return (Committing.Result.Committed) result;
  }

  /** Records the sample's laps, and brings in what a recorder wrote of them. */
  public SessionState record(SessionState state) {
    return done(
        RecordedSample.is(name)
            ? recorded().record(state, laps())
            : new LapFiles(desk.sessions()).record(state, laps()));
  }

  private RecordedSample recorded() {
    return new RecordedSample(name, desk, events());
  }

  /** Closes the day. */
  public SessionState closeDay(SessionState state) {
    return done(desk.sessions().act(state.id(), latest -> new LifeCommands(latest).closeDay()));
  }

  /** Closes the review. */
  public SessionState closeReview(SessionState state) {
    return done(desk.keys().closeReview(state.id()));
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
