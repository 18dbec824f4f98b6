package blindlap.paper;

import static blindlap.paper.ReportPage.cell;

import blindlap.compute.FieldRequests;
import blindlap.picture.FieldPicture;
import blindlap.plan.Setup;
import blindlap.review.FieldFinding;
import blindlap.review.FieldProfiles;
import blindlap.wording.FieldProfilesWords;
import blindlap.wording.FieldRowWords;
import blindlap.wording.FieldWords;
import blindlap.wording.Headline;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * The report of a field: answer, plot, what it hangs on, every setup, pairs of others, days,
 * method.
 */
public final class FieldReport {
  private static final Words WORDS = Words.of("report");

  /**
   * What a report is made of.
   *
   * @param beside profiles with what the days found of their measures
   * @param fingerprints of the days that enter
   * @param engine version of the program
   * @param ink colour, or black on white
   */
  public record Input(
      FieldFinding finding,
      FieldProfiles beside,
      List<SeriesReport.Fingerprints> fingerprints,
      String engine,
      ReportInput.Ink ink) {
    public Input {
      fingerprints = List.copyOf(fingerprints);
    }
  }

  private final Input input;
  private final FieldFinding finding;
  private final FieldWords words;
  private final ReportPage page;

  private FieldReport(Input input) {
    this.input = input;
    this.finding = input.finding();
    this.words = new FieldWords(finding);
    this.page = new ReportPage(input.ink());
  }

  /** The report, written once, to be taken out in both forms. */
  public static ReportDocument of(Input input) {
    FieldReport report = new FieldReport(input);
    report.write();
    FieldFinding.Asked asked = report.finding.asked();
    return new ReportDocument(
        report.page,
        WORDS.say("field.title", asked.rider(), asked.trail()),
        input.ink(),
        input.engine());
  }

  private void write() {
    front();
    if (finding.told()) {
      setups();
      section("field.others", words.others().stream().map(FieldRowWords::between).toList());
    } else {
      section(
          "field.own",
          Stream.concat(words.rows().stream(), words.others().stream())
              .filter(row -> !row.pair().own().isEmpty())
              .map(FieldRowWords::between)
              .toList());
    }
    FieldProfilesWords.of(finding, input.beside())
        .ifPresent(
            profiles -> ReportProfiles.write(page, profiles.rows(), FieldProfilesWords.note()));
    page.caution(ReportPage.cautionWords("trust.field") + " " + ReportPage.cautionWords("short"));
    section("field.next", words.next());
    section("field.days", words.days());
    section("field.out", words.out());
    method();
    fingerprints();
    page.raw("</main>\n");
  }

  private void section(String key, List<String> lines) {
    if (!lines.isEmpty()) {
      page.h2(key).list(lines);
    }
  }

  private void front() {
    FieldFinding.Asked asked = finding.asked();
    page.raw("<header class=\"running\">");
    page.raw("<span class=\"brand\">" + Html.text(WORDS.say("brand")) + "</span> ");
    page.raw(
        Html.text(
            WORDS.say(
                "field.running",
                asked.rider(),
                asked.trail(),
                asked.measure(),
                finding.days().size())));
    page.raw("</header>\n<main>\n");
    page.raw("<p class=\"question\">" + Html.text(words.question()) + "</p>\n");
    Headline headline = words.headline();
    page.raw("<h1>" + Html.text(headline.before()));
    if (!headline.phrase().isEmpty()) {
      page.raw("<span class=\"phrase\">" + Html.text(headline.phrase()) + "</span>");
    }
    page.raw(Html.text(headline.after()) + "</h1>\n");
    words.lead().forEach(line -> page.raw("<p class=\"lead\">" + Html.text(line) + "</p>\n"));
    FieldPicture.of(finding)
        .ifPresent(
            drawing -> {
              page.figure(drawing);
              page.note(WORDS.say("field.picture", finding.reference().orElseThrow().name()));
            });
    // Between plot and table, as on the page.
    if (!words.cautions().isEmpty()) {
      page.caution(String.join(" ", words.cautions()));
    }
  }

  private void setups() {
    List<List<String>> rows = new ArrayList<>();
    Setup reference = finding.reference().orElseThrow();
    rows.add(row(reference, FieldWords.say("reference"), "–", words.referenceRidden()));
    for (FieldRowWords row : words.rows()) {
      List<String> ridden = new ArrayList<>(List.of(row.ridden()));
      ridden.addAll(row.below());
      rows.add(
          row(
              finding.setup(row.pair().second()),
              row.brief(),
              row.pair().estimate().isPresent() ? row.interval() : "–",
              String.join("; ", ridden)));
    }
    page.h2("field.setups")
        .table(
            Stream.of("setup", "together", "interval", "ridden", "price", "mass")
                .map(head -> WORDS.say("field.th." + head))
                .toList(),
            rows);
  }

  private static List<String> row(Setup setup, String together, String interval, String ridden) {
    String price = FieldRowWords.price(setup);
    String mass = FieldRowWords.mass(setup);
    return List.of(
        cell(setup.name()),
        cell(together),
        cell(interval),
        cell(ridden),
        cell(price.isEmpty() ? "–" : price),
        cell(mass.isEmpty() ? "–" : mass));
  }

  private void method() {
    page.h2("method")
        .list(
            Stream.of("field.method", "field.method.agreement", "field.method.leads")
                .map(key -> WORDS.say(key))
                .toList());
    if (finding.told()) {
      page.h3("exact");
      List<List<String>> rows = new ArrayList<>();
      Stream.concat(finding.rows().stream(), finding.others().stream())
          .filter(pair -> pair.estimate().isPresent())
          .forEach(pair -> rows.add(exact(pair)));
      page.table(List.of("", WORDS.say("th.estimate"), "95 %"), rows);
      page.note(WORDS.say("field.exact.note"));
    }
    if (!finding.days().isEmpty()) {
      page.h3("requests").p(WORDS.say("field.request"));
      page.pre(FieldRequests.json(finding));
    }
    page.p(WORDS.say("field.recompute", input.engine()));
  }

  private List<String> exact(FieldFinding.Pair pair) {
    return List.of(
        cell(finding.setup(pair.first()).name() + ", " + finding.setup(pair.second()).name()),
        number(pair.estimate().orElseThrow()),
        pair.interval95().map(i -> number(i.low()) + " to " + number(i.high())).orElse("–"));
  }

  /** A number stays on one line: broken behind its point it would read as another. */
  private static String number(double number) {
    return "<span style=\"white-space: nowrap\">" + cell(Figures.exact(number)) + "</span>";
  }

  private void fingerprints() {
    page.h2("series.fingerprints").p(WORDS.say("series.fingerprints.text"));
    for (SeriesReport.Fingerprints each : input.fingerprints()) {
      page.p(WORDS.say("series.fingerprint.plan", each.session()));
      page.code(each.plan());
      if (!each.review().isEmpty()) {
        page.p(WORDS.say("series.fingerprint.review", each.session()));
        page.code(each.review());
      }
    }
  }
}
