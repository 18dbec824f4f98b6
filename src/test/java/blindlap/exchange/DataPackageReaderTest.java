package blindlap.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.InstanceOfAssertFactories.type;

import blindlap.desk.Reviews;
import blindlap.desk.SampleDays;
import blindlap.fault.Unreadable;
import blindlap.review.HelperFit;
import blindlap.wording.day.Problems;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

class DataPackageReaderTest {
  private static final String HEAD = "stint,fitted,setting,measured,note\n";
  private static final Map<String, byte[]> FILES = new HashMap<>();

  @BeforeAll
  static void export() {
    SampleDays.ride(
        "shocks-on-quarry-loop", (desk, state) -> FILES.putAll(desk.reviews().export(state)));
  }

  private static Map<String, byte[]> with(String helper) {
    Map<String, byte[]> files = new HashMap<>(FILES);
    files.put("helper.csv", helper.getBytes(StandardCharsets.UTF_8));
    return files;
  }

  @Test
  void theHelpersRecordsComeBackAsTheReviewHasThem() {
    SampleDays.ride(
        "clicks-on-wet-steps",
        (desk, state) -> {
          Map<Integer, HelperFit> review = Reviews.day(state).fits();
          assertThat(review).isNotEmpty();
          assertThat(DataPackageReader.read(desk.reviews().export(state)).fits()).isEqualTo(review);
        });
  }

  @Test
  void rowsOfAStintBelongTogetherWhereverTheyStand() {
    String rows =
        "10,B,,,\"wet; 24\"\" wheel\"\n2,,,,\n10,B,sag,25.5,\n2,,insert,,soft\n10,B,rebound,7,\n";
    assertThat(DataPackageReader.read(with(HEAD + rows)).fits())
        .containsExactly(
            Map.entry(2, new HelperFit(2, null, Map.of(), Map.of("insert", "soft"), "")),
            Map.entry(
                10,
                new HelperFit(
                    10,
                    1,
                    Map.of("sag", new BigDecimal("25.5"), "rebound", new BigDecimal("7")),
                    "wet; 24\" wheel")));
  }

  @Test
  void aPackageWithoutRecordsOfAHelperHasNone() {
    assertThat(DataPackageReader.read(with(HEAD)).fits()).isEmpty();
  }

  @Test
  void aNumberWithACommaIsRefusedForAPackageIsNotTyped() {
    assertThatThrownBy(() -> DataPackageReader.read(with(HEAD + "2,A,sag,\"25,5\",\n")))
        .asInstanceOf(type(Unreadable.class))
        .extracting(refused -> Problems.sentence(refused.problem()))
        .isEqualTo("\"25,5\" is not a number for \"measured\".");
  }

  @Test
  void aMissingColumnIsNamed() {
    assertThatThrownBy(() -> DataPackageReader.read(with("stint,fitted\n2,A\n")))
        .asInstanceOf(type(Unreadable.class))
        .extracting(refused -> Problems.sentence(refused.problem()))
        .isEqualTo("The column \"setting\" is missing.");
  }
}
