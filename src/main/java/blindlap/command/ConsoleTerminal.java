package blindlap.command;

import java.io.BufferedReader;
import java.io.Console;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;

/** Reads secrets from the console without showing them, or from standard input. */
public final class ConsoleTerminal implements CommandSetting.Terminal {
  private @Nullable BufferedReader input;

  @Override
  public String secret(String prompt) {
    Console console = System.console();
    if (console != null) {
      char[] typed = console.readPassword("%s ", prompt);
      return typed == null ? "" : new String(typed);
    }
    System.err.println(prompt);
    try {
      if (input == null) {
        input = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
      }
      String line = input.readLine();
      return line == null ? "" : line;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
