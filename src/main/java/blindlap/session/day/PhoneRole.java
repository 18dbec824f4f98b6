package blindlap.session.day;

import java.util.Locale;

/**
 * Who holds a phone. There is none for the helper: what the helper sees never leaves the laptop.
 */
public enum PhoneRole {
  RIDER,
  STARTER;

  /** The word used in files and addresses. */
  public String text() {
    return name().toLowerCase(Locale.ROOT);
  }
}
