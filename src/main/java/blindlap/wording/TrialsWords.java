package blindlap.wording;

import blindlap.plan.Handlings;
import blindlap.plan.Plan;
import blindlap.plan.Schedule;
import blindlap.plan.TellingRun;
import blindlap.stats.tell.TrialsPower;
import blindlap.wording.day.DayWords;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

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
  private final Optional<Duration> trial;

  private TrialsWords(Plan plan, TellingRun run) {
    this.plan = plan;
    this.run = run;
    this.shows = run.shows();
    this.trial = trial(plan, run);
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
    lines.addAll(rows().stream().map(Row::line).toList());
    return lines;
  }

  /** Heads of the columns of {@link Row#cells}. */
  public List<String> heads() {
    Stream<String> heads = Stream.of("trials", "laps", "least", "felt", "nothing");
    return Stream.concat(heads, trial.stream().map(known -> "takes"))
        .map(head -> WORDS.say("head." + head, share()))
        .toList();
  }

  /**
   * What so many trials can show.
   *
   * @param cells as in a table
   * @param line as in a sentence
   * @param planned true for the plan's own number
   */
  public record Row(List<String> cells, String line, boolean planned) {
    public Row {
      cells = List.copyOf(cells);
    }
  }

  /** Other numbers of trials and the plan's own, rising. */
  public List<Row> rows() {
    return run.table().stream().map(this::row).toList();
  }

  private Row row(TrialsPower row) {
    boolean planned = row.trials() == run.trials();
    int laps = row.trials() * run.task().laps();
    boolean shows = row.least().isPresent();
    String least = shows ? String.valueOf(row.least().getAsInt()) : WORDS.say("cell.never");
    String key = shows ? "row" : "row.never";
    List<String> cells =
        new ArrayList<>(
            List.of(
                String.valueOf(row.trials()),
                String.valueOf(laps),
                least,
                inHundred(row.power()),
                inHundred(row.cannot())));
    String line =
        WORDS.say(
            planned ? key + ".own" : key,
            row.trials(),
            row.least().orElse(0),
            inHundred(row.power()),
            inHundred(row.cannot()),
            laps);
    Optional<String> takes = trial.map(each -> DayWords.duration(each.multipliedBy(row.trials())));
    takes.ifPresent(cells::add);
    return new Row(
        cells, takes.map(all -> WORDS.say("row.takes", line, all)).orElse(line), planned);
  }

  /** How often parts are handled; of levels it is said beside them. */
  public List<String> handlings() {
    Handlings all = Handlings.of(plan);
    return plan.oneSetting() == null
        ? List.of(WORDS.say("handlings", all.day(), all.perSetupAtMost()))
        : List.of(WORDS.say("handlings.levels", all.day()));
  }

  private String share() {
    BigDecimal percent = run.matters().movePointRight(2).stripTrailingZeros();
    return percent.toPlainString();
  }

  private static String inHundred(double share) {
    return Figures.inHundred(share);
  }

  private Optional<String> minutes() {
    return trial.map(
        each -> {
          int decimals = each.toSeconds() % 60 == 0 ? 0 : 1;
          return WORDS.say(
              "minutes",
              Figures.number(each.toSeconds() / 60.0, decimals),
              run.task().laps(),
              run.trials(),
              DayWords.duration(each.multipliedBy(run.trials())));
        });
  }

  /** Laps, climbs, handlings and the answer of a trial; rests are not in it. */
  private static Optional<Duration> trial(Plan plan, TellingRun run) {
    try {
      return Schedule.of(plan)
          .map(
              schedule ->
                  schedule.stints().stream()
                      .limit(run.task().laps())
                      .map(block -> Duration.between(block.from(), block.to()))
                      .reduce(Duration.ZERO, Duration::plus))
          .filter(each -> each.compareTo(Duration.ZERO) > 0);
    } catch (java.time.DateTimeException | ArithmeticException impossible) {
      // A duration beyond all measure; PlanCheck says so beside its field.
      return Optional.empty();
    }
  }
}
