package blindlap.compute;

import blindlap.stats.noise.Intraclass;
import blindlap.stats.noise.RankAgreement;
import blindlap.stats.tell.PairPreference;
import java.util.List;
import java.util.Set;

/** How far several riders or raters agree, and what pairwise preferences add up to. */
final class AgreementCalculations {
  private AgreementCalculations() {}

  static List<Calculation> all() {
    return List.of(
        Calculation.of("intraclass", Set.of("table"), AgreementCalculations::intraclass),
        Calculation.of("rank-agreement", Set.of("table"), AgreementCalculations::ranks),
        Calculation.of(
            "pair-preference",
            Set.of("wins", "labels", "reference"),
            AgreementCalculations::preference));
  }

  private static Evaluation intraclass(Given given) {
    Intraclass found = Intraclass.of(given.table("table"));
    return Evaluation.of(
        new ResultFields()
            .number("icc_1_1", found.icc11())
            .number("icc_2_1", found.icc21())
            .number("icc_3_1", found.icc31())
            .number("icc_1_k", found.icc1k())
            .number("icc_2_k", found.icc2k())
            .number("icc_3_k", found.icc3k()),
        "Shrout & Fleiss (1979); not cut at 0.");
  }

  private static Evaluation ranks(Given given) {
    RankAgreement found = RankAgreement.of(given.table("table"));
    return Evaluation.of(
        new ResultFields()
            .number("chi_squared", found.chiSquared())
            .whole("df", found.df())
            .number("p", found.p())
            .number("kendall_w", found.kendallW()),
        "Friedman (1937) with midranks, corrected for ties; p from chi-squared; Kendall's W.",
        "p is an approximation when there are few rows.");
  }

  private static Evaluation preference(Given given) {
    double[][] wins = given.table("wins");
    List<String> labels = given.texts("labels");
    if (labels.size() != wins.length) {
      throw given.refuse(
          "labels", "has " + labels.size() + " entries, but wins has " + wins.length + " rows.");
    }
    if (Set.copyOf(labels).size() != labels.size()) {
      throw given.refuse("labels", "names one thing twice.");
    }
    int reference = given.has("reference") ? labels.indexOf(given.text("reference")) : 0;
    if (reference < 0) {
      throw given.refuse("reference", "is none of the labels.");
    }
    PairPreference found = PairPreference.of(wins, reference);
    return Evaluation.of(
        new ResultFields()
            .numbers("scores", found.scores())
            .numbers("standard_errors", found.standardErrors()),
        "Bradley & Terry (1952) by maximum likelihood; errors from the Fisher information.");
  }
}
