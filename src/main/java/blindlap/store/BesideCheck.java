package blindlap.store;

import blindlap.fault.Problem;
import blindlap.session.NotebookFault;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

/** Whether what stands beside the record under a hash gives it: trails, profiles, positions. */
final class BesideCheck {
  private static final int SHOWN_OF_A_HASH = 12;

  private BesideCheck() {}

  /** What does not; none where a table cannot be read, which is told by itself. */
  static List<Problem> problems(Connection connection) {
    List<Problem> problems = new ArrayList<>();
    try {
      for (TrailTable.Row row : new TrailTable(connection).all()) {
        if (!KeptTrails.sound(row)) {
          problems.add(
              Problem.of(
                  NotebookFault.TRAIL_DIFFERS,
                  "trail " + row.title().name() + ", version " + row.title().number()));
        }
      }
      for (ProfileTable.Row row : new ProfileTable(connection).all()) {
        if (KeptProfiles.read(row).isEmpty()) {
          problems.add(
              Problem.of(NotebookFault.PROFILE_DIFFERS, "profile version " + brief(row.sha256())));
        }
      }
      ContentTable contents = new ContentTable(connection);
      for (String name : contents.names()) {
        if (contents.find(name).isEmpty()) {
          problems.add(Problem.of(NotebookFault.CONTENT_DIFFERS, "positions " + brief(name)));
        }
      }
    } catch (SQLException e) {
      return problems; // what cannot be read is found by the reading of everything
    }
    return problems;
  }

  private static String brief(String hash) {
    return hash.substring(0, Math.min(SHOWN_OF_A_HASH, hash.length()));
  }
}
