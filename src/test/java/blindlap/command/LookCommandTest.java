package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A look before the end of a day, as it is typed. */
class LookCommandTest {
  private static final Pattern FIT = Pattern.compile("(?m)^ +(\\d+) +\\d+ +(Shock [KL]) ");

  @TempDir Path folder;
  private CommandLineSession day;
  private String id;
  private final Map<Integer, Boolean> onL = new TreeMap<>();

  @BeforeEach
  void committed() {
    day = new CommandLineSession(folder);
    id = day.commit(Plans.LOOKS);
    Matcher fits = FIT.matcher(day.run("helper", id).out());
    while (fits.find()) {
      onL.put(Integer.valueOf(fits.group(1)), fits.group(2).equals("Shock L"));
    }
    assertThat(onL).hasSize(24);
  }

  /** Laps from one to another, Shock L quicker by so many seconds. */
  private CommandLineSession.Ran rides(int from, int to, double quicker) {
    Random random = new Random(5);
    StringBuilder csv = new StringBuilder("lap;lap time;grip\n");
    for (int lap = 1; lap <= to; lap++) {
      double noise = random.nextGaussian();
      double seconds = 95 + 0.8 * noise - (Boolean.TRUE.equals(onL.get(lap)) ? quicker : 0);
      if (lap >= from) {
        csv.append(lap).append(';').append(String.format(java.util.Locale.ROOT, "%.2f", seconds));
        csv.append(';').append(50 + lap % 7).append('\n');
      }
    }
    return day.run("record", id, day.file("laps-" + from + ".csv", csv.toString()).toString());
  }

  private String look(String... more) {
    CommandLineSession.Ran ran = looked(more);
    assertThat(ran.code()).as(ran.err()).isZero();
    return ran.out();
  }

  private CommandLineSession.Ran looked(String... more) {
    List<String> words = new ArrayList<>(List.of("look", id));
    words.addAll(List.of(more));
    return day.run(words.toArray(String[]::new));
  }

  private String refused(String... more) {
    CommandLineSession.Ran ran = looked(more);
    assertThat(ran.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(ran.out()).isEmpty();
    assertThat(ran.err().strip().lines()).hasSize(1);
    return ran.err();
  }

  @Test
  void aLargeDifferenceMayStopAtTheSecondLookAndNothingElseIsSaid() {
    rides(1, 12, 5);
    assertThat(look()).contains("The look after stint 12 is taken.", "Ride on.");
    rides(13, 16, 5);
    String said = look();
    assertThat(said)
        .contains("The look after stint 16 is taken.")
        .contains("You may stop: it is settled that they differ.")
        .doesNotContain("Shock", "quicker", "lap time", " p ", " s ");
  }

  @Test
  void eachLookIsTakenOnceAndSaysTheSameWhenItIsAskedAgain() {
    rides(1, 16, 5);
    assertThat(look("--after-stint", "16")).contains("You may stop");
    for (int lap = 2; lap < 12; lap++) {
      assertThat(day.run("void", id, String.valueOf(lap), "--reason", "traffic").code()).isZero();
    }
    assertThat(look()).contains("was taken before", "You may stop");
    assertThat(refused("--after-stint", "12"))
        .contains("The look after stint 16 was taken, so that the one after stint 12 cannot");
  }

  @Test
  void smallDifferencesRideOn() {
    rides(1, 16, 0);
    assertThat(look()).contains("Ride on.").doesNotContain("You may stop");
  }

  @Test
  void whatCannotBeLookedAtIsSaidInOneSentence() {
    rides(1, 11, 1);
    assertThat(refused()).contains("after stint 12 cannot be taken yet: lap 12 (stint 12)");
    assertThat(refused("--after-stint", "8"))
        .contains("No look is declared after stint 8", "12, 16");
    day.run("record", id, day.file("gap.csv", "lap;grip\n12;40\n").toString());
    assertThat(refused()).contains("lap 12 (stint 12) has no value in lap time and is not void");
    day.run("void", id, "12", "--reason", "crash");
    String phrase = day.phrase();
    day.types("wrong words of a phrase here");
    assertThat(refused()).contains("word");
    day.types(phrase);
    assertThat(look()).contains("Ride on.");
    day.run("close-day", id);
    assertThat(refused("--after-stint", "16")).contains("The day is over");
    assertThat(look("--after-stint", "12")).contains("was taken before");
    String small = day.commit(Plans.SMALL);
    CommandLineSession.Ran none = day.run("look", small);
    assertThat(none.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(none.err()).contains("declares no look before its end");
  }

  @Test
  void theEntryOfALookIsAsLongWhateverItFound() throws IOException {
    rides(1, 16, 5);
    assertThat(look("--after-stint", "12")).contains("Ride on.");
    assertThat(look("--after-stint", "16")).contains("You may stop");
    String settled = entry(16);
    CommandLineSession other =
        new CommandLineSession(Files.createDirectories(folder.resolve("other")));
    day = other;
    id = other.commit(Plans.LOOKS);
    rides(1, 16, 0);
    assertThat(look("--after-stint", "12")).contains("Ride on.");
    assertThat(look("--after-stint", "16")).contains("Ride on.");
    String rideOn = entry(16);
    assertThat(settled).contains("\"outcome\":\"settled\"");
    assertThat(rideOn).contains("\"outcome\":\"ride on\"");
    assertThat(rideOn.length()).isEqualTo(settled.length());
  }

  private String entry(int stint) throws IOException {
    Path file = day.folder.resolve("session-" + stint + ".txt");
    day.run("export", id, "--session-file", file.toString());
    return Files.readString(file)
        .lines()
        .filter(line -> line.contains("LookTaken") && line.contains("\"stint\":\"" + stint + "\""))
        .filter(line -> line.contains("ciphertext"))
        .findFirst()
        .orElseThrow();
  }
}
