package blindlap.wording;

import blindlap.review.TellingRuns;
import blindlap.stats.tell.Discrimination;
import java.util.List;

/** Every verdict of a telling run in whole texts, for the table of sentences. */
final class TellingCases {
  private static final TellingNames NAMES = new TellingNames("M. Oss", "4 clicks", "support");

  private TellingCases() {}

  private record Case(
      String title,
      Discrimination task,
      int declared,
      int answered,
      int right,
      double matters,
      boolean nullRun) {}

  private static final List<Case> CASES =
      List.of(
          new Case("can tell", Discrimination.TRIANGLE, 15, 15, 11, 0.5, false),
          new Case(
              "can tell, more often than would matter",
              Discrimination.TWO_CHOICE,
              24,
              24,
              23,
              0.5,
              false),
          new Case(
              "can tell, less often than would matter",
              Discrimination.TRIANGLE,
              60,
              60,
              27,
              0.5,
              false),
          new Case(
              "cannot tell as often as would matter",
              Discrimination.TRIANGLE,
              15,
              15,
              5,
              0.5,
              false),
          new Case("not settled", Discrimination.DUO_TRIO, 24, 24, 15, 0.4, false),
          new Case(
              "not settled, fewer than guessing gives",
              Discrimination.TWO_CHOICE,
              24,
              24,
              6,
              0.5,
              false),
          new Case(
              "this plan could not show anything", Discrimination.TRIANGLE, 2, 2, 2, 0.5, false),
          new Case("too few trials were answered", Discrimination.DUO_TRIO, 24, 3, 2, 0.5, false),
          new Case("null run", Discrimination.TRIANGLE, 15, 15, 6, 0.5, true),
          new Case("null run, something told", Discrimination.TRIANGLE, 15, 15, 12, 0.5, true));

  static void write(StringBuilder out) {
    out.append("\n## Telling runs\n\n");
    out.append("Trials between two settings, 4 clicks apart; the cautions follow every one.\n\n");
    out.append("| run | sentences |\n| --- | --- |\n");
    for (Case each : CASES) {
      TellingWords words =
          new TellingWords(
              TellingRuns.run(
                  each.task(),
                  each.declared(),
                  each.answered(),
                  each.right(),
                  each.matters(),
                  each.nullRun()),
              NAMES);
      List<String> lines = words.lines();
      out.append("| ")
          .append(each.title())
          .append(" | ")
          .append(String.join("<br>", lines.subList(0, lines.size() - words.cautions().size())))
          .append(" |\n");
    }
  }
}
