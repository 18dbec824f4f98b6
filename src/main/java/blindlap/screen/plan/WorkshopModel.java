package blindlap.screen.plan;

import blindlap.fault.TypedNumber;
import blindlap.fault.Unusable;
import blindlap.wording.WorkshopWords;
import blindlap.workshop.Ballast;
import blindlap.workshop.ClickRange;
import blindlap.workshop.LeverageRatio;
import blindlap.workshop.ProgressiveCoil;
import blindlap.workshop.Sag;
import blindlap.workshop.SpringStep;
import blindlap.workshop.Unit;
import blindlap.workshop.Units;
import blindlap.workshop.WorkshopFault;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;

/** Arithmetic of the workshop: each calculation with its formula, its way back beside it. */
public final class WorkshopModel {
  /** What is worked out, and how many numbers it takes. */
  public enum Kind {
    SAG_PERCENT(2),
    SAG_MM(2),
    LEVERAGE(2),
    WHEEL_TRAVEL(2),
    SPRING_STEP(3),
    RATE_FOR_SAG(3),
    PROGRESSIVE_RATE(4),
    SHARE_AT_RATE(4),
    CLICKS_FROM_OPEN(2),
    CLICKS_FROM_CLOSED(2),
    BALLAST(2),
    RATE_TO_METRIC(1),
    RATE_TO_IMPERIAL(1),
    PRESSURE_TO_BAR(1),
    PRESSURE_TO_PSI(1);

    private final int numbers;

    Kind(int numbers) {
      this.numbers = numbers;
    }
  }

  /** One calculation as typed. */
  public static final class Line {
    private final Kind kind;
    private final List<StringProperty> inputs = new ArrayList<>();
    private final ReadOnlyStringWrapper result = new ReadOnlyStringWrapper("");
    private final ReadOnlyObjectWrapper<Optional<WorkshopWords.Answer>> answer =
        new ReadOnlyObjectWrapper<>(Optional.empty());

    Line(Kind kind) {
      this.kind = kind;
      for (int i = 0; i < kind.numbers; i++) {
        StringProperty input = new SimpleStringProperty("");
        input.addListener((o, before, now) -> work());
        inputs.add(input);
      }
    }

    /** What is worked out. */
    public String title() {
      return WorkshopWords.title(kind.name());
    }

    /** The formula in words. */
    public String formula() {
      return WorkshopWords.formula(kind.name());
    }

    /** Names of the numbers. */
    public List<String> names() {
      return WorkshopWords.inputs(kind.name());
    }

    /** The numbers as typed. */
    public List<StringProperty> inputs() {
      return List.copyOf(inputs);
    }

    /** The result with its unit, or what is wrong; empty while a number is missing. */
    public ReadOnlyStringProperty resultProperty() {
      return result.getReadOnlyProperty();
    }

    /** The answer, to be taken over; empty while there is none. */
    ReadOnlyObjectProperty<Optional<WorkshopWords.Answer>> answerProperty() {
      return answer.getReadOnlyProperty();
    }

    private void work() {
      answer.set(Optional.empty());
      double[] numbers = new double[inputs.size()];
      for (int i = 0; i < numbers.length; i++) {
        String typed = inputs.get(i).get().strip();
        if (typed.isEmpty()) {
          result.set("");
          return;
        }
        Optional<BigDecimal> number = TypedNumber.number(typed);
        if (number.isEmpty()) {
          result.set(WorkshopWords.notANumber(typed));
          return;
        }
        numbers[i] = number.get().doubleValue();
      }
      try {
        WorkshopWords.Answer worked = WorkshopWords.answer(kind.name(), value(kind, numbers));
        result.set(worked.words());
        answer.set(Optional.of(worked));
      } catch (Unusable impossible) {
        result.set(WorkshopWords.impossible(impossible.problem()));
      }
    }
  }

  private final List<Line> lines = java.util.Arrays.stream(Kind.values()).map(Line::new).toList();

  /** All calculations; a calculation and its way back stand one after the other. */
  public List<Line> lines() {
    return lines;
  }

  /** The value of a calculation; throws {@link Unusable} where it is impossible. */
  static double value(Kind kind, double... n) {
    return switch (kind) {
      case SAG_PERCENT -> Sag.percent(n[0], n[1]);
      case SAG_MM -> Sag.millimetres(n[0], n[1]);
      case LEVERAGE -> LeverageRatio.mean(n[0], n[1]);
      case WHEEL_TRAVEL -> LeverageRatio.wheelTravelMm(n[0], n[1]);
      case SPRING_STEP -> SpringStep.sagPercent(n[0], n[1], n[2]);
      case RATE_FOR_SAG -> SpringStep.rateFor(n[0], n[1], n[2]);
      case PROGRESSIVE_RATE -> new ProgressiveCoil(n[0], n[1], n[2] / 100).rateAt(n[3] / 100);
      case SHARE_AT_RATE -> 100 * new ProgressiveCoil(n[0], n[1], n[2] / 100).shareAtRate(n[3]);
      case CLICKS_FROM_OPEN -> new ClickRange(whole(n[0])).fromOpen(whole(n[1]));
      case CLICKS_FROM_CLOSED -> new ClickRange(whole(n[0])).fromClosed(whole(n[1]));
      case BALLAST -> Ballast.hiding(n[0], n[1])[0] - Ballast.hiding(n[0], n[1])[1];
      case RATE_TO_METRIC ->
          Units.convert(n[0], Unit.POUND_FORCE_PER_INCH, Unit.NEWTON_PER_MILLIMETRE);
      case RATE_TO_IMPERIAL ->
          Units.convert(n[0], Unit.NEWTON_PER_MILLIMETRE, Unit.POUND_FORCE_PER_INCH);
      case PRESSURE_TO_BAR -> Units.convert(n[0], Unit.POUND_PER_SQUARE_INCH, Unit.BAR);
      case PRESSURE_TO_PSI -> Units.convert(n[0], Unit.BAR, Unit.POUND_PER_SQUARE_INCH);
    };
  }

  private static int whole(double clicks) {
    if (clicks != Math.rint(clicks) || Math.abs(clicks) > 1000) {
      throw new Unusable(
          "clicks", "must be whole, but is " + clicks + ".", WorkshopFault.NOT_WHOLE, clicks);
    }
    return (int) clicks;
  }
}
