package blindlap.wording;

import blindlap.review.WhereOnTrail;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;

/**
 * Stretches of the way on which setups are shown to differ: neighbouring sectors on which the same
 * setup gains are one stretch, and pieces of the line where the trail has no gate between start and
 * finish.
 */
final class WhereStretches {
  /** A part that is shown: from its own index, with who gains. */
  private record Part(int index, int faster) {}

  private static final Words WORDS = Words.of("where");

  private final WhereOnTrail where;
  private final boolean ofSectors;
  private final int parts;
  private final List<Part> shown = new ArrayList<>();
  private final IntFunction<String> borders;
  private final String key;

  /**
   * @param gates names of gates, from 0
   */
  WhereStretches(IntFunction<String> gates, WhereOnTrail where) {
    this.where = where;
    int sectors = where.sectors().map(s -> s.each().size()).orElse(0);
    this.ofSectors = sectors > 1 || where.line().isEmpty() || where.lineMissing();
    this.key = ofSectors ? "stretch" : "stretch.metres";
    if (ofSectors) {
      this.parts = sectors;
      this.borders = gates;
      where
          .sectors()
          .ifPresent(s -> s.shown().forEach(x -> shown.add(new Part(x.sector(), x.faster()))));
    } else {
      WhereOnTrail.Line line = where.line().orElseThrow();
      this.parts = line.borders().length - 1;
      this.borders = at -> Figures.number(line.borders()[at] - line.borders()[0], 0);
      for (int piece = 0; piece < parts && where.tested(); piece++) {
        if (line.along().pAdjusted()[piece] <= 0.05) {
          shown.add(new Part(piece, line.along().pieces().estimates()[piece] <= 0 ? 1 : 0));
        }
      }
    }
  }

  List<?> shown() {
    return shown;
  }

  boolean ofSectors() {
    return ofSectors;
  }

  /** True if every part of the way is shown to differ. */
  boolean whole() {
    return shown.size() == parts;
  }

  /**
   * The setup whose gains are told first: the one that gains over the whole, if it gains at all.
   */
  int gaining() {
    double whole =
        where
            .line()
            .map(WhereOnTrail.Line::total)
            .orElseGet(
                () ->
                    where.sectors().orElseThrow().each().stream()
                        .mapToDouble(WhereOnTrail.OfSector::estimate)
                        .filter(Double::isFinite)
                        .sum());
    int ahead = whole <= 0 ? 1 : 0;
    return shown.stream().anyMatch(part -> part.faster() == ahead) ? ahead : 1 - ahead;
  }

  /** "from Rock garden to Ford": stretches on which a setup gains; empty where it gains nowhere. */
  String of(int setup) {
    return said(shown.stream().filter(part -> part.faster() == setup).map(Part::index).toList());
  }

  /** All stretches, whoever gains. */
  String all() {
    return said(shown.stream().map(Part::index).toList());
  }

  private String said(List<Integer> indices) {
    List<String> stretches = new ArrayList<>();
    for (int i = 0; i < indices.size(); i++) {
      int from = indices.get(i);
      while (i + 1 < indices.size() && indices.get(i + 1) == indices.get(i) + 1) {
        i++;
      }
      stretches.add(WORDS.say(key, borders.apply(from), borders.apply(indices.get(i) + 1)));
    }
    int last = stretches.size() - 1;
    return last < 1
        ? String.join("", stretches)
        : String.join(", ", stretches.subList(0, last))
            + WORDS.say("stretch.and")
            + stretches.get(last);
  }
}
