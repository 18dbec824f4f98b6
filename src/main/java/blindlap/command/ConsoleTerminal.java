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
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Reads what must not stand in a command line: from the console, or from standard input. */
public final class ConsoleTerminal implements CommandSetting.Terminal {
  private static final Path OUT = Path.of("/dev/stdout");

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
