package blindlap.store;

import blindlap.session.Hash;
import java.io.ByteArrayOutputStream;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.zip.DataFormatException;
import java.util.zip.Deflater;
import java.util.zip.Inflater;

/** Bytes by the SHA-256 of what they are uncompressed (zlib, RFC 1950). */
final class ContentTable {
  /** Far above the way of any lap; what is larger was not written here. */
  static final int LARGEST = 64 << 20;

  private static final int BLOCK = 1 << 16;

  private final Connection connection;

  ContentTable(Connection connection) {
    this.connection = connection;
  }

  SortedSet<String> names() throws SQLException {
    SortedSet<String> names = new TreeSet<>();
    try (PreparedStatement statement = connection.prepareStatement("SELECT sha256 FROM content");
        ResultSet rows = statement.executeQuery()) {
      while (rows.next()) {
        names.add(rows.getString(1));
      }
    }
    return names;
  }

  Optional<byte[]> find(String sha256) throws SQLException {
    try (PreparedStatement statement =
        connection.prepareStatement("SELECT bytes FROM content WHERE sha256 = ?")) {
      statement.setString(1, sha256);
      try (ResultSet row = statement.executeQuery()) {
        return row.next() ? whole(sha256, row.getBytes(1)) : Optional.empty();
      }
    }
  }

  /** Keeps bytes, unless they are here. What stands there and is not whole is replaced. */
  String put(byte[] plain) throws SQLException {
    String sha256 = Hash.of(plain).hex();
    if (find(sha256).isEmpty()) {
      try (PreparedStatement statement =
          connection.prepareStatement(
              "INSERT INTO content (sha256, bytes) VALUES (?, ?)"
                  + " ON CONFLICT (sha256) DO UPDATE SET bytes = excluded.bytes")) {
        statement.setString(1, sha256);
        statement.setBytes(2, deflated(plain));
        statement.executeUpdate();
      }
    }
    return sha256;
  }

  private static byte[] deflated(byte[] plain) {
    Deflater deflater = new Deflater(Deflater.BEST_COMPRESSION);
    try {
      deflater.setInput(plain);
      deflater.finish();
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      byte[] block = new byte[BLOCK];
      while (!deflater.finished()) {
        out.write(block, 0, deflater.deflate(block));
      }
      return out.toByteArray();
    } finally {
      deflater.end();
    }
  }

  /** What compressed bytes hold, if it has this hash. */
  static Optional<byte[]> whole(String sha256, byte[] bytes) {
    Inflater inflater = new Inflater();
    try {
      inflater.setInput(bytes);
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      byte[] block = new byte[BLOCK];
      while (!inflater.finished()) {
        int count = inflater.inflate(block);
        if (count == 0 || out.size() + count > LARGEST) {
          break;
        }
        out.write(block, 0, count);
      }
      byte[] plain = out.toByteArray();
      return inflater.finished() && Hash.of(plain).hex().equals(sha256)
          ? Optional.of(plain)
          : Optional.empty();
    } catch (DataFormatException e) {
      return Optional.empty();
    } finally {
      inflater.end();
    }
  }
}
