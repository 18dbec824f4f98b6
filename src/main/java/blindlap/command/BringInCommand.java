package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.SessionExchange;
import blindlap.fault.Problem;
import blindlap.session.NotebookException;
import blindlap.wording.KeepingWords;
import blindlap.wording.TwoValuesWords;
import blindlap.wording.day.Problems;
import blindlap.wording.day.Trouble;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Brings in sessions from other notebooks. */
@Command(
    name = "bring-in",
    description = {
      "Brings in sessions from other notebooks: files that \"export --session-file\" wrote, or"
          + " whole notebooks. The files are only read.",
      "Everything is verified first. What both notebooks wrote is kept, nothing is there twice, and"
          + " in whatever order notebooks exchange they end up with the same.",
      "A file that was changed or cut off is named with the place, and nothing of it is added; the"
          + " others are brought in."
    })
final class BringInCommand extends SessionCommand {
  @Parameters(arity = "1..*", paramLabel = "FILE", description = "Files of sessions, or notebooks.")
  List<Path> files = new ArrayList<>();

  BringInCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    int worst = ExitCode.DONE;
    try (Desk desk = open()) {
      SessionExchange exchange = desk.exchange(keeping());
      for (Path file : files) {
        worst = Math.max(worst, bring(exchange, file));
      }
    }
    return worst;
  }

  private int bring(SessionExchange exchange, Path file) {
    try {
      SessionExchange.Brought brought = exchange.bringIn(file);
      String name = String.valueOf(file.getFileName());
      if (brought.arrived().stream().anyMatch(each -> each.added() > 0)) {
        did(Done.BROUGHT_IN);
      }
      for (SessionExchange.Arrived each : brought.arrived()) {
        if (!brought.notebook() || each.added() > 0) {
          say(
              name
                  + ": "
                  + KeepingWords.arrived(each.summary(), each.added(), each.known(), each.late()));
          TwoValuesWords.arrived(each.summary(), each.apart())
              .ifPresent(words -> say(name + ": " + words));
        }
      }
      if (brought.notebook()) {
        long unchanged = brought.arrived().stream().filter(each -> each.added() == 0).count();
        KeepingWords.unchanged(unchanged, brought.arrived().size())
            .ifPresent(words -> say(name + ": " + words));
      }
      beside(name, "brought.trails", brought.trails());
      beside(name, "brought.profiles", brought.profiles());
      int worst = ExitCode.DONE;
      for (SessionExchange.Refused refused : brought.refused()) {
        for (Problem problem : refused.problems()) {
          complain(KeepingWords.refused(name, refused.session(), Problems.sentence(problem)));
        }
        worst = Math.max(worst, code(refused.why()));
      }
      return worst;
    } catch (NotebookException e) {
      complain(Trouble.sentence(e));
      return e.kind() == NotebookException.Kind.DAMAGED
          ? ExitCode.CHECK_FAILED
          : ExitCode.FILE_TROUBLE;
    }
  }

  private void beside(String name, String key, int fresh) {
    if (fresh > 0) {
      did(Done.BROUGHT_IN);
      say(name + ": " + KeepingWords.say(key, fresh));
    }
  }

  private static int code(SessionExchange.Why why) {
    return switch (why) {
      case NOT_FOR_HERE -> ExitCode.BAD_INPUT;
      case DOES_NOT_VERIFY -> ExitCode.CHECK_FAILED;
    };
  }
}
