package blindlap.wording;

import blindlap.plan.Measure;
import blindlap.plan.Setup;
import blindlap.review.FieldFinding;
import blindlap.stats.compare.Scale;
import blindlap.stats.pool.Field;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A field in sentences. It has no verdict of its own and puts nothing in an order of merit; what
 * was ridden on one day and what only follows are never said in one breath.
 */
public final class FieldWords {
  private static final Words WORDS = FieldRowWords.WORDS;

  private final FieldFinding finding;
  private final String reference;

  public FieldWords(FieldFinding finding) {
    this.finding = finding;
    this.reference = finding.reference().map(Setup::name).orElse("");
  }

  /** A sentence of the bundle. */
  public static String say(String key, Object... arguments) {
    return WORDS.say(key, arguments);
  }

  /** "R. Lind on Quarry loop by lap time". */
  public static String named(FieldFinding.Asked asked) {
    return WORDS.say("list", asked.rider(), asked.trail(), asked.measure());
  }

  /** What the page asks. */
  public String question() {
    return reference.isEmpty()
        ? WORDS.say("question.none")
        : WORDS.say("question", reference, finding.asked().rider(), finding.asked().trail());
  }

  /** What is put together. */
  public String about() {
    FieldFinding.Asked asked = finding.asked();
    return WORDS.say(
        reference.isEmpty() ? "about.none" : "about",
        asked.rider(),
        asked.trail(),
        asked.measure(),
        finding.days().size(),
        finding.setups().size(),
        reference);
  }

  /** "faster than Shock K", for the two sides of an axis; side −1 is below zero. */
  public String side(int side) {
    return WORDS.say("side", FieldRowWords.word(finding.measure().orElseThrow(), side), reference);
  }

  /** The rows against the reference. */
  public List<FieldRowWords> rows() {
    return finding.rows().stream().map(pair -> new FieldRowWords(finding, pair)).toList();
  }

  /** Pairs of two others. */
  public List<FieldRowWords> others() {
    return finding.others().stream().map(pair -> new FieldRowWords(finding, pair)).toList();
  }

  /**
   * The answer. What was ridden with the reference on one day comes first and is what may be
   * marked; what only follows comes after it.
   */
  public Headline headline() {
    if (!finding.told()) {
      return Headline.of(WORDS.say("headline." + untold()), "");
    }
    String ridden = grouped(FieldFinding.Standing.RIDDEN, "headline.ridden");
    String follows = grouped(FieldFinding.Standing.FOLLOWS, "headline.follows");
    if (ridden.isEmpty() && follows.isEmpty()) {
      return Headline.of(WORDS.say("headline.apart", reference), "");
    }
    if (ridden.isEmpty()) {
      return Headline.of(WORDS.say("headline.end", follows), "");
    }
    return follows.isEmpty()
        ? Headline.of(WORDS.say("headline.end", Headline.PLACE), ridden)
        : Headline.of(
            WORDS.say("headline.end", WORDS.say("headline.more", Headline.PLACE, follows)), ridden);
  }

  private String untold() {
    if (finding.withheld()) {
      return "withheld";
    }
    return finding.days().isEmpty() ? "none" : finding.refusal().isPresent() ? "refused" : "few";
  }

  /** Setups that are told apart from the reference, those of one side together, in their order. */
  private String grouped(FieldFinding.Standing standing, String key) {
    Map<String, List<String>> bySide = new LinkedHashMap<>();
    for (FieldRowWords row : rows()) {
      if (row.pair().standing() == standing && row.pair().toldApart()) {
        bySide.computeIfAbsent(row.side(), k -> new ArrayList<>()).add(row.name());
      }
    }
    String so = "";
    for (Map.Entry<String, List<String>> side : bySide.entrySet()) {
      String did =
          WORDS.say("verb." + side.getKey(), side.getValue().size(), finding.asked().measure());
      String one = WORDS.say(key, FieldRowWords.listed(side.getValue()), did);
      so = so.isEmpty() ? one : WORDS.say("headline.more", so, one);
    }
    return so;
  }

  /** What stands below the answer. */
  public List<String> lead() {
    List<String> lines = new ArrayList<>();
    if (!finding.told()) {
      finding
          .refusal()
          .ifPresentOrElse(
              problem -> lines.add(Problems.sentence(problem)),
              () -> lines.add(WORDS.say("lead." + untold(), agreed())));
      return lines;
    }
    List<String> open = new ArrayList<>();
    for (FieldRowWords row : rows()) {
      if (row.pair().standing() != FieldFinding.Standing.APART && !row.pair().toldApart()) {
        open.add(row.name());
      }
    }
    if (!open.isEmpty()) {
      lines.add(WORDS.say("lead.open", FieldRowWords.listed(open), reference, open.size()));
    }
    for (FieldRowWords row : rows()) {
      switch (row.pair().standing()) {
        case RIDDEN -> {}
        case FOLLOWS -> lines.add(WORDS.say("lead.follows", row.name(), reference, row.over()));
        case APART -> lines.add(WORDS.say("lead.apart", row.name(), reference));
      }
    }
    return lines;
  }

  private String agreed() {
    return finding.agreement().map(a -> DifferenceWords.p(a.p())).orElse("");
  }

  /**
   * What stands between plot and table, whatever they show; it cannot be folded away. Where the
   * days do not agree it says so; where nothing was put together there is nothing that it could be
   * of.
   */
  public List<String> cautions() {
    if (finding.withheld()) {
      return List.of(agreement(), WORDS.say("caution.withheld"));
    }
    if (!finding.told()) {
      return List.of();
    }
    List<String> lines = new ArrayList<>();
    lines.add(WORDS.say("caution.leads"));
    lines.add(agreement());
    lines.add(WORDS.say("caution.holds"));
    if (finding.rows().stream().anyMatch(p -> p.standing() == FieldFinding.Standing.FOLLOWS)) {
      lines.add(WORDS.say("follows"));
    }
    return lines;
  }

  private String agreement() {
    Optional<Field.AgreementOfDays> agreement = finding.agreement();
    return agreement.isEmpty()
        ? WORDS.say("agreement.unchecked")
        : WORDS.say(finding.withheld() ? "agreement.not" : "agreement.checked", agreed());
  }

  /** The reference, in a sentence. */
  public String referenceLine() {
    return WORDS.say(
        "row.reference",
        reference,
        ofReference(),
        finding.days().size(),
        finding.reference().map(FieldRowWords::cost).orElse(""));
  }

  /** "ridden on 3 of the 5 days". */
  public String referenceRidden() {
    return WORDS.say("ridden.reference", ofReference(), finding.days().size());
  }

  private int ofReference() {
    String id = finding.reference().map(Setup::id).orElse("");
    return (int) finding.days().stream().filter(day -> day.setups().contains(id)).count();
  }

  /** Which day next; none where that cannot be said. */
  public List<String> next() {
    List<String> lines = new ArrayList<>();
    finding
        .next()
        .ifPresent(
            next -> {
              String now = Double.isInfinite(next.now()) ? "" : half(next.now());
              lines.add(
                  WORDS.say(
                      now.isEmpty() ? "next.connect" : "next",
                      finding.setup(next.first()).name(),
                      finding.setup(next.second()).name(),
                      next.stints(),
                      now,
                      half(next.then())));
              lines.add(WORDS.say("next.how"));
            });
    return lines;
  }

  private String half(double shift) {
    Measure measure = finding.measure().orElseThrow();
    double size = Sizes.size(measure, shift);
    String number = Figures.number(size, Figures.decimals(size));
    return number + (measure.scale() == Scale.RATIO ? " %" : " " + Sizes.unit(measure, number));
  }

  /** Days that enter, a line each. */
  public List<String> days() {
    List<String> lines = new ArrayList<>();
    for (FieldFinding.Day day : finding.days()) {
      StringBuilder remarks = new StringBuilder();
      for (FieldFinding.Remark remark : FieldFinding.Remark.values()) {
        remarks.append(day.remarks().contains(remark) ? WORDS.say("remark." + remark) : "");
      }
      lines.add(
          WORDS.say(
              "day",
              SeriesWords.date(day.day()),
              day.session().substring(0, 8),
              FieldRowWords.listed(
                  day.setups().stream().map(id -> finding.setup(id).name()).toList()),
              day.used(),
              remarks.toString()));
    }
    return lines;
  }

  /** Sessions that do not enter, a line each with the reason. */
  public List<String> out() {
    return finding.out().stream()
        .map(
            out ->
                WORDS.say(
                    "out",
                    SeriesWords.date(out.day()),
                    out.session().substring(0, 8),
                    FieldRowWords.listed(out.setups()),
                    WORDS.say("why." + out.why())))
        .toList();
  }

  /** The answer, the rows, the cautions, pairs of others, days. */
  public List<String> lines() {
    List<String> lines = new ArrayList<>();
    lines.add(about());
    lines.add(headline().text());
    lines.addAll(lead());
    if (!finding.rows().isEmpty()) {
      lines.add("  " + referenceLine());
      rows().forEach(row -> lines.add("  " + row.sentence()));
      lines.addAll(cautions());
    }
    listed(lines, "others.title", others().stream().map(FieldRowWords::between).toList());
    lines.addAll(next());
    listed(lines, "days.title", days());
    listed(lines, "out.title", out());
    return lines;
  }

  private static void listed(List<String> lines, String title, List<String> under) {
    if (!under.isEmpty()) {
      lines.add(WORDS.say(title));
      under.forEach(line -> lines.add("  " + line));
    }
  }
}
