package blindlap.screen.review;

import blindlap.plan.Sector;
import blindlap.plan.TrailVersion;
import blindlap.session.Outcome;
import blindlap.session.RecordingCommands;
import blindlap.session.SectorVoided;
import blindlap.session.SessionState;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.wording.SectorVoidWords;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Function;

/** Sectors that are void alone, and what may be void, in the blind review. */
final class SectorVoids {
  private final SessionState state;
  private final Consumer<Function<SessionState, Outcome>> act;

  SectorVoids(SessionState state, Consumer<Function<SessionState, Outcome>> act) {
    this.state = state;
    this.act = act;
  }

  /** A void that stands. */
  record Standing(LapId lap, Sector sector, String words) {}

  /** Sectors of the plan's trail; none where it fixes no version. */
  List<Sector> sectors() {
    TrailVersion trail = state.plan().trailVersion();
    return trail == null ? List.of() : trail.sectors();
  }

  /** Numbers of ridden laps over the day. */
  List<Integer> laps() {
    return state.laps().stream().filter(LapState::ridden).map(lap -> number(lap.id())).toList();
  }

  private int number(LapId lap) {
    return lap.ofDay(state.plan().laps().perStint());
  }

  /** Voids that stand, in the order of the day. */
  List<Standing> standing() {
    List<Standing> standing = new ArrayList<>();
    state
        .recorded()
        .sectorVoids()
        .forEach((lap, voids) -> voids.values().forEach(each -> standing.add(standing(lap, each))));
    return standing;
  }

  private Standing standing(LapId lap, SectorVoided each) {
    return new Standing(lap, each.sector(), SectorVoidWords.standing(number(lap), each));
  }

  /** Declares a sector void for an event, in words such as "traffic". */
  void declare(int lap, Sector sector, String event) {
    LapId id = LapId.ofDay(lap, state.plan().laps().perStint());
    act.accept(latest -> new RecordingCommands(latest).voidSector(id, sector, event, ""));
  }

  /** Takes a void back. */
  void takeBack(Standing standing) {
    act.accept(
        latest ->
            new RecordingCommands(latest)
                .withdraw(standing.lap(), standing.sector(), standing.words()));
  }
}
