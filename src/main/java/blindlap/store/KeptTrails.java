package blindlap.store;

import blindlap.exchange.TrailFile;
import blindlap.fault.Unreadable;
import blindlap.plan.Trail;
import blindlap.session.Damage;
import blindlap.session.Hash;
import blindlap.session.KeptTrail;
import blindlap.session.TrailTitle;
import blindlap.session.Trails;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** The trail book in the notebook's file. A version that does not give its hash is damage. */
final class KeptTrails implements Trails {
  private final Door door;
  private final TrailTable table;

  KeptTrails(Door door, Connection connection) {
    this.door = door;
    this.table = new TrailTable(connection);
  }

  /** True if a row holds the text of a trail, under its own hash and name. */
  static boolean sound(TrailTable.Row row) {
    return row.title().number() > 0 && read(row).isPresent();
  }

  private static Optional<KeptTrail> read(TrailTable.Row row) {
    try {
      Trail trail = TrailFile.trail(row.text());
      return Hash.of(row.text()).hex().equals(row.title().sha256())
              && trail.name().equals(row.title().name())
              && TrailFile.text(trail).equals(row.text())
          ? Optional.of(new KeptTrail(row.title(), trail, row.text()))
          : Optional.empty();
    } catch (Unreadable e) {
      return Optional.empty();
    }
  }

  @Override
  public List<TrailTitle> titles() {
    return door.reading(table::titles);
  }

  @Override
  public KeptTrail keep(Trail trail, Instant at) {
    String text = TrailFile.text(trail);
    String sha256 = Hash.of(text).hex();
    return door.writing(() -> keep(trail, text, sha256, at));
  }

  private KeptTrail keep(Trail trail, String text, String sha256, Instant at) throws SQLException {
    Optional<TrailTable.Row> same = table.find(sha256);
    if (same.isPresent()) {
      return new KeptTrail(same.get().title(), trail, text);
    }
    int number = table.highest(trail.name()) + 1;
    table.add(new TrailTable.Row(new TrailTitle(trail.name(), number, sha256, at), text));
    // Nothing is called kept that was not read back.
    return table
        .find(trail.name(), number)
        .flatMap(KeptTrails::read)
        .orElseThrow(() -> new SQLException("a trail read back differs from what was written"));
  }

  @Override
  public Optional<KeptTrail> find(String name, int number) {
    return door.reading(() -> table.find(name, number)).map(this::whole);
  }

  @Override
  public Optional<KeptTrail> find(String sha256) {
    return door.reading(() -> table.find(sha256)).map(this::whole);
  }

  private KeptTrail whole(TrailTable.Row row) {
    return read(row)
        .orElseThrow(() -> door.beside(Damage.TRAIL, row.title().name(), row.title().number()));
  }
}
