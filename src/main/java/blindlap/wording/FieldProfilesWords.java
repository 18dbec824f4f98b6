package blindlap.wording;

import blindlap.plan.Measure;
import blindlap.plan.Profile;
import blindlap.review.FieldFinding;
import blindlap.review.FieldProfiles;
import blindlap.review.Finding;
import blindlap.wording.ProfilesFoundWords.Found;
import blindlap.wording.ProfilesFoundWords.Row;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a field says for whoever looks at some measures only: of its own measure what it says
 * itself, of another what each of its days found by itself. Nothing is weighed, summed or ranked.
 */
public final class FieldProfilesWords {
  private static final Words WORDS = Words.of("profiles");

  private final FieldFinding field;
  private final FieldProfiles beside;

  private FieldProfilesWords(FieldFinding field, FieldProfiles beside) {
    this.field = field;
    this.beside = beside;
  }

  /** Of a field; empty where no profile stands beside it, and where no day enters. */
  public static Optional<FieldProfilesWords> of(FieldFinding field, FieldProfiles beside) {
    return beside.profiles().isEmpty() || beside.days().isEmpty()
        ? Optional.empty()
        : Optional.of(new FieldProfilesWords(field, beside));
  }

  /** What the table is, and what it is not. */
  public static String note() {
    return WORDS.say("field.note");
  }

  /** A row a profile, in the order in which they were first made. */
  public List<Row> rows() {
    return beside.profiles().stream().map(this::row).toList();
  }

  /** All of it as lines of text. */
  public List<String> lines() {
    return ProfilesFoundWords.lines(rows(), note());
  }

  private Row row(FieldProfiles.Version version) {
    Profile profile = version.kept().profile();
    return new Row(
        profile.name(),
        mark(version),
        ProfileWords.measures(version.kept()),
        profile.measures().stream().map(name -> new Found(name, found(name))).toList());
  }

  private String mark(FieldProfiles.Version version) {
    List<String> marks = new ArrayList<>();
    int days = beside.days().size();
    if (version.after() > 0) {
      marks.add(
          days == 1 ? WORDS.say("mark.AFTER") : WORDS.say("mark.days", version.after(), days));
    }
    if (version.since() != FieldProfiles.Since.STANDS) {
      marks.add(WORDS.say("mark.since." + version.since().name()));
    }
    return String.join("; ", marks);
  }

  private List<String> found(String name) {
    String key = Profile.key(name);
    if (key.equals(Profile.key(field.asked().measure()))) {
      FieldWords words = new FieldWords(field);
      List<String> said = new ArrayList<>(List.of(words.headline().text()));
      said.addAll(words.lead());
      return said;
    }
    List<String> said = new ArrayList<>();
    for (FieldProfiles.Opened day : beside.days()) {
      Finding finding = day.finding();
      for (Measure measure : finding.day().plan().measures()) {
        if (Profile.key(measure.name()).equals(key)) {
          said.add(
              WORDS.say(
                  "day.found",
                  SeriesWords.date(day.day().day()),
                  String.join(
                      " ",
                      new MeasureText(finding).of(measure, new FindingText(finding).sentence()))));
        }
      }
    }
    return said.isEmpty() ? List.of(fact(name)) : said;
  }

  private String fact(String name) {
    return ProfilesFoundWords.factOf(name, field.setups())
        .orElseGet(() -> WORDS.say("field.not.measured", name));
  }
}
