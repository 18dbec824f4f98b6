package blindlap.command;

import java.io.BufferedReader;
import java.io.Console;
import java.io.FileDescriptor;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.SyncFailedException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Reads what must not stand in a command line: from the console, or from standard input. */
public final class ConsoleTerminal implements CommandSetting.Terminal {
  private static final Path OUT = Path.of("/dev/stdout");

  private static final int BLANK_LINES = 100;
  private static final long TICK = 100;

  /** To the upper left, clear the screen, clear what can be scrolled back to. */
  private static final String CLEARED = "\u001b[H\u001b[2J\u001b[3J";

  private @Nullable BufferedReader input;

  @Override
  public String secret(String prompt) {
    Console console = System.console();
    if (console == null) {
      return line(prompt).orElse("");
    }
    char[] typed = console.readPassword("%s ", prompt);
    return typed == null ? "" : new String(typed);
  }

  @Override
  public Optional<String> answer(String prompt) {
    Console console = System.console();
    return console == null ? line(prompt) : Optional.ofNullable(console.readLine("%s ", prompt));
  }

  @Override
  public boolean present() {
    return System.console() != null;
  }

  @Override
  public boolean settled() {
    try {
      FileDescriptor.out.sync();
      return true;
    } catch (SyncFailedException e) {
      // Terminals and pipes cannot be synced, and need not be.
      return !Files.isRegularFile(OUT);
    }
  }

  /** Twice the usual screen of blank lines, then what screens that understand it clear by. */
  @Override
  public void blankAfter(Duration time) {
    Console console = System.console();
    if (console == null) {
      System.out.print(System.lineSeparator().repeat(BLANK_LINES));
      return;
    }
    try {
      for (long left = time.toMillis(); left > 0 && !console.reader().ready(); left -= TICK) {
        Thread.sleep(TICK);
      }
      if (console.reader().ready()) {
        console.readLine();
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      console.writer().print(System.lineSeparator().repeat(BLANK_LINES) + CLEARED);
      console.flush();
    }
  }

  private Optional<String> line(String prompt) {
    System.err.println(prompt);
    try {
      if (input == null) {
        input = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
      }
      return Optional.ofNullable(input.readLine());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
