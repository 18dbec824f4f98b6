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

  private String unsealed() {
    for (String command : List.of("close-day", "close-review", "unseal")) {
      CommandLineSession.Ran ran = day.run(command, id);
      assertThat(ran.code()).as(ran.err()).isZero();
    }
    CommandLineSession.Ran review = day.run("review", id);
    assertThat(review.code()).as(review.err()).isZero();
    return review.out();
  }

  private void stopsAfterSixteen() {
    rides(1, 16, 5);
    assertThat(look()).contains("You may stop");
    CommandLineSession.Ran cut =
        day.run(
            "cut-short", id, "--after-stint", "16", "--reason", "settled", "--decided-by", "R. L.");
    assertThat(cut.code()).as(cut.err()).isZero();
  }

  @Test
  void aDayThatWasStoppedEarlySaysWhatThatCosts() {
    stopsAfterSixteen();
    assertThat(unsealed())
        .contains("not settled, direction known", "nothing is said of the size")
        .contains("After stint 16 the program looked: it was settled that the setups differ")
        .contains("The look declared after stint 12 was not taken")
        .contains("Stopped early, after stint 16 of 24", "the estimate leans outward")
        .contains("counting every look up to the stop", "without regard to them p")
        .contains("grip: the day was stopped early by a look at another measure")
        .doesNotContain("The rider knew that the setups differ");
    assertThat(day.run("review", id, "--json").out())
        .contains("\"stopped_early\" : true", "\"p_without_looks\"")
        .doesNotContain("\"level_left\"");
  }

  @Test
  void aDayThatWasRiddenOnSaysWhatTheRiderKnewAndKeepsWhatWasSettled() {
    rides(1, 16, 5);
    assertThat(look()).contains("You may stop");
    rides(17, 24, 5);
    day.run("void", id, "3", "--reason", "traffic");
    assertThat(unsealed())
        .contains("real and worthwhile")
        .contains("The rider knew that the setups differ from stint 17 on")
        .contains("Voids or values of stint 3 were changed after a look had used them")
        .contains("counting every look (the end had")
        .contains("grip: the rider knew that the setups differ")
        .doesNotContain("Stopped early");
  }

  @Test
  void aDayOnWhichNothingWasSettledEarlyIsLookedAtItsEnd() {
    rides(1, 16, 0.3);
    assertThat(look()).contains("Ride on.");
    rides(17, 24, 0.3);
    assertThat(unsealed())
        .contains("After stint 16 the program looked, and people read \"ride on\"")
        .contains("grip: the rider knew that no large difference was found")
        .contains("of the level left")
        .doesNotContain("Stopped early", "The rider knew that the setups differ");
  }

  @Test
  void theDataPackageGivesTheSameFinding() throws IOException {
    stopsAfterSixteen();
    String said = unsealed();
    Path out = folder.resolve("package");
    day.run("export", id, "--out", out.toString());
    String looks = Files.readString(out.resolve("looks.csv"));
    assertThat(looks.lines()).hasSize(17);
    assertThat(looks)
        .startsWith("after_stint,settled,stint,lap_in_stint,value")
        .contains("16,true");
    CommandLineSession.Ran again = day.run("review", "--from", out.toString());
    assertThat(again.code()).as(again.err()).isZero();
    assertThat(again.out()).contains("Stopped early, after stint 16 of 24");
    String evidence =
        said.lines().filter(line -> line.contains("without regard to")).findFirst().orElseThrow();
    assertThat(again.out()).contains(evidence);
  }

  @Test
  void overOrdersOnlyTheDeclaredWordDiffers() throws IOException {
    StringBuilder csv = new StringBuilder("lap;lap time;grip;guess\n");
    for (int lap = 1; lap <= 16; lap++) {
      double seconds = 95 + lap * lap % 7 * 0.2 - (Boolean.TRUE.equals(onL.get(lap)) ? 6 : 0);
      csv.append(lap).append(String.format(java.util.Locale.ROOT, ";%.1f;50;B%n", seconds));
    }
    Map<String, String> outcomes = new TreeMap<>();
    Map<String, String> rest = new TreeMap<>();
    ride(CommandLineSession.ofOrder(home("own"), 42), csv.toString(), outcomes, rest);
    for (long seed = 1; seed <= 6; seed++) {
      ride(CommandLineSession.ofOrder(home("of-" + seed), seed), csv.toString(), outcomes, rest);
    }
    assertThat(outcomes).as("orders that differ").hasSizeGreaterThan(4);
    assertThat(outcomes.values()).allMatch(said -> said.matches("(?s).*(Ride on|You may stop).*"));
    assertThat(rest.values().stream().distinct()).hasSize(1);
  }

  private Path home(String name) throws IOException {
    return Files.createDirectories(folder.resolve(name));
  }

  /** Everything that anyone sees, with sizes of files and of what is encrypted; hashes masked. */
  private void ride(
      CommandLineSession other, String csv, Map<String, String> outcomes, Map<String, String> rest)
      throws IOException {
    day = other;
    id = day.commit(Plans.LOOKS);
    String order = day.run("helper", id).out().replaceAll("(?s).*stint  code  fit", "");
    day.run("record", id, day.file("laps.csv", csv).toString());
    String first = look("--after-stint", "12");
    String second = look("--after-stint", "16");
    outcomes.put(order, first + second);
    Path file = day.folder.resolve("session.txt");
    day.run("export", id, "--session-file", file.toString());
    Path blind = day.folder.resolve("blind");
    day.run("export", id, "--out", blind.toString());
    String seen =
        Files.readString(file)
            + Files.readString(blind.resolve("session.txt"))
            + day.run("codes", id).out()
            + day.run("notebook").out()
            + day.run("notebook", "--verify").out()
            + Files.size(file)
            + " "
            + Files.size(day.notebook);
    rest.put(
        order,
        seen.replace(day.folder.toString(), "HOME")
            .replaceAll("\"ciphertext\":\"[^\"]{10944}\"", "sealed")
            .replaceAll("\"ciphertext\":\"([^\"]+)\"", "key")
            .replaceAll("\"outcome\":\"(ride on|settled)\"", "outcome")
            .replaceAll("[0-9a-f]{64}", "*"));
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
