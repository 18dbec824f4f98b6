package blindlap.screen.plan;

import blindlap.desk.Desk;
import blindlap.desk.SafeKeeping;
import blindlap.screen.book.KeepingModel;
import blindlap.screen.part.Background;
import blindlap.seal.SealParameters;
import blindlap.seal.SealingSources;
import blindlap.seal.SecureBytes;
import blindlap.store.SqliteFiles;
import blindlap.store.SqliteNotebook;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Random;

/**
 * A desk on a real notebook in a folder, with a clock that stands still and sources of a fixed
 * seed.
 */
public final class PlanDesk {
  public static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-11-13T19:06:41Z"), ZoneId.of("Europe/Vienna"));

  private PlanDesk() {}

  public static Desk open(Path folder, long orderSeed) {
    return open(folder, orderSeed, CLOCK);
  }

  public static Desk open(Path folder, long orderSeed, Clock clock) {
    return open(folder, orderSeed, clock, 2);
  }

  /** The same with names of sessions by another seed: they may not come twice in a notebook. */
  public static Desk open(Path folder, long orderSeed, Clock clock, long idSeed) {
    return new Desk(
        SqliteNotebook.open(
            folder.resolve("quarry.blindlap"), bytes(3).exactly(16), clock.instant()),
        clock,
        sources(orderSeed),
        // Fewer rounds than in a real session: what a guess costs is not tested here.
        new SealParameters(1000),
        bytes(idSeed));
  }

  /** Exchange and backups of a desk's notebook, at once on the calling thread. */
  public static KeepingModel keeping(Desk desk, Path notebook) {
    SafeKeeping keeping =
        new SafeKeeping(new SqliteFiles(CLOCK, () -> bytes(4).exactly(16)), notebook);
    return new KeepingModel(desk.exchange(keeping), keeping, Background.immediate());
  }

  private static SealingSources sources(long orderSeed) {
    return new SealingSources(
        bytes(orderSeed), bytes(11), bytes(12), bytes(13), bytes(14), bytes(15), bytes(16));
  }

  private static SecureBytes bytes(long seed) {
    Random random = new Random(seed);
    return count -> {
      byte[] bytes = new byte[count];
      random.nextBytes(bytes);
      return bytes;
    };
  }
}
