package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.HelperDay;
import blindlap.desk.HelperDays;
import blindlap.fault.Problem;
import blindlap.session.SessionState;
import java.util.List;

/** What commands of the helper share: they ask for the helper phrase and open the helper's day. */
abstract class HelperDayCommand extends SessionCommand {
  HelperDayCommand(CommandSetting setting) {
    super(setting);
  }

  HelperDay helperDay(Desk desk, SessionState state) {
    HelperDays.Opened opened = desk.helperDays().open(state, phrase(state));
    if (opened instanceof HelperDays.Opened.Refused refused) {
      throw complaint(refused.problems());
    }
    return ((HelperDays.Opened.Day) opened).day();
  }

  /** The session as it stands once the helper's day is open, which may have made up for entries. */
  static SessionState now(Desk desk, SessionState state) {
    return desk.sessions().state(state.id()).orElse(state);
  }

  static void refuse(List<Problem> problems) {
    if (!problems.isEmpty()) {
      throw complaint(problems);
    }
  }
}
