package blindlap.sample;

import blindlap.desk.BundledProtocols;
import blindlap.desk.Committing;
import blindlap.desk.Desk;
import blindlap.desk.PlanPreview;
import blindlap.desk.WholeFiles;
import blindlap.plan.Plan;
import blindlap.seal.HelperSchedule;
import blindlap.seal.SealingSources;
import blindlap.seal.SecureBytes;
import blindlap.session.SessionState;
import blindlap.session.day.LapState;
import blindlap.wording.AnswerWords;
import blindlap.wording.day.Words;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;

/** The main job on invented sessions, each step told in a line. */
public final class Demo {
  private static final ZoneId ZONE = ZoneId.of("Europe/Vienna");
  private static final Words WORDS = Words.of("demo");

  private final Opener opener;
  private final Consumer<String> tell;

  public Demo(Opener opener, Consumer<String> tell) {
    this.opener = opener;
    this.tell = tell;
  }

  /** Opens a desk with the bytes and the clock of an invented day. */
  @FunctionalInterface
  public interface Opener {
    Desk open(Path notebook, Clock clock, SealingSources sources, SecureBytes ids);
  }

  /**
   * Runs it.
   *
   * @param notebook a file that does not exist
   * @param folder where the report goes
   */
  public void run(Path notebook, Path folder) {
    List<String> names = SampleSession.NAMES;
    say("notebook", notebook);
    for (int i = names.size() - 1; i > 0; i--) {
      quietly(names.get(i), notebook);
    }
    tell(names.get(0), notebook, folder);
  }

  /**
   * Only the days, without the telling and the report.
   *
   * @param notebook a file that does not exist
   */
  public void days(Path notebook) {
    List<String> names = SampleSession.NAMES;
    for (int i = names.size() - 1; i >= 0; i--) {
      quietly(names.get(i), notebook);
    }
  }

  private Desk desk(String name, Path notebook, java.time.LocalDate day) {
    Clock clock = new SampleClock(day.atTime(LocalTime.of(9, 0)).atZone(ZONE).toInstant(), ZONE);
    return opener.open(notebook, clock, SampleSources.of(name), SampleSources.stream(name, "id"));
  }

  private static java.time.LocalDate day(String name) {
    return PlanPreview.of(
            BundledProtocols.text("/blindlap/sample-sessions/" + name + "/plan.yaml"),
            BundledProtocols.load())
        .plan()
        .orElseThrow()
        .day();
  }

  private void quietly(String name, Path notebook) {
    try (Desk desk = desk(name, notebook, day(name))) {
      SampleSession sample = new SampleSession(name, desk);
      SessionState state = sample.whole();
      say("earlier", state.plan().day(), desk.reviews().text(state).get(0));
    }
  }

  private void tell(String name, Path notebook, Path folder) {
    try (Desk desk = desk(name, notebook, day(name))) {
      SampleSession sample = new SampleSession(name, desk);
      PlanPreview preview = sample.preview();
      Plan plan = preview.plan().orElseThrow();
      say("plan", plan.question(), plan.stints(), plan.protocol().title());
      AnswerWords words = new AnswerWords(plan, preview.answer());
      line(words.sentence().text());
      words.lead().forEach(this::line);
      words.orders().forEach(this::line);
      Committing.Result.Committed committed = sample.commit();
      say("commit", committed.sealed().fingerprint().grouped());
      helper(plan, committed.sealed().schedule());
      SessionState state = sample.record(committed.state());
      say("record", state.lapsRidden(), state.code(1));
      for (LapState lap : state.laps()) {
        lap.voided()
            .ifPresent(v -> say("void", lap.id().ofDay(plan.laps().perStint()), v.event().text()));
      }
      state = sample.closeDay(state);
      say("close.day");
      state = sample.closeReview(state);
      say("close.review", state.reviewFingerprint().orElseThrow().grouped());
      state = sample.unseal(state, committed.sealed());
      say("unseal");
      desk.reviews().text(state).forEach(this::line);
      report(desk, state, folder);
    }
  }

  private void helper(Plan plan, HelperSchedule schedule) {
    HelperSchedule.Fit first = schedule.fit(1);
    HelperSchedule.Fit second = schedule.fit(2);
    say(
        "helper",
        plan.setups().get(first.fitted()).name(),
        plan.setups().get(second.fitted()).name(),
        second.swap() == HelperSchedule.Swap.REAL ? "real" : "dummy");
    line(Words.of("cautions").say("short"));
  }

  private void report(Desk desk, SessionState state, Path folder) {
    Map<String, byte[]> files = desk.reviews().report(state, false);
    try {
      WholeFiles.write(folder, files);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    for (String name : files.keySet()) {
      desk.reviews().reported(state, name);
      say("report", folder.resolve(name));
    }
  }

  private void say(String key, Object... arguments) {
    tell.accept(WORDS.say(key, arguments));
  }

  private void line(String text) {
    tell.accept("  " + text);
  }
}
