package blindlap.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;

/** One door for changes: all of it is on disk when it returns, or none of it. */
final class Transactions {
  private final Connection connection;
  private final PreparedStatement begin;
  private final PreparedStatement commit;

  /** What happens within a transaction. */
  interface Work<T> {
    T run() throws SQLException;
  }

  Transactions(Connection connection) throws SQLException {
    this.connection = connection;
    begin = connection.prepareStatement("BEGIN IMMEDIATE");
    commit = connection.prepareStatement("COMMIT");
  }

  <T> T write(Work<T> work) throws SQLException {
    begin.execute();
    try {
      T result = work.run();
      commit.execute();
      return result;
    } catch (SQLException | RuntimeException e) {
      Connections.rollBack(connection, e);
      throw e;
    }
  }
}
