package blindlap.wording;

import blindlap.session.KeptProfile;
import blindlap.wording.day.Words;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

/** Words about profiles: who should look at what. */
public final class ProfileWords {
  private static final Words WORDS = Words.of("profiles");
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("d MMM uuuu HH:mm", Locale.UK);

  private ProfileWords() {}

  /** A sentence of the bundle. */
  public static String say(String key, Object... arguments) {
    return WORDS.say(key, arguments);
  }

  /** "lap time; harshness". */
  public static String measures(KeptProfile version) {
    return String.join("; ", version.profile().measures());
  }

  /** When a version was made. */
  public static String made(KeptProfile version, ZoneId zone) {
    return TIME.format(version.at().atZone(zone));
  }

  /** "Fast and steep: lap time; harshness (version 2 of 14 Nov 2026 09:12)". */
  public static String line(KeptProfile version, ZoneId zone) {
    return WORDS.say(
        version.profile().removed() ? "line.removed" : "line",
        version.profile().name(),
        measures(version),
        String.valueOf(version.number()),
        made(version, zone));
  }

  /** What became of a wish to make or change one. */
  public static String kept(KeptProfile version, boolean fresh) {
    String key = !fresh ? "same" : version.profile().removed() ? "removed" : "kept";
    return WORDS.say(
        key, version.profile().name(), measures(version), String.valueOf(version.number()));
  }

  /** That versions were changed by another program; nothing where none was. */
  public static List<String> damaged(int versions) {
    return versions == 0 ? List.of() : List.of(WORDS.say("damaged", versions));
  }
}
