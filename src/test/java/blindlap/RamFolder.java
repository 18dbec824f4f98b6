package blindlap;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.extension.AnnotatedElementContext;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.io.TempDirFactory;

/**
 * Temporary folders in memory where the system offers it, for tests that record hundreds of days.
 * The notebook does all it does on a disk, sync included; only the disk does not turn. What a disk
 * keeps after a crash is tested elsewhere, on a disk.
 */
public final class RamFolder implements TempDirFactory {
  private static final Path MEMORY = Path.of("/dev/shm");

  @Override
  public Path createTempDirectory(AnnotatedElementContext element, ExtensionContext context)
      throws IOException {
    return Files.isWritable(MEMORY)
        ? Files.createTempDirectory(MEMORY, "blindlap-test-")
        : Files.createTempDirectory("blindlap-test-");
  }
}
