package blindlap.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

class CirclesTest {
  /**
   * Circles that are meant, each with the reason; a new one needs a line that a reviewer weighs.
   */
  private static final Map<Set<String>, String> MEANT =
      Map.of(
          Set.of(
              "session.Fact",
              "session.FactVisitor",
              "session.LookTaken",
              "session.SeriesEnded",
              "session.ValueChosen",
              "session.CovariateSaid",
              "session.FindingSeenAgain",
              "session.OnePersonVisitor",
              "session.SetupShown",
              "session.StintMounted",
              "session.MasksSealed",
              "session.MasksGuessed",
              "session.MasksRead",
              "session.OneStintFact",
              "session.OneStintShown",
              "session.OneStintAnswered",
              "session.SeriesStood",
              "session.RecordingVisitor",
              "session.RecordingFact",
              "session.RecordingBroughtIn",
              "session.SectorVoided",
              "session.PlateRead",
              "session.SectorVoidWithdrawn"),
          "a visitor names every fact, and every fact takes the visitor: a new one cannot be"
              + " forgotten anywhere",
          Set.of(
              "stats.order.Assignments",
              "stats.order.AssignmentsBuilder",
              "stats.order.OrderTable"),
          "one idea in three files: a set of orders, the one way to make it, and its table, made"
              + " when first asked for and kept");

  @Test
  void noClassesOfTheApplicationNeedEachOtherButThoseThatAreMeantTo() {
    assertThat(new HashSet<>(Circles.of(Code.APPLICATION, Code.application())))
        .isEqualTo(MEANT.keySet());
  }

  @Test
  void aCircleOfClassesInOneRoomIsNamed() {
    assertThat(Circles.of(Code.BROKEN, Code.broken()))
        .contains(Set.of("stats.order.GoesRound", "stats.order.ComesBack"));
  }

  @Test
  void aCircleAcrossRoomsIsNamedAndALineOfClassesIsNot() {
    assertThat(Circles.of(Code.BROKEN, Code.broken()))
        .contains(Set.of("review.ImportsWording", "wording.ImportsReview"))
        .noneMatch(circle -> circle.contains("plan.LeadsToAKey"));
  }
}
