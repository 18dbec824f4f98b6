package blindlap.stats.tell;

import java.util.List;
import java.util.Random;

/** Trials drawn independently, and riders who cannot tell but have habits. */
public final class TellingRiders {
  private TellingRiders() {}

  /** A rider who feels nothing; answers are numbered from 0. */
  public enum Habit {
    FIRST_ALWAYS("always the first lap") {
      @Override
      int answer(int trial, int answers, int before, int truth, Random random) {
        return 0;
      }
    },
    IN_TURN("in turn") {
      @Override
      int answer(int trial, int answers, int before, int truth, Random random) {
        return trial % answers;
      }
    },
    AS_ANSWERED_BEFORE("as answered before") {
      @Override
      int answer(int trial, int answers, int before, int truth, Random random) {
        return before;
      }
    },
    NEXT_TO_THE_ONE_BEFORE("the lap after the last answer") {
      @Override
      int answer(int trial, int answers, int before, int truth, Random random) {
        return (before + 1) % answers;
      }
    },
    /** Has heard the right answer of the trial before, and follows it. */
    AS_WAS_RIGHT_BEFORE("what was right before, having heard it") {
      @Override
      int answer(int trial, int answers, int before, int truth, Random random) {
        return truth;
      }
    },
    AT_RANDOM("at random") {
      @Override
      int answer(int trial, int answers, int before, int truth, Random random) {
        return random.nextInt(answers);
      }
    };

    private final String text;

    Habit(String text) {
      this.text = text;
    }

    /** The habit in words. */
    public String text() {
      return text;
    }

    abstract int answer(int trial, int answers, int before, int truth, Random random);
  }

  /** The possible right answers of a task. */
  static int answers(Discrimination task) {
    return task == Discrimination.TRIANGLE ? 3 : 2;
  }

  /** The order of one trial, drawn uniformly from those of the task. */
  static String draw(Discrimination task, Random random) {
    List<String> all = TellingTrials.orders(task);
    return all.get(random.nextInt(all.size()));
  }

  /** Which answer is right: the lap that differs, or that has more of what is asked (B). */
  static int truth(Discrimination task, String order) {
    return switch (task) {
      case TRIANGLE, THREE_CHOICE -> {
        char odd = order.chars().filter(c -> c == 'A').count() == 1 ? 'A' : 'B';
        yield order.indexOf(odd);
      }
      case DUO_TRIO -> order.charAt(1) == order.charAt(0) ? 1 : 0;
      case TWO_CHOICE -> order.indexOf('B');
    };
  }

  /** Right answers of a rider with a habit who tells in this share of trials. */
  public static int right(
      Discrimination task, int trials, double told, Habit habit, Random random) {
    int right = 0;
    int before = 0;
    int truthBefore = 0;
    for (int trial = 0; trial < trials; trial++) {
      int truth = truth(task, draw(task, random));
      int answer =
          random.nextDouble() < told
              ? truth
              : habit.answer(trial, answers(task), before, truthBefore, random);
      right += answer == truth ? 1 : 0;
      before = answer;
      truthBefore = truth;
    }
    return right;
  }
}
