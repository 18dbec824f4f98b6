package blindlap.store;

import blindlap.session.Contents;
import java.sql.Connection;
import java.util.Optional;
import java.util.Set;

/** Contents in the notebook's file. */
final class KeptContents implements Contents {
  private final Door door;
  private final ContentTable table;

  KeptContents(Door door, Connection connection) {
    this.door = door;
    this.table = new ContentTable(connection);
  }

  @Override
  public String put(byte[] plain) {
    if (plain.length > ContentTable.LARGEST) {
      throw new IllegalArgumentException("a content has 64 MB at most");
    }
    return door.writing(() -> table.put(plain));
  }

  @Override
  public Optional<byte[]> find(String sha256) {
    return door.reading(() -> table.find(sha256));
  }

  @Override
  public Set<String> names() {
    return door.reading(table::names);
  }
}
