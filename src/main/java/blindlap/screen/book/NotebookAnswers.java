package blindlap.screen.book;

import blindlap.desk.SessionList;
import blindlap.plan.Plan;
import blindlap.session.SessionSummary;
import blindlap.wording.NotebookWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What the Notebook page answers to "Where was I?". */
final class NotebookAnswers {
  private NotebookAnswers() {}

  /** The session in hand, else the latest finding. */
  static NotebookModel.Answer of(List<SessionSummary> all, Optional<SessionList.InHand> inHand) {
    if (all.isEmpty()) {
      return new NotebookModel.Answer(
          "",
          NotebookWords.say("empty"),
          "",
          NotebookWords.say("empty.lead"),
          Optional.empty(),
          NotebookWords.say("empty.next"),
          0,
          0);
    }
    if (inHand.isPresent()) {
      return inHand(inHand.get());
    }
    // Old days come in late and find nothing: the latest comparison speaks, if there is one.
    NotebookModel.Row latest =
        NotebookModel.row(
            all.stream()
                .filter(s -> s.kind() == Plan.Kind.COMPARISON)
                .findFirst()
                .orElse(all.get(0)));
    List<String> lead = new ArrayList<>(List.of(latest.detail(), latest.facts()));
    lead.removeIf(String::isEmpty);
    return new NotebookModel.Answer(
        latest.title() + ": ",
        latest.outcome(),
        ".",
        String.join(". ", lead) + ".",
        Optional.of(latest),
        NotebookWords.say("open"),
        0,
        0);
  }

  private static NotebookModel.Answer inHand(SessionList.InHand hand) {
    NotebookModel.Row row = NotebookModel.row(hand.summary());
    String lead =
        NotebookWords.say(
            hand.signed() ? "hand.sealed" : "hand.open", row.title(), row.facts(), row.day());
    if (hand.next().isEmpty()) {
      String key = "hand." + row.step().name();
      return new NotebookModel.Answer(
          "",
          NotebookWords.say(NotebookWords.has(key) ? key : "hand.ridden"),
          ".",
          lead,
          Optional.of(row),
          NotebookWords.say("next." + row.step().name()),
          hand.stints(),
          hand.ridden());
    }
    int stint = hand.next().get().stint();
    return new NotebookModel.Answer(
        "",
        NotebookWords.say("hand.stint", stint, hand.stints()),
        NotebookWords.say("hand.next"),
        lead,
        Optional.of(row),
        NotebookWords.say("ride", stint),
        hand.stints(),
        hand.ridden());
  }
}
