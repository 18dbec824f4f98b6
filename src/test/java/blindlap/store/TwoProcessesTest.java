package blindlap.store;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Helper and rider in two windows. */
class TwoProcessesTest {
  @TempDir private Path folder;

  @Test
  void two_processes_append_to_one_session_at_once_and_no_entry_is_lost() throws Exception {
    TwoProcesses.append(folder, 4);
  }
}
