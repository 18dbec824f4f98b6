package blindlap.session;

import blindlap.fault.Problem;
import blindlap.plan.Plan;
import blindlap.plan.Sector;
import blindlap.plan.TrailVersion;
import blindlap.session.day.LapId;
import java.math.BigDecimal;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/** Whether what an entry of a recording says can be, given the plan. */
final class RecordingMeaning implements RecordingVisitor<Optional<Problem>> {
  /** More gates than any trail has. */
  private static final int MOST_GATES = 41;

  private static final BigDecimal MOST_SECONDS = BigDecimal.valueOf(86_400);

  private final Plan plan;

  RecordingMeaning(Plan plan) {
    this.plan = plan;
  }

  @Override
  public Optional<Problem> recordingBroughtIn(RecordingBroughtIn fact) {
    return fact.laps().stream()
        .flatMap(lap -> lap(fact, lap).stream())
        .findFirst()
        .or(() -> numbers(Stream.concat(fact.borders().stream(), Stream.of(offset(fact)))));
  }

  private static BigDecimal offset(RecordingBroughtIn fact) {
    return Objects.requireNonNullElse(fact.offset(), BigDecimal.ZERO);
  }

  private Optional<Problem> lap(RecordingBroughtIn fact, RecordedLap lap) {
    Optional<Problem> place = PlanPlaces.lap(plan, lap.lap());
    if (place.isPresent()) {
      return place;
    }
    int pieces = lap.pieces().size();
    int gates = lap.passes().size();
    TrailVersion trail = plan.trailVersion();
    boolean asMany = trail == null ? gates <= MOST_GATES : gates == trail.gates().size();
    if (gates < 2 || !asMany || pieces > 0 && pieces != fact.borders().size() - 1) {
      return Optional.of(Problem.of(MeaningFault.NOT_A_RECORDING, "", gates, pieces));
    }
    return numbers(
            lap.passes().stream()
                .flatMap(pass -> Stream.of(pass.seconds(), pass.uncertainty()))
                .filter(Objects::nonNull))
        .or(() -> numbers(lap.pieces().stream().filter(Objects::nonNull)))
        .or(() -> times(lap));
  }

  private static Optional<Problem> times(RecordedLap lap) {
    boolean within =
        Stream.concat(lap.passes().stream().map(RecordedPass::seconds), lap.pieces().stream())
            .filter(Objects::nonNull)
            .allMatch(s -> s.signum() >= 0 && s.compareTo(MOST_SECONDS) <= 0);
    return within ? Optional.empty() : Optional.of(Problem.of(MeaningFault.NOT_A_TIME, "", ""));
  }

  private static Optional<Problem> numbers(Stream<BigDecimal> numbers) {
    return numbers.allMatch(Digits::ordinary)
        ? Optional.empty()
        : Optional.of(Problem.of(MeaningFault.TOO_MANY_DIGITS, "", "", Digits.MOST));
  }

  @Override
  public Optional<Problem> sectorVoided(SectorVoided fact) {
    return sector(fact.lap(), fact.sector());
  }

  @Override
  public Optional<Problem> sectorVoidWithdrawn(SectorVoidWithdrawn fact) {
    return sector(fact.lap(), fact.sector());
  }

  private Optional<Problem> sector(LapId lap, Sector sector) {
    TrailVersion trail = plan.trailVersion();
    return PlanPlaces.lap(plan, lap)
        .or(
            () ->
                trail == null || !trail.sectors().contains(sector)
                    ? Optional.of(
                        Problem.of(MeaningFault.NO_SUCH_SECTOR, "", sector.from(), sector.to()))
                    : Optional.empty());
  }
}
