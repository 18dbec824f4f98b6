package blindlap.command;

import blindlap.desk.AfterSteps;
import blindlap.desk.AnotherDay;
import blindlap.desk.Desk;
import blindlap.plan.Plan;
import blindlap.session.SessionState;
import blindlap.wording.PlanWords;
import blindlap.wording.day.Words;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Makes a plan like that of an earlier session, as a draft or a plan file. */
final class PlanLike {
  private static final int FEWEST = 2;
  private static final int MOST = 100;

  private PlanLike() {}

  /**
   * @param seriesOf sessions of the series to declare; null for a session of its own
   * @param out the plan file to write; null for a draft of the notebook
   * @return what was made, in sentences
   */
  static List<String> make(
      Desk desk, SessionState state, @Nullable Integer seriesOf, @Nullable Path out) {
    if (seriesOf != null) {
      refuse(state.plan(), seriesOf);
    }
    AnotherDay another = desk.anotherDay();
    AnotherDay.Made made =
        (seriesOf == null ? another.like(state.id()) : another.seriesFrom(state.id(), seriesOf))
            .orElseThrow();
    List<String> lines = new ArrayList<>();
    lines.add(kept(desk, made, out));
    if (state.plan().kind() != Plan.Kind.TELLING_RUN) { // which no noise of a measure decides
      lines.add(noise(state, made));
    }
    if (seriesOf != null) {
      String series = made.series().orElseThrow();
      lines.add(PlanWords.say("like.series", series, seriesOf, state.id().brief()));
    }
    Object stays = made.fields().get("series");
    if (seriesOf == null && stays != null) {
      lines.add(PlanWords.say("like.stays", stays));
    }
    lines.add(PlanWords.say("like.order"));
    return lines;
  }

  private static void refuse(Plan plan, int seriesOf) {
    if (seriesOf < FEWEST || seriesOf > MOST) {
      throw new Complaint(
          ExitCode.BAD_INPUT,
          "--series-of: a series has 2 to 100 sessions, not " + seriesOf + ". Nothing was made.");
    }
    if (plan.steps() != null) {
      throw new Complaint(
          ExitCode.BAD_INPUT,
          "--series-of: only days of two setups are pooled, and this one is a steps day. Nothing"
              + " was made; leave the option out for another day of its own.");
    }
    if (plan.kind() == Plan.Kind.TELLING_RUN) {
      throw new Complaint(
          ExitCode.BAD_INPUT,
          "--series-of: only days that compare two setups are pooled, and this one is a telling"
              + " run. Nothing was made; leave the option out for another run of its own.");
    }
    if (plan.setups().size() != 2) {
      throw new Complaint(
          ExitCode.BAD_INPUT,
          "--series-of: only days of two setups are pooled, and this one has "
              + plan.setups().size()
              + ". Nothing was made; leave the option out for another day of its own.");
    }
  }

  /**
   * A plan that follows from a steps day.
   *
   * @param level the level to take; null for the two best, compared
   * @param out the plan file to write; null for a draft of the notebook
   * @return what was made, in sentences
   */
  static List<String> afterSteps(
      Desk desk, SessionState state, @Nullable String level, @Nullable Path out) {
    AfterSteps after = desk.afterSteps();
    AfterSteps.Taken taken = level == null ? after.compareTwoBest(state) : after.take(state, level);
    if (taken instanceof AfterSteps.Taken.Refused refused) {
      throw SessionCommand.complaint(refused.problems());
    }
    AfterSteps.Taken.Drafted drafted = (AfterSteps.Taken.Drafted) taken;
    List<String> lines = new ArrayList<>();
    lines.add(kept(desk, drafted.made(), out));
    lines.addAll(drafted.said());
    lines.add(noise(state, drafted.made()));
    lines.add(PlanWords.say("like.order"));
    lines.add(Words.of("cautions").say("trust"));
    lines.add(Words.of("cautions").say("short"));
    return lines;
  }

  /**
   * The next session of a series.
   *
   * @param out the plan file to write; null for a draft of the notebook
   * @return what was made, in sentences
   */
  static List<String> next(Desk desk, String series, @Nullable Path out) {
    AnotherDay another = desk.anotherDay();
    AnotherDay.Next next = another.next(series);
    if (next instanceof AnotherDay.Next.Refused refused) {
      throw SessionCommand.complaint(refused.problems());
    }
    AnotherDay.Next.Begun begun = (AnotherDay.Next.Begun) next;
    List<String> lines = new ArrayList<>();
    lines.add(kept(desk, begun.made(), out));
    lines.add(
        PlanWords.seriesPlace(
            series, Optional.of(begun.number()), begun.declared().map(String::valueOf).orElse("")));
    lines.add(PlanWords.say("next.like", begun.like()));
    begun.replaces().ifPresent(id -> lines.add(PlanWords.say("next.replaces", id)));
    lines.add(PlanWords.say("like.order"));
    return lines;
  }

  private static String kept(Desk desk, AnotherDay.Made made, @Nullable Path out) {
    return out == null
        ? PlanWords.say("like.kept", desk.anotherDay().keep(made))
        : PlanWords.say("like.written", write(desk, made, out));
  }

  private static String noise(SessionState state, AnotherDay.Made made) {
    return made.noise()
        .flatMap(noise -> state.plan().primary().map(p -> PlanWords.noiseTaken(p, noise)))
        .orElse(PlanWords.say("like.noise.own"));
  }

  private static Path write(Desk desk, AnotherDay.Made made, Path out) {
    if (Files.exists(out)) {
      throw new Complaint(
          ExitCode.FILE_TROUBLE,
          "There is a file " + out + " already. It was kept; give another name.");
    }
    try {
      desk.planning().exportFile(out, made.fields());
      return out;
    } catch (IOException e) {
      throw new Complaint(
          ExitCode.FILE_TROUBLE, "The file " + out + " cannot be written. Nothing was made.");
    }
  }
}
