package blindlap.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * How lists, search and opening grow with the number of sessions: {@code mvn test
 * -Dtest=ManySessionsTrial -Dsessions=100,1000,10000}. Ten thousand take some minutes to write.
 */
class ManySessionsTrial {
  @TempDir private Path folder;

  @Test
  void lists_search_and_opening() throws Exception {
    Path file = folder.resolve("many.blindlap");
    int there = 0;
    for (String number : System.getProperty("sessions", "100,1000").split(",")) {
      int sessions = Integer.parseInt(number.strip());
      ManySessions.add(file, there, sessions);
      there = sessions;
      List<String> command = Kills.command(ListingChild.class, file.toString(), number.strip());
      command.add(1, "-Xmx256m");
      Process child = new ProcessBuilder(command).redirectErrorStream(true).start();
      String said = new String(child.getInputStream().readAllBytes());
      System.out.println(number + " sessions (milliseconds)\n" + said);
      assertThat(child.waitFor()).as(said).isZero();
    }
  }
}
