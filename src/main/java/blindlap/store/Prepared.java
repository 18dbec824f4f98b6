package blindlap.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import org.jspecify.annotations.Nullable;

/** A statement that is prepared once, and again after it failed: the driver closes it then. */
final class Prepared {
  private final Connection connection;
  private final String sql;
  private @Nullable PreparedStatement statement;

  Prepared(Connection connection, String sql) {
    this.connection = connection;
    this.sql = sql;
  }

  /** What is done with the statement. */
  interface Use<T> {
    T of(PreparedStatement statement) throws SQLException;
  }

  /**
   * Uses the statement.
   *
   * @param use fills in what is missing, executes, and closes its result
   * @param texts the first values, in order
   */
  <T> T use(Use<T> use, @Nullable String... texts) throws SQLException {
    PreparedStatement ready = statement;
    statement = null;
    if (ready == null) {
      ready = connection.prepareStatement(sql);
    }
    for (int i = 0; i < texts.length; i++) {
      ready.setString(i + 1, texts[i]);
    }
    T result = use.of(ready);
    statement = ready;
    return result;
  }
}
