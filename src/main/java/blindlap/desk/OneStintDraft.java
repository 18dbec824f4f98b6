package blindlap.desk;

import blindlap.seal.StintView;
import blindlap.session.day.SessionId;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The views of a session as the notebook keeps them beside the record, with the wrong codes that
 * were typed. Its length hangs on the number of views alone.
 *
 * @param wrong codes since the last wait, below {@link #MOST_WRONG}
 * @param until when the wait is over, in milliseconds of the epoch; 0 if there was none
 * @param views of stints that were shown to nobody
 */
record OneStintDraft(int wrong, long until, List<StintView> views) {
  /** So many wrong codes, and there is a wait. */
  static final int MOST_WRONG = 3;

  static final Duration WAIT = Duration.ofSeconds(60);

  private static final String NAME = "one-stint/";

  OneStintDraft {
    views = List.copyOf(views);
  }

  static OneStintDraft of(List<StintView> views) {
    return new OneStintDraft(0, 0, views);
  }

  /** Under which name the draft of a session is kept. */
  static String name(SessionId id) {
    return NAME + id.text();
  }

  /** A draft as it was kept; without views if the text is none. */
  static OneStintDraft read(String text) {
    List<String> lines = text.lines().toList();
    if (lines.isEmpty() || !lines.get(0).matches("[0-9] [0-9]{16}")) {
      return of(List.of());
    }
    return new OneStintDraft(
        lines.get(0).charAt(0) - '0',
        Long.parseLong(lines.get(0).substring(2)),
        lines.stream().skip(1).map(StintView::read).flatMap(Optional::stream).toList());
  }

  String text() {
    return views.stream()
        .map(view -> "\n" + view.line())
        .collect(Collectors.joining("", String.format(Locale.ROOT, "%d %016d", wrong, until), ""));
  }

  Optional<StintView> view(int stint) {
    return views.stream().filter(view -> view.stint() == stint).findFirst();
  }

  /** The same without a stint that was shown; the right code ends the count of wrong ones. */
  OneStintDraft without(int stint) {
    return of(views.stream().filter(view -> view.stint() != stint).toList());
  }

  /** The same after a wrong code. */
  OneStintDraft wrong(Instant now) {
    return wrong + 1 < MOST_WRONG
        ? new OneStintDraft(wrong + 1, until, views)
        : new OneStintDraft(0, now.plus(WAIT).toEpochMilli(), views);
  }

  /** Seconds until a code may be typed again, at most those of one wait; 0 if it may. */
  long wait(Instant now) {
    long left = Math.max(0, until - now.toEpochMilli());
    return Math.min(WAIT.toSeconds(), (left + 999) / 1000);
  }
}
