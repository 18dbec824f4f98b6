package blindlap.store;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The long version: {@code mvn test -Dtest=TwoProcessesTrial -Dseconds=60}. */
class TwoProcessesTrial {
  @TempDir private Path folder;

  @Test
  void for_a_minute() throws Exception {
    System.out.println(TwoProcesses.append(folder, Integer.getInteger("seconds", 60)));
  }
}
