package blindlap.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import blindlap.fault.Unreadable;
import blindlap.plan.Trail;
import blindlap.plan.TrailGate;
import blindlap.wording.day.Problems;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TrailFileTest {
  private static final String GATE =
      "{\"type\":\"Feature\",\"properties\":{\"name\":\"%s\",\"order\":%s%s},\"geometry\":"
          + "{\"type\":\"LineString\",\"coordinates\":[[%s,11.00005],[%s,10.99995]]}}";
  private static final String LINE =
      "{\"type\":\"Feature\",\"properties\":{},\"geometry\":{\"type\":\"LineString\","
          + "\"coordinates\":[[-38,11],[-37.999,11,12.5],[-37.998,11]]}}";
  private static final String POST = gate("Gate post", "1", "", "-37.9999");
  private static final String FORD = gate("Ford", "2", "", "-37.9981");

  private static String gate(String name, String order, String more, String longitude) {
    return GATE.formatted(name, order, more, longitude, longitude);
  }

  private static String collection(String... features) {
    return "{\"type\":\"FeatureCollection\",\"name\":\"Quarry loop\",\"features\":["
        + String.join(",", features)
        + "]}";
  }

  private static Trail read(String text) {
    return TrailFile.read(text.getBytes(StandardCharsets.UTF_8));
  }

  private static String refusal(String text) {
    return Problems.sentence(catchThrowableOfType(Unreadable.class, () -> read(text)).problem());
  }

  @Test
  void aTrailIsWrittenAndReadBackAsItWas() {
    Trail trail = QuarryTrail.trail();
    assertThat(TrailFile.trail(TrailFile.text(trail))).isEqualTo(trail);
    assertThat(TrailFile.read(TrailFile.bytes(trail))).isEqualTo(trail);
  }

  /** Jackson's tree written again with sorted keys has the same numbers as doubles write them. */
  @Test
  void theTextIsTheOneSpellingOfRfc8785() throws IOException {
    String text = TrailFile.text(QuarryTrail.trail());
    Object tree = new ObjectMapper().readValue(text, Object.class);
    String again =
        new ObjectMapper()
            .configure(
                com.fasterxml.jackson.databind.SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS, true)
            .writeValueAsString(tree)
            // Java writes 240.0 where RFC 8785, after ECMAScript, writes 240.
            .replaceAll("(\\d)\\.0(?=[,\\]])", "$1");
    assertThat(text).isEqualTo(again);
  }

  @Test
  void smallNumbersAreWrittenAsRfc8785WritesThem() {
    String near = collection(LINE.replace("-38,11", "-38,11").replace("12.5", "0.04"), POST, FORD);
    assertThat(TrailFile.text(read(near))).contains("[-37.999,11,0]");
    Trail crossing =
        read(
            collection(
                "{\"type\":\"Feature\",\"properties\":{},\"geometry\":{\"type\":\"LineString\","
                    + "\"coordinates\":[[-0.001,0.0000003],[0.001,0.0000012]]}}",
                gate("A", "1", "", "-0.0009")
                    .replace("11.00005", "0.0001")
                    .replace("10.99995", "-0.0001"),
                gate("B", "2", "", "0.0009")
                    .replace("11.00005", "0.0001")
                    .replace("10.99995", "-0.0001")));
    assertThat(TrailFile.text(crossing)).contains("[-0.001,3e-7],[0.001,0.0000012]");
    assertThat(TrailFile.trail(TrailFile.text(crossing))).isEqualTo(crossing);
  }

  @Test
  void anotherSpellingOfAFileIsTheSameTrail() {
    Trail trail = read(collection(POST, FORD, LINE));
    Trail other =
        read(
            collection(LINE, FORD.replace("-37.9981,", "-37.99810000, "), POST)
                .replace("\"features\"", "\n \"crs\": null, \"bbox\": [1,2,3,4], \"features\""));
    assertThat(TrailFile.text(other)).isEqualTo(TrailFile.text(trail));
    assertThat(trail.gates()).extracting(TrailGate::name).containsExactly("Gate post", "Ford");
  }

  /** The line goes east, and the gates run from north to south: riders come from their right. */
  @Test
  void aDirectionThatIsLeftOutIsThatOfTheLine() {
    assertThat(read(collection(LINE, POST, FORD)).gates())
        .extracting(TrailGate::direction)
        .containsExactly(-1, -1);
    assertThat(
            read(collection(LINE, gate("Gate post", "1", ",\"direction\":-1", "-37.9999"), FORD)))
        .isEqualTo(read(collection(LINE, POST, FORD)));
  }

  @Test
  void placesNearerThanHalfAMetreAreLeftOutOnceAndForAll() {
    Trail trail =
        read(collection(LINE.replace("[-37.999,", "[-37.9990001,11],[-37.999,"), POST, FORD));
    assertThat(trail.line()).hasSize(3);
    assertThat(TrailFile.trail(TrailFile.text(trail))).isEqualTo(trail);
  }

  @Test
  void aLoopMayStartAndEndAtGatesThatItPassesTwice() {
    String round =
        "{\"type\":\"Feature\",\"properties\":{},\"geometry\":{\"type\":\"LineString\","
            + "\"coordinates\":[[-38,11],[-37.998,11],[-37.998,11.001],[-38,11.001],"
            + "[-38,11.00001],[-37.9985,11.00001]]}}";
    Trail trail =
        read(
            collection(
                round, gate("Start", "1", "", "-37.9999"), gate("Finish", "2", "", "-37.999899")));
    assertThat(trail.gates()).hasSize(2);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "`[1,2]` | is no FeatureCollection",
        "`{\"type\":\"FeatureCollection\"` | is not JSON from line 1 on",
        "`` | is no FeatureCollection",
        "`{\"type\":\"Feature\",\"features\":[]}` | is no FeatureCollection",
      })
  void whatIsNoCollectionIsRefused(String text, String said) {
    assertThat(refusal(text)).contains(said).contains("Nothing was kept");
  }

  private static void refused(String said, String... features) {
    assertThat(refusal(collection(features))).contains(said).contains("Nothing was kept");
  }

  @Test
  void whatIsMissingIsSaid() {
    refused("holds no line of a trail", POST, FORD);
    refused("There are 0 gates, but a trail has between 2 and 41", LINE);
    refused("There is 1 gate", LINE, POST);
    refused("Feature 3 is a second line", LINE, POST, LINE, FORD);
    refused("Feature 1: \"geometry\" is missing", "{\"type\":\"Feature\"}", LINE, POST, FORD);
    refused("Feature 2: \"name\" is missing", LINE, POST.replace("\"name\"", "\"called\""), FORD);
    refused("Feature 2 is a Point", LINE, POST.replace("\"LineString\"", "\"Point\""), FORD);
    refused("Feature 2: \"order\"", LINE, gate("Gate post", "1.5", "", "-37.9999"), FORD);
    refused(
        "Feature 2: \"direction\"",
        LINE,
        gate("Gate post", "1", ",\"direction\":2", "-37.9999"),
        FORD);
    assertThat(refusal(collection(LINE, POST, FORD).replace("\"name\":\"Quarry loop\",", "")))
        .contains("The trail has no name");
    assertThat(refusal(collection(LINE, POST, FORD).replace("Quarry", "Qu\\u0007arry")))
        .contains("The name \"Quarry loop\" cannot be used");
  }

  @Test
  void gatesThatCannotTimeALapAreRefused() {
    refused("Two gates are called Ford", LINE, gate("Ford", "1", "", "-37.9999"), FORD);
    refused("Two gates have the order 2", LINE, gate("Post", "2", "", "-37.9999"), FORD);
    refused("The line does not go through gate Ford", LINE, POST, gate("Ford", "2", "", "-37.9"));
    refused(
        "The line goes through gate Ford before gate Gate post",
        LINE,
        gate("Gate post", "1", "", "-37.9981"),
        gate("Ford", "2", "", "-37.9999"));
    refused(
        "The line goes through gate Ford against its direction 1. Nothing was kept; write -1",
        LINE,
        POST,
        gate("Ford", "2", ",\"direction\":1", "-37.9981"));
    refused(
        "Gate Ford has both ends in one place", LINE, POST, FORD.replace("10.99995", "11.00005"));
    refused(
        "Gate Ford is 559 m wide, but may be 200 m",
        LINE,
        POST,
        FORD.replace("10.99995", "10.995"));
    refused("Gate Ford has 1 place", LINE, POST, FORD.replace(",[-37.9981,10.99995]", ""));
  }

  @Test
  void placesWhereNoTrailIsAreRefused() {
    refused(
        "Feature 1, place 2: \"\"x\"\" is no number",
        LINE.replace("-37.999,", "\"x\","),
        POST,
        FORD);
    refused("place 2: \"null\" is no number", LINE.replace("-37.999,", "null,"), POST, FORD);
    refused(
        "Feature 1, place 2: \"1E+999999999\"",
        LINE.replace("-37.999,", "1e999999999,"),
        POST,
        FORD);
    refused(
        "place 2 is nowhere on the globe: 11 degrees east, -137.9",
        LINE.replace("-37.999,11", "11,-137.9"),
        POST,
        FORD);
    refused(
        "Place 1 of the line is nearer to a pole than 85",
        LINE.replace("-38,11", "-38,86"),
        POST,
        FORD);
    refused(
        "Between places 1 and 2 the line goes over the date line",
        LINE.replace("-38,11", "179,11"),
        POST,
        FORD);
    refused("The line is 109 km long", LINE.replace("-38,11", "-37,11"), POST, FORD);
    refused(
        "fewer than two places half a metre apart",
        LINE.replaceAll("-37.99\\d", "-38"),
        POST,
        FORD);
    assertThat(refusal(collection(LINE.replace("12.5", "NaN"), POST, FORD))).contains("not JSON");
    List<String> many = new ArrayList<>();
    for (int i = 0; i <= 20_000; i++) {
      many.add("[-38,11]");
    }
    refused(
        "more than 20,000 places", LINE.replace("[-38,11]", String.join(",", many)), POST, FORD);
  }

  @Test
  void secondsThatDoNotFitTheLineAreRefused() {
    String timed = LINE.replace("\"properties\":{}", "\"properties\":{\"seconds\":[0,%s]}");
    assertThat(read(collection(timed.formatted("17,31.5"), POST, FORD)).line().get(2).seconds())
        .isEqualByComparingTo("31.5");
    refused("one for each of its 3 places", timed.formatted("17"), POST, FORD);
    refused("never falling", timed.formatted("17,16"), POST, FORD);
    refused("place 3: \"\"y\"\"", timed.formatted("17,\"y\""), POST, FORD);
  }
}
