package blindlap.wording;

import blindlap.plan.Plan;
import blindlap.plan.Schedule;
import blindlap.plan.TellingRun;
import blindlap.stats.tell.TrialsPower;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What the trials of a telling run can show, in words, before they are ridden. */
public final class TrialsWords {
  private static final Words WORDS = Words.of("trials");

  /**
   * What the day can show.
   *
   * @param marked the words that carry it
   * @param after words after them
   */
  record Answer(String marked, String after) {}

  private final Plan plan;
  private final TellingRun run;
  private final TrialsPower shows;

  private TrialsWords(Plan plan, TellingRun run) {
    this.plan = plan;
    this.run = run;
    this.shows = run.shows();
  }

  /** Empty for other plans, and where trials or share are such as no run has. */
  public static Optional<TrialsWords> of(Plan plan) {
    TellingRun run = plan.kind() == Plan.Kind.TELLING_RUN ? plan.telling() : null;
    if (run == null
        || run.trials() < 1
        || run.trials() > TellingRun.MOST_TRIALS
        || run.matters().signum() <= 0
        || run.matters().compareTo(BigDecimal.ONE) > 0) {
      return Optional.empty();
    }
    return Optional.of(new TrialsWords(plan, run));
  }

  /** The answer to what the day can show; empty where not even all answers right would do. */
  Optional<Answer> answer() {
    if (shows.least().isEmpty()) {
      return Optional.empty();
    }
    Object[] details = {
      shows.least().getAsInt(), run.trials(), plan.rider(), Figures.number(guessed(), 0)
    };
    return Optional.of(new Answer(WORDS.say("marked", details), WORDS.say("after", details)));
  }

  private double guessed() {
    return run.trials() * run.task().discrimination().chance();
  }

  /** What the answer means, a sentence each. */
  public List<String> lead() {
    List<String> lines = new ArrayList<>();
    if (shows.least().isEmpty()) {
      lines.add(WORDS.say("never", run.trials(), Figures.p(shows.smallestP())));
    } else {
      lines.add(WORDS.say("power", share(), inHundred(shows.power())));
    }
    lines.add(WORDS.say("cannot", share(), inHundred(shows.cannot())));
    lines.add(WORDS.say("asked." + run.task().name(), run.attribute(), run.more()));
    minutes().ifPresent(lines::add);
    return lines;
  }

  /** Other numbers of trials and the plan's own, a line each, with what is in them. */
  public List<String> table() {
    List<String> lines = new ArrayList<>();
    lines.add(WORDS.say("table", share()));
    for (TrialsPower row : run.table()) {
      String key = row.least().isPresent() ? "row" : "row.never";
      lines.add(
          WORDS.say(
              row.trials() == run.trials() ? key + ".own" : key,
              row.trials(),
              row.least().orElse(0),
              inHundred(row.power()),
              inHundred(row.cannot()),
              row.trials() * run.task().laps()));
    }
    return lines;
  }

  private String share() {
    BigDecimal percent = run.matters().movePointRight(2).stripTrailingZeros();
    return percent.toPlainString();
  }

  private static String inHundred(double share) {
    return Figures.inHundred(share);
  }

  /** Laps, climbs, handlings and answers of one trial; rests are not in them. */
  private Optional<String> minutes() {
    return Schedule.of(plan)
        .map(
            schedule -> {
              Duration laps =
                  schedule.blocks().stream()
                      .filter(block -> block.kind() == Schedule.Kind.STINT)
                      .limit(run.task().laps())
                      .map(block -> Duration.between(block.from(), block.to()))
                      .reduce(Duration.ZERO, Duration::plus);
              return WORDS.say(
                  "minutes", Figures.number(laps.toSeconds() / 60.0, 1), run.task().laps());
            });
  }
}
