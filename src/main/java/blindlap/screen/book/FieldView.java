package blindlap.screen.book;

import blindlap.picture.FieldPicture;
import blindlap.plan.Setup;
import blindlap.plot.surface.Drawing;
import blindlap.review.FieldFinding;
import blindlap.review.FieldProfiles;
import blindlap.wording.FieldProfilesWords;
import blindlap.wording.FieldRowWords;
import blindlap.wording.FieldWords;
import blindlap.wording.Headline;
import blindlap.wording.ProfilesFoundWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What the page says of a field.
 *
 * @param question what it asks
 * @param headline the answer
 * @param lead what stands below it
 * @param picture the setups against the reference; empty where nothing of all days together is told
 * @param cautions what stands between plot and table and cannot be folded away
 * @param rows a row a setup: name, all days together, its interval, ridden with the reference, what
 *     that day found, price, mass
 * @param own where the days do not agree, or are too few: what each found by itself
 * @param profiles who should look at what, a row a profile
 * @param others pairs of two others, a sentence each
 * @param next which day next
 * @param days days that enter
 * @param out sessions that do not, each with the reason
 */
public record FieldView(
    String question,
    Headline headline,
    List<String> lead,
    Optional<Drawing> picture,
    List<String> cautions,
    List<List<String>> rows,
    List<String> own,
    List<ProfilesFoundWords.Row> profiles,
    List<String> others,
    List<String> next,
    List<String> days,
    List<String> out) {
  /** Where no day enters a field. */
  static final FieldView NONE =
      told(FieldWords.say("page.none"), List.of(FieldWords.say("lead.none")));

  /** Before anything is known. */
  static final FieldView WAITING = told(FieldWords.say("page.waiting"), List.of());

  /** A view that shows nothing of a field. */
  static FieldView told(String headline, List<String> lead) {
    return new FieldView(
        FieldWords.say("question.none"),
        new Headline(headline, "", ""),
        lead,
        Optional.empty(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of());
  }

  public FieldView {
    lead = List.copyOf(lead);
    cautions = List.copyOf(cautions);
    rows = rows.stream().map(List::copyOf).toList();
    own = List.copyOf(own);
    profiles = List.copyOf(profiles);
    others = List.copyOf(others);
    next = List.copyOf(next);
    days = List.copyOf(days);
    out = List.copyOf(out);
  }

  static FieldView of(FieldFinding finding, FieldProfiles beside) {
    FieldWords words = new FieldWords(finding);
    boolean told = finding.told();
    List<FieldRowWords> all = new ArrayList<>(words.rows());
    all.addAll(words.others());
    return new FieldView(
        words.question(),
        words.headline(),
        words.lead(),
        FieldPicture.of(finding),
        finding.rows().isEmpty() ? List.of() : words.cautions(),
        told ? rows(finding, words) : List.of(),
        told
            ? List.of()
            : all.stream()
                .filter(row -> !row.pair().own().isEmpty())
                .map(FieldRowWords::between)
                .toList(),
        FieldProfilesWords.of(finding, beside).map(FieldProfilesWords::rows).orElse(List.of()),
        told ? words.others().stream().map(FieldRowWords::between).toList() : List.of(),
        words.next(),
        words.days(),
        SeriesView.some(words.out()));
  }

  private static List<List<String>> rows(FieldFinding finding, FieldWords words) {
    List<List<String>> rows = new ArrayList<>();
    Setup reference = finding.reference().orElseThrow();
    rows.add(
        List.of(
            reference.name(),
            FieldWords.say("reference"),
            "",
            words.referenceRidden(),
            FieldRowWords.price(reference),
            FieldRowWords.mass(reference)));
    for (FieldRowWords row : words.rows()) {
      Setup setup = finding.setup(row.pair().second());
      List<String> ridden = new ArrayList<>(List.of(row.ridden()));
      ridden.addAll(row.below());
      rows.add(
          List.of(
              row.name(),
              row.brief(),
              row.pair().estimate().isPresent() ? row.interval() : "",
              String.join("; ", ridden),
              FieldRowWords.price(setup),
              FieldRowWords.mass(setup)));
    }
    return rows;
  }
}
