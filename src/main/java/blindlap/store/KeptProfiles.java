package blindlap.store;

import blindlap.exchange.ProfileText;
import blindlap.plan.Profile;
import blindlap.session.Hash;
import blindlap.session.KeptProfile;
import blindlap.session.Profiles;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Profiles in the notebook's file. Versions are numbered by their times, so that notebooks that
 * exchange them number them alike, whoever brings in first.
 */
final class KeptProfiles implements Profiles {
  private static final Comparator<Kept> BY_TIME =
      Comparator.comparing((Kept kept) -> kept.read().at()).thenComparing(Kept::sha256);

  private final Door door;
  private final ProfileTable table;

  private record Kept(String sha256, ProfileText.Read read) {
    String key() {
      return Profile.key(read.profile().name());
    }
  }

  KeptProfiles(Door door, Connection connection) {
    this.door = door;
    this.table = new ProfileTable(connection);
  }

  /** What a row says; empty if it does not give its hash. */
  static Optional<ProfileText.Read> read(ProfileTable.Row row) {
    return Hash.of(row.text()).hex().equals(row.sha256())
        ? ProfileText.read(row.text())
        : Optional.empty();
  }

  @Override
  public List<KeptProfile> all() {
    return numbered(door.reading(this::sound));
  }

  @Override
  public int damaged() {
    return door.reading(
        () -> (int) table.all().stream().filter(row -> read(row).isEmpty()).count());
  }

  /** Versions that give their hash, by time. */
  private List<Kept> sound() throws SQLException {
    List<Kept> sound = new ArrayList<>();
    for (ProfileTable.Row row : table.all()) {
      read(row).ifPresent(read -> sound.add(new Kept(row.sha256(), read)));
    }
    sound.sort(BY_TIME);
    return sound;
  }

  private static List<KeptProfile> numbered(List<Kept> byTime) {
    // Of names that were first used at once the first by letters.
    List<String> names =
        byTime.stream()
            .collect(Collectors.toMap(Kept::key, kept -> kept.read().at(), (first, later) -> first))
            .entrySet()
            .stream()
            .sorted(Map.Entry.<String, Instant>comparingByValue().thenComparing(Map.Entry::getKey))
            .map(Map.Entry::getKey)
            .toList();
    List<KeptProfile> all = new ArrayList<>();
    for (String name : names) {
      int number = 0;
      for (Kept each : byTime) {
        if (each.key().equals(name)) {
          all.add(new KeptProfile(each.read().profile(), ++number, each.read().at()));
        }
      }
    }
    return all;
  }

  @Override
  public KeptProfile keep(Profile profile, Instant at) {
    return door.writing(
        () -> {
          Instant dated = after(profile.name(), at.truncatedTo(ChronoUnit.MILLIS));
          add(profile, dated);
          // Nothing is called kept that was not read back.
          return numbered(sound()).stream()
              .filter(kept -> kept.profile().isCalled(profile.name()))
              .filter(kept -> kept.at().equals(dated))
              .findFirst()
              .orElseThrow(
                  () -> new SQLException("a profile read back differs from what was written"));
        });
  }

  private Instant after(String name, Instant at) throws SQLException {
    String key = Profile.key(name);
    return sound().stream()
        .filter(kept -> kept.key().equals(key))
        .map(kept -> kept.read().at().plusMillis(1))
        .filter(at::isBefore)
        .max(Comparator.naturalOrder())
        .orElse(at);
  }

  private int add(Profile profile, Instant at) throws SQLException {
    String text = ProfileText.of(profile, at);
    return table.add(new ProfileTable.Row(Hash.of(text).hex(), text));
  }

  @Override
  public int bring(List<KeptProfile> versions) {
    if (versions.isEmpty()) {
      return 0;
    }
    return door.writing(
        () -> {
          int fresh = 0;
          for (KeptProfile version : versions) {
            fresh += add(version.profile(), version.at());
          }
          return fresh;
        });
  }
}
