package blindlap.screen.book;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.AloneDay;
import blindlap.desk.MaskKeeping;
import blindlap.desk.SessionList;
import blindlap.desk.Sessions;
import blindlap.desk.TestDay;
import blindlap.session.DayCommands;
import blindlap.session.OrderStands;
import blindlap.session.day.LapId;
import blindlap.session.day.LapInput;
import blindlap.session.day.Source;
import blindlap.wording.NotebookWords;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A covered order is called covered, and a page behind the cover is offered where there is one. */
class HandWordsTest {
  @TempDir Path folder;

  private static SessionList.InHand hand(TestDay day) {
    SessionList list = day.desk().sessionList();
    return list.inHand(list.find("")).orElseThrow();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "open | COVERED | ''",
        "drawn | COVERED | ''",
        "masked, prepared_by: M. Oster, masks: marks | COVERED | ''",
        "masked, prepared_by: M. Oster | COVERED | Open as the friend …",
        "prepared, prepared_by: M. Oster, units: 8 | SEALED | Open as the friend …",
        "helper | SEALED | Open as helper …",
      })
  void whoeverHasAPageBehindTheCoverIsOfferedIt(String level, OrderStands order, String button) {
    try (TestDay day = new TestDay(folder, TestDay.at("level: " + level), 1)) {
      assertThat(hand(day).order()).isEqualTo(order);
      assertThat(HandWords.of(hand(day)).behindCover()).isEqualTo(button);
    }
  }

  @Test
  void onceTheLabelsAreMaskedTheFriendHasNothingMoreToDo() {
    try (TestDay day = new TestDay(folder, TestDay.at("level: masked, prepared_by: M. Oster"), 2)) {
      MaskKeeping masks = day.desk().masks();
      assertThat(masks.seal(day.state(), masks.draw(day.state()), masks.phrase().unasked()))
          .isInstanceOf(Sessions.Result.Done.class);
      assertThat(HandWords.of(hand(day)).behindCover()).isEmpty();
    }
    try (TestDay day = new TestDay(folder, TestDay.at("level: masked, prepared_by: M. Oster"), 3)) {
      AloneDay alone = day.desk().aloneDays().day(day.state()).orElseThrow();
      assertThat(alone.show()).isInstanceOf(AloneDay.Shown.Setup.class);
      assertThat(HandWords.of(hand(day)).behindCover()).as("the day has begun").isEmpty();
    }
  }

  @Test
  void aCoveredOrderIsOpenedAndNotUnsealed() {
    try (TestDay day = new TestDay(folder, TestDay.at("level: drawn"), 4)) {
      LapInput lap = LapInput.of(new LapId(1, 1), Map.of("lap time", new BigDecimal("93.4")));
      day.desk()
          .sessions()
          .act(day.id(), now -> new DayCommands(now).record(List.of(lap), Source.PAPER));
      day.desk().riderDays().closeDay(day.id());
      assertThat(NotebookWords.standing(hand(day).summary())).isEqualTo("day closed");
      day.desk().keys().closeReview(day.id());
      assertThat(HandWords.of(hand(day)).next()).isEqualTo("Open the order …");
      assertThat(day.desk().keys().unsealCovered(day.state(), Optional.empty()))
          .isInstanceOf(Sessions.Result.Done.class);
      SessionList list = day.desk().sessionList();
      assertThat(list.inHand(list.find(""))).isEmpty();
      assertThat(NotebookWords.standing(list.find("").get(0))).isEqualTo("opened");
      assertThat(OrderStands.of(day.state())).isEqualTo(OrderStands.OPENED);
    }
  }
}
