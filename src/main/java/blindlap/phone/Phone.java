package blindlap.phone;

import blindlap.session.day.PhoneRole;
import java.time.Instant;

/** A phone that came with a code; changed only while {@link Admission} is held. */
final class Phone {
  /** Where a phone stands. */
  enum Place {
    WAITING,
    IN,
    OUT
  }

  final String client;
  final PhoneRole role;
  Fingerprint key;
  Place place;
  Instant heard;
  long unsent;

  Phone(String client, PhoneRole role, Fingerprint key, Place place, Instant heard) {
    this.client = client;
    this.role = role;
    this.key = key;
    this.place = place;
    this.heard = heard;
  }

  /** The beginning of its client, by which people and lists name it. */
  String id() {
    return client.substring(0, 8);
  }
}
