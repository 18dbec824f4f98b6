package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.seal.SealParameters;
import blindlap.seal.SealingSources;
import blindlap.session.Addition;
import blindlap.session.SessionState;
import blindlap.session.SessionSummary;
import blindlap.session.day.SessionId;
import blindlap.store.SqliteNotebook;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a list says of a session is what its review says, whatever came into the notebook when. */
class ListedVerdictsTest {
  @TempDir Path folder;

  private Desk another(TestDay day, String name) {
    return new Desk(
        SqliteNotebook.open(folder.resolve(name), new byte[16], day.clock().instant()),
        day.clock(),
        SealingSources.allFrom(count -> new byte[count]),
        new SealParameters(1),
        count -> new byte[count]);
  }

  private static void bringIn(Desk desk, SessionState session) {
    assertThat(desk.notebook().addEntries(session.entries())).isInstanceOf(Addition.Added.class);
    listed(desk);
  }

  private static Map<SessionId, String> listed(Desk desk) {
    while (desk.sessionList().keepVerdicts(10)) {
      // Until nothing is lacking.
    }
    Map<SessionId, String> listed = new TreeMap<>();
    for (SessionSummary each : desk.sessionList().find("")) {
      listed.put(each.id(), each.verdict());
    }
    return listed;
  }

  @Test
  void aRepeatIsListedAsOneInWhateverOrderTheSessionsWereBroughtIn() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 11)) {
      AskedAgain again = new AskedAgain(day);
      SessionState first = again.unsealed(day.id(), day.phrase(), 3);
      SessionState second = again.unsealed(again.commit(TestDay.EIGHT), 3);
      SessionState elsewhere =
          again.unsealed(again.commit(TestDay.EIGHT.replace("Quarry loop", "Beech run")), 3);
      Map<SessionId, String> whole = listed(day.desk());
      assertThat(whole.get(second.id())).contains("repeat decided after seeing a result");
      assertThat(whole.get(first.id())).doesNotContain("repeat");
      assertThat(whole.get(elsewhere.id())).doesNotContain("repeat");

      for (List<SessionState> order :
          List.of(
              List.of(first, second, elsewhere),
              List.of(elsewhere, second, first),
              List.of(second, first, elsewhere))) {
        try (Desk desk = another(day, order.get(0).id().brief() + ".blindlap")) {
          order.forEach(session -> bringIn(desk, session));
          assertThat(listed(desk)).isEqualTo(whole);
        }
      }
    }
  }

  @Test
  void aSealOpenedLaterLeavesTheVerdictsOfThoseCommittedBefore() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 11)) {
      AskedAgain again = new AskedAgain(day);
      Committing.Result.Committed other = again.commit(TestDay.EIGHT);
      again.unsealed(day.id(), day.phrase(), 3);
      Map<SessionId, String> before = listed(day.desk());
      again.unsealed(other, 3);
      assertThat(verdict(day.desk(), day.id())).isEqualTo(before.get(day.id())).isNotEmpty();
      assertThat(verdict(day.desk(), other.state().id())).isEmpty();
    }
  }

  @Test
  void entriesThatAreBroughtInMakeTheVerdictOfTheirOwnSessionAnew() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 11)) {
      SessionState opened = new AskedAgain(day).unsealed(day.id(), day.phrase(), 3);
      try (Desk desk = another(day, "other.blindlap")) {
        SessionState withoutTheLast =
            SessionState.of(opened.entries().subList(0, opened.entries().size() - 1));
        bringIn(desk, withoutTheLast);
        assertThat(verdict(desk, day.id())).isNotEmpty();
        desk.notebook().addEntries(opened.entries());
        assertThat(verdict(desk, day.id())).isEmpty();
        desk.notebook().putVerdict(day.id(), "as it was");
        desk.notebook().addEntries(opened.entries());
        assertThat(verdict(desk, day.id())).as("nothing new came in").isEqualTo("as it was");
      }
    }
  }

  private static String verdict(Desk desk, SessionId session) {
    return desk.sessionList().find("").stream()
        .filter(each -> each.id().equals(session))
        .findFirst()
        .orElseThrow()
        .verdict();
  }
}
