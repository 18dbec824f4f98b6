package blindlap.desk;

import blindlap.recording.Pass;
import blindlap.recording.Run;
import blindlap.wording.SettlingRow.Doubt;
import blindlap.wording.SettlingRow.Doubt.Kind;
import java.util.ArrayList;
import java.util.List;

/**
 * What a row tells of a run.
 *
 * @param seconds from start to finish; NaN where an end is missing
 * @param uncertainty standard deviation of that; NaN where there is none
 */
record SettledRun(double seconds, double uncertainty, List<Doubt> doubts) {
  static final SettledRun NONE = new SettledRun(Double.NaN, Double.NaN, List.of());

  static SettledRun of(Run run, List<String> gates) {
    List<Doubt> doubts = new ArrayList<>();
    for (int gate = 0; gate < gates.size(); gate++) {
      Pass pass = run.passes().get(gate);
      String name = gates.get(gate);
      if (pass == null) {
        doubts.add(new Doubt(Kind.MISSED, name));
      } else if (pass.within()) {
        doubts.add(new Doubt(Kind.SILENT, name));
      } else if (pass.gap()) {
        doubts.add(new Doubt(Kind.GAP, name));
      } else if (pass.slow()) {
        doubts.add(new Doubt(Kind.SLOW, name));
      }
    }
    if (run.wrongWay()) {
      doubts.add(new Doubt(Kind.WRONG_WAY, ""));
    }
    if (run.tooLong()) {
      doubts.add(new Doubt(Kind.TOO_LONG, ""));
    }
    Pass start = run.passes().get(0);
    Pass finish = run.passes().get(gates.size() - 1);
    double uncertainty =
        Double.isNaN(run.seconds()) || start == null || finish == null
            ? Double.NaN
            : Math.hypot(start.uncertainty(), finish.uncertainty());
    return new SettledRun(run.seconds(), uncertainty, doubts);
  }
}
