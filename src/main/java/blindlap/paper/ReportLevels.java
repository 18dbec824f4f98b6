package blindlap.paper;

import static blindlap.paper.ReportPage.WORDS;
import static blindlap.paper.ReportPage.cell;

import blindlap.review.Finding;
import blindlap.stats.compare.LevelMeans;
import blindlap.wording.TrendWords;
import blindlap.wording.day.Figures;
import java.util.List;

/** What a steps day says of its levels: whether the middle is better, every level, every pair. */
final class ReportLevels {
  /** The front has room for the pairs of four levels; those of more stand under Analysis. */
  private static final int PAIRS_ON_FRONT = 6;

  private final ReportPage page;
  private final Finding finding;

  ReportLevels(Finding finding, ReportPage page) {
    this.page = page;
    this.finding = finding;
  }

  /** Under the picture, where the finding is of a steps day. */
  void front() {
    TrendWords.of(finding).ifPresent(this::front);
  }

  private void front(TrendWords words) {
    strong(words.bendTitle(), words.bend());
    words.beyondTitle().ifPresent(title -> strong(title + ".", words.beyond().orElse("")));
    if (words.levels().isEmpty()) {
      return;
    }
    page.raw("<div class=\"two\">\n<div class=\"column\">\n").h3("levels");
    page.table(
        "levels",
        List.of(
            WORDS.say("th.level"),
            WORDS.say("th.stints.used"),
            WORDS.say("th.mean"),
            WORDS.say("th.95")),
        words.levels().stream()
            .map(each -> row(each.name(), each.stints(), each.mean(), each.interval()))
            .toList());
    page.note(WORDS.say("levels.note"));
    page.raw("</div>\n<div class=\"column\">\n").h3("pairs");
    if (words.pairs().size() <= PAIRS_ON_FRONT) {
      pairs(words);
    } else {
      long apart = words.pairs().stream().filter(TrendWords.Pair::shown).count();
      page.p(WORDS.say("pairs.many", apart, words.pairs().size()));
    }
    page.raw("</div>\n</div>\n");
  }

  private static List<String> row(String... cells) {
    return List.of(cells).stream().map(ReportPage::cell).toList();
  }

  private void strong(String title, String text) {
    page.raw("<p><strong>" + Html.text(title) + "</strong> " + Html.text(text) + "</p>\n");
  }

  private void pairs(TrendWords words) {
    page.table(
        "levels",
        List.of(WORDS.say("th.levels"), WORDS.say("th.apart")),
        words.pairs().stream()
            .map(
                pair ->
                    List.of(
                        cell(pair.levels()),
                        pair.shown()
                            ? "<strong>" + cell(pair.said()) + "</strong>"
                            : cell(pair.said())))
            .toList());
    page.note(words.pairsNote());
  }

  /** Under Analysis: the trend by the unit, the pairs that the front had no room for. */
  void analysis() {
    TrendWords.of(finding)
        .ifPresent(
            words -> {
              page.h3("trend").list(words.lines());
              if (words.pairs().size() > PAIRS_ON_FRONT) {
                page.h3("pairs.all");
                pairs(words);
              }
            });
  }

  /** Figures of bend and levels, beside those of the trend. */
  void exact() {
    finding
        .trend()
        .flatMap(
            trend ->
                trend
                    .bend()
                    .map(
                        bend ->
                            WORDS.say(
                                "exact.bend",
                                Figures.exact(bend.t()),
                                Figures.exact(bend.p()),
                                trend
                                    .means()
                                    .map(LevelMeans::noiseSd)
                                    .map(Figures::exact)
                                    .orElse("–"),
                                trend
                                    .means()
                                    .map(LevelMeans::df)
                                    .map(String::valueOf)
                                    .orElse("–"))))
        .ifPresent(page::note);
  }
}
