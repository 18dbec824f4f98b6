package blindlap.exchange;

import blindlap.plan.Plan;
import blindlap.review.Remark;
import blindlap.session.HelperEntry;
import blindlap.session.SafetyCheck;
import blindlap.session.SessionState;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** What the helper's opened records say beside the fits: who, what was accepted, what corrected. */
final class HelperRemarks {
  private final SessionState state;
  private final Plan plan;
  private final ZoneId zone;
  private final SortedMap<Integer, HelperEntry> entries = new TreeMap<>();
  private final List<Remark> remarks = new ArrayList<>();

  private HelperRemarks(SessionState state) {
    this.state = state;
    this.plan = state.plan();
    this.zone = state.entries().get(state.entries().size() - 1).entry().zone();
    state
        .openedHelperRecords()
        .forEach(
            (stint, text) ->
                HelperEntryText.read(text, plan).ifPresent(entry -> entries.put(stint, entry)));
  }

  static List<Remark> of(SessionState state) {
    return new HelperRemarks(state).all();
  }

  private List<Remark> all() {
    HelperEntry closing = entries.get(HelperEntry.closing(plan));
    entries.headMap(HelperEntry.closing(plan)).forEach(this::handled);
    corrected();
    if (closing != null) {
      closed(closing);
    } else if (missing()) {
      remarks.add(Remark.ofStint(Remark.Kind.HELPER_NOT_CLOSED, Remark.WHOLE_DAY, "", ""));
    }
    return remarks;
  }

  private void handled(int stint, HelperEntry entry) {
    String who = entry.helper();
    if (!who.isBlank()) {
      remarks.add(new Remark(Remark.Kind.HANDLED, stint, 0, "", who, "", "", ""));
    }
    for (HelperEntry.Outside out : entry.outside()) {
      remarks.add(
          new Remark(
              Remark.Kind.OUTSIDE,
              stint,
              0,
              out.setting(),
              who,
              out.aim(),
              out.measured(),
              out.reason()));
    }
    HelperEntry.Paper paper = entry.paper();
    if (paper != null) {
      String ticked =
          entry.confirmed().size() == SafetyCheck.values().length
              ? Remark.ALL
              : entry.confirmed().stream()
                  .map(HelperRemarks::word)
                  .collect(Collectors.joining(","));
      remarks.add(
          new Remark(
              Remark.Kind.ON_PAPER,
              stint,
              0,
              ticked,
              paper.confirmedBy(),
              DataPackage.letter(entry.planned()),
              DataPackage.letter(entry.fitted()),
              ""));
    }
  }

  private static String word(SafetyCheck check) {
    return check.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  private void corrected() {
    Map<Integer, Integer> known = new TreeMap<>();
    entries.forEach((stint, entry) -> known.put(stint, entry.fitted()));
    for (HelperCorrections.Made made : HelperCorrections.of(state.openedHelperRecords(), plan)) {
      HelperEntry.Correction later = made.correction();
      Integer before = known.put(later.stint(), later.fitted());
      remarks.add(
          new Remark(
              Remark.Kind.FIT_CORRECTED,
              later.stint(),
              0,
              after(later),
              made.helper(),
              before == null ? "" : DataPackage.letter(before),
              DataPackage.letter(later.fitted()),
              later.words(),
              Optional.of(later.noticed().atZone(zone))));
    }
  }

  /** Seconds from the bike being ready to the moment at which the wrong fit was noticed. */
  private String after(HelperEntry.Correction later) {
    HelperEntry entry = entries.get(later.stint());
    @Nullable Instant ready = entry == null ? null : entry.done();
    return ready == null || later.noticed().isBefore(ready)
        ? ""
        : String.valueOf(Duration.between(ready, later.noticed()).toSeconds());
  }

  private void closed(HelperEntry closing) {
    List<String> said = new ArrayList<>(List.of(closing.note()));
    closing.events().forEach(each -> said.add(each.words()));
    Instant at = closing.done();
    remarks.add(
        new Remark(
            Remark.Kind.HELPER_CLOSED,
            Remark.WHOLE_DAY,
            0,
            "",
            closing.helper(),
            "",
            "",
            said.stream().filter(words -> !words.isBlank()).collect(Collectors.joining("; ")),
            Optional.ofNullable(at).map(instant -> instant.atZone(zone))));
  }

  /** True where the program that kept the records would have closed them, and nobody did. */
  private boolean missing() {
    return !state.helperRecords().containsKey(HelperEntry.closing(plan))
        && entries.values().stream()
            .anyMatch(
                entry ->
                    entry.timing() != null
                        || entry.paper() != null
                        || !entry.corrections().isEmpty());
  }
}
