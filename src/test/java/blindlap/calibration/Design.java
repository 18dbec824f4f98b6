package blindlap.calibration;

import blindlap.stats.order.Assignments;
import java.util.List;

/** The rules a day can be planned by, as compared in docs/method.md#which-orders. */
enum Design {
  SHORT_8("eight-stint set", 8, 8, List.of(), 3, 0.8),
  COMPLETE_8("whole day", 8, 8),
  PAIRS_12("pairs", 12, 2),
  BLOCK4_12("blocks of four", 12, 4),
  RUN2_12("runs of two at most", 12, 12, List.of(), 2, 0),
  COMPLETE_12("whole day", 12, 12),
  PAIRS_16("pairs", 16, 2),
  BLOCK4_16("blocks of four", 16, 4),
  RUN2_16("runs of two at most", 16, 16, List.of(), 2, 0),
  COMPLETE_16("whole day", 16, 16),
  PAIRS_20("pairs", 20, 2),
  BLOCK4_20("blocks of four", 20, 4),
  PAIRS_24("pairs", 24, 2),
  ABBA_24("ABBA/BAAB", 24, 4, List.of("ABBA", "BAAB"), 0, 0),
  BLOCK4_24("blocks of four", 24, 4),
  RUN2_24("runs of two at most", 24, 24, List.of(), 2, 0),
  COMPLETE_24("whole day", 24, 24),
  PAIRS_8("pairs", 8, 2),
  ABBA_8("ABBA/BAAB", 8, 4, List.of("ABBA", "BAAB"), 0, 0),
  BLOCK4_8("blocks of four", 8, 4),
  RUN2_8("runs of two at most", 8, 8, List.of(), 2, 0),
  ABBA_12("ABBA/BAAB", 12, 4, List.of("ABBA", "BAAB"), 0, 0),
  ABBA_16("ABBA/BAAB", 16, 4, List.of("ABBA", "BAAB"), 0, 0),
  ABBA_20("ABBA/BAAB", 20, 4, List.of("ABBA", "BAAB"), 0, 0);

  private final String text;
  private final Assignments orders;

  Design(String text, int stints, int block) {
    this(text, stints, block, List.of(), 0, 0);
  }

  Design(
      String text,
      int stints,
      int block,
      List<String> patterns,
      int maxRun,
      double minTrendEfficiency) {
    this.text = text;
    this.orders =
        Assignments.rule(2, stints)
            .block(block)
            .patterns(patterns)
            .maxRun(maxRun)
            .minTrendEfficiency(minTrendEfficiency)
            .build();
  }

  String text() {
    return text + ", " + orders.stints();
  }

  Assignments orders() {
    return orders;
  }
}
