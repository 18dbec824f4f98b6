package blindlap.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;

/** One door for changes: all of it is on disk when it returns, or none of it. */
final class Transactions {
  private final Connection connection;
  private final Prepared begin;
  private final Prepared commit;

  /** What happens within a transaction. */
  interface Work<T> {
    T run() throws SQLException;
  }

  Transactions(Connection connection) {
    this.connection = connection;
    begin = new Prepared(connection, "BEGIN IMMEDIATE");
    commit = new Prepared(connection, "COMMIT");
  }

  <T> T write(Work<T> work) throws SQLException {
    begin.use(PreparedStatement::execute);
    try {
      T result = work.run();
      commit.use(PreparedStatement::execute);
      return result;
    } catch (SQLException | RuntimeException e) {
      Connections.rollBack(connection, e);
      throw e;
    }
  }
}
