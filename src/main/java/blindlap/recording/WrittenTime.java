package blindlap.recording;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.ResolverStyle;
import java.util.Locale;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A time as recorders and converters write it: day and time of ISO 8601, with any number of digits
 * of a second behind a point or a comma.
 */
final class WrittenTime {
  /** A time without a zone is one of UTC, as GPX has it: at most all are off by one constant. */
  private static final DateTimeFormatter ANY_ZONE =
      new DateTimeFormatterBuilder()
          .parseCaseInsensitive()
          .append(DateTimeFormatter.ISO_LOCAL_DATE_TIME)
          .optionalStart()
          .parseLenient()
          .appendOffsetId()
          .optionalEnd()
          .toFormatter(Locale.ROOT)
          .withZone(ZoneOffset.UTC)
          .withResolverStyle(ResolverStyle.STRICT);

  /** Digits below a nanosecond say nothing. */
  private static final Pattern FRACTION = Pattern.compile("[.,](\\d{1,9})\\d*");

  private static final Pattern DAY_AND_TIME = Pattern.compile("(\\d) +(?=\\d)");
  private static final Pattern NAMED_ZONE = Pattern.compile(" *(?:UTC|GMT)$");

  private static final Pattern OFFSET = Pattern.compile("(?<=:\\S{1,30}[+-]\\d\\d)(?=\\d\\d$)");

  private WrittenTime() {}

  /** Null if it is none. */
  static @Nullable Instant read(String typed) {
    String plain = FRACTION.matcher(typed).replaceFirst(".$1");
    plain = DAY_AND_TIME.matcher(plain).replaceFirst("$1T");
    plain = NAMED_ZONE.matcher(plain).replaceFirst("Z");
    plain = OFFSET.matcher(plain).replaceFirst(":");
    try {
      return ANY_ZONE.parse(plain, Instant::from);
    } catch (DateTimeException e) {
      return null;
    }
  }
}
