package blindlap.screen.manual;

import blindlap.desk.Committing;
import blindlap.desk.Desk;
import blindlap.desk.LapFiles;
import blindlap.desk.PlanPreview;
import blindlap.desk.SetClock;
import blindlap.phone.FakeMaker;
import blindlap.plan.Plan;
import blindlap.sample.SampleSession;
import blindlap.sample.SampleSources;
import blindlap.screen.ManualWindow;
import blindlap.screen.part.Shell;
import blindlap.seal.SealParameters;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import blindlap.store.SqliteNotebook;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;

/**
 * What the day of two forks cannot show: three setups, levels, trials, a rider alone. Each is an
 * invented session that comes with the program, but for the rider alone, who rides the forks.
 */
final class SamplePages {
  private static final Duration HANDLED = Duration.ofMinutes(3);
  private static final String LEVEL = "blinding: {level: drawn}";

  private SamplePages() {}

  /** A desk with the order of an invented session, and its clock. */
  private record Book(String name, Path notebook, SetClock clock, Desk desk)
      implements AutoCloseable {
    static Book of(Path folder, String name, String start) {
      Path notebook = folder.resolve(name + ".blindlap");
      SetClock clock = new SetClock(Instant.parse(start));
      var ids = SampleSources.stream(name, "id");
      return new Book(
          name,
          notebook,
          clock,
          new Desk(
              SqliteNotebook.open(notebook, ids.exactly(16), clock.instant()),
              clock,
              SampleSources.of(name),
              new SealParameters(1_000),
              ids));
    }

    SampleSession sample() {
      return new SampleSession(name, desk);
    }

    ManualWindow window() {
      return ManualWindow.open(desk, notebook, clock, new FakeMaker(), Map.of());
    }

    @Override
    public void close() {
      desk.close();
    }
  }

  static void findings(Path folder, Album album) {
    finding(folder, album, "tyres-on-fern-trail", ManualPicture.THREE_SETUPS);
    finding(folder, album, "rebound-on-heron-line", ManualPicture.STEPS_REVIEW);
    finding(folder, album, "clicks-told-on-alder-bank", ManualPicture.TELLING_REVIEW);
    try (Book book = Book.of(folder, "clicks-on-wet-steps", "2026-09-05T07:00:00Z")) {
      SessionState state = book.sample().whole();
      Cards.put(
          album, ManualPicture.CARD_TALL, book.desk().reviews().card(state, false), "1080x1350");
    }
  }

  private static void finding(Path folder, Album album, String name, ManualPicture picture) {
    try (Book book = Book.of(folder, name, "2026-10-10T07:00:00Z")) {
      SessionId id = book.sample().whole().id();
      try (ManualWindow window = book.window()) {
        window.open(Shell.Page.REVIEW, id);
        album.take(window, picture);
      }
    }
  }

  static void plans(Path folder, Album album) {
    plan(folder, album, "rebound-on-heron-line", ManualPicture.STEPS_PLAN);
    plan(folder, album, "clicks-told-on-alder-bank", ManualPicture.TELLING_PLAN);
  }

  private static void plan(Path folder, Album album, String name, ManualPicture picture) {
    try (Book book = Book.of(folder, name + "-plan", "2026-10-09T17:00:00Z");
        ManualWindow window = book.window()) {
      String draft = book.desk().planning().freshName();
      String text = new SampleSession(name, book.desk()).planText();
      book.desk().planning().keep(draft, book.desk().planning().importText(text).fields());
      window.draft(draft);
      album.take(window, picture);
    }
  }

  /** The third lap of the fourth trial is ridden, and asked about. */
  static void trial(Path folder, Album album) {
    try (Book book = Book.of(folder, "clicks-told-on-alder-bank", "2026-11-07T08:00:00Z")) {
      SampleSession sample = book.sample();
      Committing.Result.Committed committed = sample.commit();
      SessionId id = committed.state().id();
      Hands helper = new Hands(book.desk(), id, committed.sealed().phrase().text());
      helper.handOver(0, HANDLED);
      book.desk().riderDays().warmUp(id);
      helper.back(0);
      List<String> rows = new String(sample.laps(), StandardCharsets.UTF_8).lines().toList();
      for (int stint = 1; stint <= 12; stint++) {
        book.clock().move(Duration.ofMinutes(7));
        helper.handOver(stint, HANDLED);
        if (stint < 12) {
          String row = rows.get(0) + "\n" + rows.get(stint) + "\n";
          byte[] file = row.getBytes(StandardCharsets.UTF_8);
          Hands.done(
              new LapFiles(book.desk().sessions())
                  .record(book.desk().sessions().state(id).orElseThrow(), file));
          helper.back(stint);
        }
      }
      try (ManualWindow window = book.window()) {
        window.open(Shell.Page.RIDE, id);
        window.press("Pick one, however unsure: lap 2");
        window.press("How sure?: fairly sure");
        window.settle();
        album.take(window, ManualPicture.TELLING_RIDE);
      }
    }
  }

  /** The forks without a helper: the order is covered, and shown one stint at a time. */
  static void alone(Path folder, Album album) {
    try (ForkDay day = new ForkDay(folder, "alone")) {
      String text =
          ForkDay.text()
              .replaceAll("(?m)^blinding: .*$", LEVEL)
              .replace("protocol: blocks-of-four", "protocol: whole-day");
      PlanPreview preview = PlanPreview.of(text, day.desk().protocols());
      Plan typed =
          preview.plan().orElseThrow(() -> new AssertionError("refused: " + preview.problems()));
      Plan plan = typed.with(day.desk().trails().latest(typed.trail()).orElseThrow().version());
      Committing.Result.Covered covered =
          (Committing.Result.Covered) day.desk().committing().cover(plan, List.of("K. Vogt"));
      day.clock().move(Duration.ofHours(14));
      try (ManualWindow window =
          ManualWindow.open(day.desk(), day.notebook(), day.clock(), new FakeMaker(), Map.of())) {
        window.open(Shell.Page.RIDE, covered.state().id());
        window.press("Show what to mount next");
        window.type("rebound, measured", "8");
        window.type("sag, measured", "22.5");
        window.settle();
        album.take(window, ManualPicture.ALONE_MOUNT);
      }
    }
  }
}
