package blindlap.phone.browser;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.TellingTestDay;
import blindlap.desk.TestDay;
import blindlap.plan.TellingTask;
import blindlap.session.Fact;
import blindlap.session.SessionState;
import blindlap.session.StoredEntry;
import blindlap.session.day.ByPhone;
import blindlap.session.day.DeviationKind;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.session.day.PhoneRole;
import blindlap.session.day.Trial;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/**
 * Phones as people hold them: a real browser of their size, with touch. Not part of {@code mvn
 * verify}; {@code .ci/run} installs the browser and runs it, and without one it fails.
 */
class PhonesInBrowser {
  private static final String GRIP = "grip in the rocks";
  private static final String HARSH = "harshness at the hands";

  static {
    System.setProperty("sun.net.httpserver.nodelay", "true"); // as Main does
  }

  @TempDir Path folder;
  private DayOnLaptop day;
  private PhoneBrowser rider;
  private PhoneBrowser starter;

  @BeforeEach
  void open() {
    day = new DayOnLaptop(folder.resolve("day.blindlap"), TestDay.SIXTEEN);
    rider = PhoneBrowser.fresh(folder, "rider", 390, 844);
    starter = PhoneBrowser.fresh(folder, "starter", 390, 844);
  }

  @AfterEach
  void close() {
    rider.close();
    starter.close();
    day.close();
  }

  private void scan() {
    rider.open(day.link(PhoneRole.RIDER));
    starter.open(day.link(PhoneRole.STARTER));
    rider.sees("Warm-up lap 1 of 1");
    starter.sees("Warm-up");
  }

  private void warmUp() {
    day.handOver(0);
    rider.touch("Warm-up lap ridden");
    rider.until("warm-up in the notebook", () -> day.state().warmUps() == 1);
    day.returned(0);
  }

  /** What a lap of a stint is given, other values for other stints. */
  private static int value(int stint) {
    return 20 + 3 * stint;
  }

  private void time() {
    starter.touch("Start");
    starter.touch("Stop");
    starter.sees("The time is saved and stays hidden.");
  }

  private void score(int stint) {
    rider.mark(GRIP, value(stint) / 100.0);
    rider.mark(HARSH, 0.5);
    rider.touchAt("[id='q-trust-" + (1 + stint % 9) + "']", 0.5);
    rider.touchAt("[id='more-feet off the pedals']", 0.5);
    rider.touchAt("#guess-" + (1 + stint % 2), 0.5);
    rider.touch("a hunch");
    rider.sees("Your guess: a hunch");
  }

  private void done(int stint) {
    rider.touch("Done with lap " + stint);
    rider.touch(stint == 16 ? "On to the end of the day" : "On to the next lap");
  }

  private LapState lap(int stint) {
    return day.state().lap(new LapId(stint, 1)).orElseThrow();
  }

  @Test
  void aWholeDayByTwoPhonesAndALaptop() throws Exception {
    scan();
    assertThat(rider.script("return window.isSecureContext")).isEqualTo(false);
    assertThat(rider.script("return location.href").toString()).doesNotContain("#");
    warmUp();
    for (int stint = 1; stint <= 16; stint++) {
      switch (stint) {
        case 6 -> withoutSignal(stint);
        case 9 -> killedBetweenEntryAndAnswer(stint);
        default -> {
          day.handOver(stint);
          time();
          score(stint);
          done(stint);
        }
      }
      int ridden = stint;
      rider.until("lap " + stint, () -> day.state().lapsRidden() == ridden);
      day.returned(stint);
    }
    rider.sees("Every lap is ridden.");
    rider.sees("in the notebook");
    everythingIsInTheNotebookOnce();
    assertThat(rider.complaints()).filteredOn(line -> line.contains("Uncaught")).isEmpty();
    assertThat(starter.complaints()).filteredOn(line -> line.contains("Uncaught")).isEmpty();
  }

  /** Five triangles on the rider's phone: one without signal, one void at its first lap. */
  @Test
  void aTellingRunOnTheRidersPhone() {
    day.close();
    day =
        new DayOnLaptop(
            folder.resolve("run.blindlap"), TellingTestDay.levels(TellingTask.TRIANGLE, 5));
    rider.open(day.link(PhoneRole.RIDER));
    rider.sees("Warm-up lap 1 of 1");
    warmUp();
    for (int trial = 1; trial <= 5; trial++) {
      for (int place = 1; place <= (trial == 2 ? 1 : 3); place++) {
        trialLap(trial, place);
      }
    }
    rider.sees("Every lap is ridden.");
    assertThat(Trial.of(day.state().day()))
        .extracting(Trial::named)
        .containsExactly(2, null, 1, 2, 3);
    assertThat(Trial.of(day.state().day()))
        .extracting(Trial::standing)
        .containsExactly(
            Trial.Standing.ANSWERED,
            Trial.Standing.VOID,
            Trial.Standing.ANSWERED,
            Trial.Standing.ANSWERED,
            Trial.Standing.ANSWERED);
    assertThat(day.state().notApplied()).isEmpty();
    assertThat(rider.complaints()).filteredOn(line -> line.contains("Uncaught")).isEmpty();
  }

  private void trialLap(int trial, int place) {
    int stint = 3 * (trial - 1) + place;
    boolean silent = trial == 4 && place == 3;
    if (silent) {
      rider.signal(false); // before it can hear of the hand-over, which it then asks for
    }
    day.handOver(stint);
    rider.sees("Trial " + trial + " of 5, lap " + place + " of 3");
    if (silent) {
      rider.touch("Yes");
    }
    if (trial == 2) {
      rider.touch("Spoiled …");
      rider.touch("crash");
      rider.touch("Void trial 2");
    } else {
      if (place == 3) {
        rider.sees("Which lap differed?");
        assertThat(rider.words()).doesNotContain("don't know");
        rider.touchAt("#guess-" + (1 + trial % 3), 0.5);
        rider.touch("fairly sure");
        rider.sees("Your answer: lap " + (1 + trial % 3));
      }
      rider.touch("Done with lap " + place + " of trial " + trial);
    }
    rider.touch(stint == 15 ? "On to the end of the day" : "On to the next lap");
    if (silent) {
      rider.sees("answers unsent");
      rider.signal(true);
    }
    rider.until("lap " + stint, () -> day.state().day().ridden(new LapId(stint, 1)));
    day.returned(stint);
  }

  /** The rider is out of reach for a whole lap; the page is loaded again without signal. */
  private void withoutSignal(int stint) {
    rider.signal(false);
    starter.signal(false);
    day.handOver(stint);
    String code = String.valueOf(day.state().code(stint));
    rider.sees(code + " on the plate?");
    rider.touch("Yes");
    if (starter.words().contains("Next lap")) {
      starter.touch("Next lap"); // it had not heard that the lap before is done
    }
    starter.sees("Start only if " + code + " is on the plate");
    time();
    starter.sees("Kept on this phone, not yet in the notebook.");
    score(stint);
    rider.sees("Kept on this phone, not yet in the notebook.");
    rider.sees("answers unsent");
    assertThat(day.state().lap(new LapId(stint, 1))).as("nothing came").isEmpty();
    rider.reload();
    assertThat(rider.words()).as("the browser's own error").doesNotContain("Kept on this phone");
    rider.signal(true);
    rider.reload();
    rider.until("the scores", () -> day.state().lap(new LapId(stint, 1)).isPresent());
    rider.sees("in the notebook");
    done(stint);
    starter.signal(true);
    starter.until("the time", () -> lap(stint).values().containsKey("lap time"));
  }

  private void killedBetweenEntryAndAnswer(int stint) throws InterruptedException {
    day.handOver(stint);
    time();
    starter.sees("It is in the notebook.");
    day.killAfterNextEntry();
    rider.touchAt("[id='q-" + GRIP + "'] .line", value(stint) / 100.0);
    day.startAgainOnceKilled();
    score(stint);
    done(stint);
  }

  private void everythingIsInTheNotebookOnce() {
    SessionState state = day.state();
    Set<String> messages = new HashSet<>();
    for (StoredEntry entry : state.entries()) {
      ByPhone phone = entry.entry().phone();
      if (phone != null) {
        assertThat(messages.add(phone.client() + phone.number() + entry.entry().fact())).isTrue();
      }
    }
    for (int stint = 1; stint <= 16; stint++) {
      LapState lap = lap(stint);
      assertThat(lap.ridden()).isTrue();
      assertThat(lap.twice()).isEmpty();
      assertThat(lap.values().get(GRIP).doubleValue())
          .isBetween(value(stint) - 1.0, value(stint) + 1.0);
      assertThat(lap.values().get("trust").intValue()).isEqualTo(1 + stint % 9);
      assertThat(lap.values().get("feet off the pedals").intValue()).isEqualTo(1);
      assertThat(lap.times().get("lap time").doubtful()).as("stint %d", stint).isFalse();
      assertThat(state.guesses().get(stint))
          .isEqualTo(new Guess(stint % 2, Guess.Sureness.HUNCH, ""));
    }
    List<Fact> facts =
        state.entries().stream()
            .filter(e -> e.entry().phone() != null)
            .map(e -> e.entry().fact())
            .toList();
    assertThat(facts).filteredOn(f -> f instanceof Fact.LapRidden).hasSize(16);
    assertThat(facts).filteredOn(f -> f instanceof Fact.TimeTaken).hasSize(16);
    assertThat(facts).filteredOn(f -> f instanceof Fact.GuessGiven).hasSize(32);
    assertThat(facts).filteredOn(f -> f instanceof Fact.ScoreGiven).hasSize(64);
    assertThat(state.deviations())
        .extracting(Fact.DeviationNoted::kind)
        .doesNotContain(DeviationKind.WITHOUT_HAND_OVER);
    assertThat(state.phones().conflicts()).isEmpty();
    assertThat(IntStream.rangeClosed(1, 16).allMatch(state::handedOver)).isTrue();
  }

  /** An empty battery takes nothing: what was kept is there when the phone is on again. */
  @Test
  void whatWasKeptOutlivesTheBrowser() {
    scan();
    warmUp();
    day.handOver(1);
    rider.sees("Stint 1 of 16");
    rider.find("[id='q-" + GRIP + "'] .line");
    rider.signal(false);
    rider.touchAt("[id='q-" + GRIP + "'] .line", 0.41);
    rider.sees("Kept on this phone, not yet in the notebook.");
    rider = rider.again(390, 844);
    rider.open("http://" + PhoneBrowser.HOST + ":" + day.port() + "/ride");
    rider.until("the score", () -> day.state().lap(new LapId(1, 1)).isPresent());
    assertThat(lap(1).values().get(GRIP).doubleValue()).isBetween(40.0, 42.0);
  }

  @Test
  void aSecondPhoneWaitsToBeLetInAndAThrownOutOneIsTold() {
    scan();
    try (PhoneBrowser second = PhoneBrowser.fresh(folder, "second", 360, 640)) {
      second.open(day.link(PhoneRole.RIDER));
      second.sees("Waiting to be let in at the laptop.");
      String id = day.phones().known().stream().filter(p -> !p.in()).findFirst().orElseThrow().id();
      day.phones().letIn(id);
      second.sees("Warm-up lap 1 of 1");
      day.phones().throwOut(id);
      second.sees("The laptop has put this phone out.");
    }
  }

  /** What was pressed twice at once was pressed once: what stands there now was not meant. */
  @Test
  void aTouchCannotHitWhatWasNotThereAMomentAgo() {
    scan();
    day.handOver(0);
    rider.touchTwice("Warm-up lap ridden");
    rider.until("warm-up", () -> day.state().warmUps() == 1);
    day.returned(0);
    day.handOver(1);
    score(1);
    rider.touchTwice("Done with lap 1");
    rider.until("the lap", () -> day.state().lapsRidden() == 1);
    rider.sees("On to the next lap");
    assertThat(day.state().warmUps()).isEqualTo(1);
  }

  /** A slip of the finger on a spoiled lap: the page stays on the lap until the rider goes on. */
  @Test
  void aVoidIsTakenBackOnThePageThatSaidIt() {
    scan();
    warmUp();
    day.handOver(1);
    score(1);
    rider.touch("Spoiled …");
    rider.touch("puncture");
    rider.touch("Void lap 1");
    rider.until("the void", () -> lap(1).voided().isPresent());
    rider.sees("On to the next lap");
    rider.touch("More …");
    rider.touch("Take back: the void of lap 1");
    rider.until("the lap again", () -> lap(1).voided().isEmpty());
    rider.sees("Done with lap 1");
  }

  /**
   * Words under way outlive whatever else happens on the page, and belong to the lap asked about.
   */
  @Test
  void aHalfTypedNoteOutlivesTheSignalAndEscapeGoesBackToWhereItWasOpened() {
    scan();
    warmUp();
    day.handOver(1);
    score(1);
    rider.touch("Note …");
    rider.find("#typed").sendKeys("rattles in");
    rider.signal(false);
    rider.sees("No signal");
    rider.signal(true);
    rider.seesNoMore("No signal");
    rider.find("#typed").sendKeys(" the braking bumps");
    rider.touch("Keep");
    rider.until("the note", () -> !lap(1).note().isEmpty());
    assertThat(lap(1).note()).isEqualTo("rattles in the braking bumps");
    rider.touch("Note …");
    rider.find("#typed").sendKeys(Keys.ESCAPE);
    rider.sees("Done with lap 1");
    assertThat(rider.script("return document.activeElement.id")).isEqualTo("note");
  }

  /** Whoever is put out is shown what did not arrive, to write it on paper. */
  @Test
  void aPhonePutOutShowsWhatItDidNotSend() {
    scan();
    warmUp();
    day.handOver(1);
    rider.touch("Note …");
    rider.signal(false);
    rider.find("#typed").sendKeys("only here");
    rider.touch("Keep");
    rider.sees("unsent");
    String id =
        day.phones().known().stream()
            .filter(p -> p.role() == PhoneRole.RIDER)
            .findFirst()
            .orElseThrow()
            .id();
    day.phones().throwOut(id);
    rider.signal(true);
    rider.sees("The laptop has put this phone out.");
    rider.sees("only here");
  }

  /** Names and notes are words, whatever stands in them. */
  @Test
  void scriptInANoteIsShownAndNotRun() {
    scan();
    warmUp();
    day.handOver(1);
    String script = "<img src=x onerror=\"document.title='run'\">";
    rider.touch("Note");
    rider.find("#typed").sendKeys(script);
    rider.touch("Keep");
    rider.until(
        "the note",
        () -> day.state().lap(new LapId(1, 1)).filter(l -> !l.note().isEmpty()).isPresent());
    assertThat(lap(1).note()).isEqualTo(script);
    rider.touch("Note");
    assertThat(rider.find("#typed").getAttribute("value")).isEqualTo(script);
    assertThat(rider.script("return document.title")).isNotEqualTo("run");
  }

  /**
   * On a phone four times slower than this machine there is something to read within half a second
   * of a first visit. What else the machine does is no matter of the page: the best of five counts.
   */
  @Test
  void theFirstPaintComesWithinHalfASecondOnAPhoneFourTimesSlower() {
    double best = Double.POSITIVE_INFINITY;
    for (int visit = 0; visit < 5; visit++) {
      try (PhoneBrowser phone = PhoneBrowser.fresh(folder, "visit" + visit, 390, 844)) {
        phone.slower(4);
        phone.open("http://" + PhoneBrowser.HOST + ":" + day.port() + "/ride");
        phone.sees("Scan the code");
        best = Math.min(best, phone.firstPaint());
      }
    }
    System.out.printf(Locale.ROOT, "first paint after %.0f ms%n", best);
    assertThat(best).isLessThan(500);
  }

  /** At the sizes of phones nothing is wider than the phone; pictures to look at. */
  @Test
  void bothPagesFitPhonesUprightAndTurned() {
    scan();
    warmUp();
    day.handOver(1);
    starter.touch("Start");
    rider.sees("Stint 1 of 16");
    rider.touchAt("[id='q-" + GRIP + "'] .line", 0.62);
    rider.sees("answers open");
    int[][] sizes = {{390, 844}, {360, 640}, {844, 390}};
    for (int[] size : sizes) {
      for (PhoneBrowser phone : List.of(rider, starter)) {
        phone.size(size[0], size[1]);
        phone.script("scrollTo(0, 0)");
        assertThat(phone.tooWide()).as("%d x %d", size[0], size[1]).isEmpty();
        phone.picture(
            pictures((phone == rider ? "phone-ride-" : "phone-start-") + size[0] + ".png"));
      }
    }
    rider.size(390, 844);
    rider.signal(false);
    rider.touchAt("[id='q-" + HARSH + "'] .line", 0.3);
    rider.sees("Kept on this phone, not yet in the notebook.");
    rider.script("scrollTo(0, 0)");
    rider.picture(pictures("phone-ride-kept.png"));
  }

  private Path pictures(String name) {
    String wanted = System.getProperty("blindlap.pictures");
    return (wanted == null ? folder : Path.of(wanted)).resolve(name);
  }
}
