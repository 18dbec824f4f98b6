package blindlap.phone;

import blindlap.desk.day.PhoneBook;
import blindlap.session.day.PhoneRole;
import blindlap.session.day.SessionId;
import java.time.Clock;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Who is let in. Of keys only fingerprints are kept; every change is kept before it is answered.
 */
final class Admission {
  private static final Pattern CLIENT = Pattern.compile("[0-9a-f]{32}");

  /** More phones than a day has people, and few enough to be looked at. */
  private static final int MOST = 24;

  /** A key that was given and not yet used: the same again to the same page, should it be lost. */
  private record Given(Fingerprint token, String key) {}

  private final PhoneBook book;
  private final SessionId id;
  private final Clock clock;
  private final Secrets secrets;
  private final List<Phone> phones = new ArrayList<>();
  private final Map<PhoneRole, String> tokens = new EnumMap<>(PhoneRole.class);
  private final Map<String, Given> given = new java.util.HashMap<>();
  private int port;

  Admission(PhoneBook book, SessionId id, Clock clock, Secrets secrets) {
    this.book = book;
    this.id = id;
    this.clock = clock;
    this.secrets = secrets;
    KeptPhones kept = book.kept(id).map(KeptPhones::of).orElse(KeptPhones.NONE);
    phones.addAll(kept.phones());
    port = kept.port();
  }

  /** What came of a code. */
  record Hello(String key, boolean in) {}

  /** The token to be shown for a role. */
  synchronized String token(PhoneRole role) {
    return tokens.computeIfAbsent(role, each -> hex());
  }

  private String hex() {
    return HexFormat.of().formatHex(secrets.bytes(16));
  }

  /** A phone comes with a code; empty if the code is not good. */
  synchronized Optional<Hello> hello(String token, String client, PhoneRole role) {
    if (!CLIENT.matcher(client).matches()) {
      return Optional.empty();
    }
    Fingerprint print = Fingerprint.of(token);
    Given before = given.get(client);
    Phone known = phone(client);
    if (before != null && known != null && before.token().same(print) && known.role == role) {
      return Optional.of(new Hello(before.key(), known.place == Phone.Place.IN));
    }
    String good = tokens.get(role);
    if (good == null || !Fingerprint.of(good).same(print) || known != null && known.role != role) {
      return Optional.empty();
    }
    if (known == null && alike(client)) {
      return Optional.empty(); // whoever is let in by its id must be one
    }
    if (known == null && phones.size() >= MOST && !forgetOne()) {
      return Optional.empty();
    }
    tokens.remove(role);
    String key = hex();
    Phone phone = entered(known, client, role, Fingerprint.of(key));
    given.put(client, new Given(print, key));
    keep();
    return Optional.of(new Hello(key, phone.place == Phone.Place.IN));
  }

  private Phone entered(@Nullable Phone known, String client, PhoneRole role, Fingerprint key) {
    if (known != null) { // whoever was thrown out waits, even if nobody else is in
      known.key = key;
      known.place = known.place == Phone.Place.IN ? Phone.Place.IN : Phone.Place.WAITING;
      known.heard = clock.instant();
      return known;
    }
    boolean first = phones.stream().noneMatch(p -> p.role == role && p.place == Phone.Place.IN);
    Phone.Place place = first ? Phone.Place.IN : Phone.Place.WAITING;
    Phone phone = new Phone(client, role, key, place, clock.instant());
    phones.add(phone);
    return phone;
  }

  private boolean alike(String client) {
    return phones.stream().anyMatch(phone -> client.startsWith(phone.id()));
  }

  private boolean forgetOne() {
    return phones.stream()
        .filter(phone -> phone.place == Phone.Place.OUT)
        .findFirst()
        .map(phones::remove)
        .orElse(false);
  }

  private @Nullable Phone phone(String client) {
    return phones.stream().filter(p -> p.client.equals(client)).findFirst().orElse(null);
  }

  /**
   * The phone of a key, wherever it stands; all keys are compared, in a time that tells nothing.
   */
  synchronized Optional<Phone> of(String key) {
    Fingerprint print = Fingerprint.of(key);
    Phone found = null;
    for (Phone phone : phones) {
      if (phone.key.same(print)) {
        found = phone;
      }
    }
    if (found != null) {
      given.remove(found.client);
    }
    return Optional.ofNullable(found);
  }

  /** A phone was heard. */
  synchronized void heard(Phone phone, long unsent) {
    phone.heard = clock.instant();
    phone.unsent = unsent;
  }

  /** Where a phone stands. */
  synchronized Phone.Place place(Phone phone) {
    return phone.place;
  }

  /** Puts the phone of an id where it is to stand; false if there is none. */
  synchronized boolean put(String phoneId, Phone.Place place) {
    Optional<Phone> found = phones.stream().filter(p -> p.id().equals(phoneId)).findFirst();
    found.ifPresent(
        phone -> {
          phone.place = place;
          keep();
        });
    return found.isPresent();
  }

  synchronized List<Phones.Known> known() {
    return phones.stream()
        .filter(phone -> phone.place != Phone.Place.OUT)
        .map(p -> new Phones.Known(p.id(), p.role, p.place == Phone.Place.IN, p.heard, p.unsent))
        .toList();
  }

  /** The port that was served last; 0 for none. */
  synchronized int port() {
    return port;
  }

  synchronized void served(int at) {
    if (port != at) {
      port = at;
      keep();
    }
  }

  /** Nothing is served for now: when phones were heard last is kept. */
  synchronized void rest() {
    if (!phones.isEmpty()) {
      keep();
    }
  }

  private void keep() {
    book.keep(id, new KeptPhones(port, phones).text());
  }

  /** The day is over. */
  synchronized void forget() {
    phones.clear();
    tokens.clear();
    given.clear();
    book.forget(id);
  }
}
