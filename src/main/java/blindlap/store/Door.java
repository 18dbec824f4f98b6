package blindlap.store;

import blindlap.fault.Unreadable;
import blindlap.session.Damage;
import blindlap.session.NotebookException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import org.jspecify.annotations.Nullable;

/**
 * The one way to the tables of an open notebook: one work at a time, refusals explained, and
 * nothing written to a file in which damage was met.
 */
final class Door {
  private final Path file;
  private final Transactions transactions;
  private long commits;
  private @Nullable NotebookException damage;

  Door(Connection connection, Path file) {
    this.file = file;
    this.transactions = new Transactions(connection);
  }

  /** Notes damage, after which nothing is written. */
  synchronized NotebookException damaged(
      @Nullable Throwable cause, Damage what, Object... details) {
    NotebookException found = NotebookException.damaged(file, cause, what, details);
    damage = found;
    return found;
  }

  /** Damage of what stands beside the record: it is said, and a day goes on. */
  NotebookException beside(Damage what, Object... details) {
    return NotebookException.damaged(file, null, what, details);
  }

  synchronized <T> T reading(Transactions.Work<T> work) {
    try {
      return work.run();
    } catch (SQLException e) {
      throw Connections.explain(e, file);
    } catch (Unreadable e) {
      throw damaged(e, Damage.NOT_AN_ENTRY, e.problem().fault().name());
    }
  }

  synchronized <T> T writing(Transactions.Work<T> work) {
    if (damage != null) {
      throw damage;
    }
    try {
      T result = transactions.write(work);
      commits++;
      return result;
    } catch (SQLException e) {
      throw Connections.explain(e, file);
    }
  }

  /** Writes while the notebook is being opened: no change that anybody waits for. */
  synchronized <T> T made(Transactions.Work<T> work) throws SQLException {
    return transactions.write(work);
  }

  /** How often was written through it. */
  synchronized long commits() {
    return commits;
  }
}
