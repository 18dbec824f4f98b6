package blindlap.command;

import blindlap.sample.Demo;
import java.io.IOException;
import java.nio.file.Path;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Does the whole job on an invented session. */
@Command(
    name = "demo",
    description = {
      "Does the whole job on an invented session in a fresh notebook, telling each step in a line.",
      "Then opens the window on that notebook where there is a display."
    })
final class DemoCommand extends SessionCommand {
  @Option(names = "--no-window", description = "Do not open the window.")
  boolean noWindow;

  DemoCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    if (notebook != null && java.nio.file.Files.exists(notebook)) {
      throw new Complaint(
          ExitCode.BAD_INPUT,
          "The demo wants a fresh notebook, but " + notebook + " exists; it was left as it is.");
    }
    Path folder = folder();
    Path file = notebook == null ? folder.resolve("demo.blindlap") : notebook;
    new Demo(setting().demoOpener(), this::say).run(file, folder);
    did(Done.SHOWN);
    if (noWindow) {
      return ExitCode.DONE;
    }
    if (!setting().window().open(file)) {
      say("There is no display, so no window was opened. Everything above is done all the same.");
    }
    return ExitCode.DONE;
  }

  private static Path folder() {
    try {
      return java.nio.file.Files.createTempDirectory("blindlap-demo-");
    } catch (IOException e) {
      throw new Complaint(ExitCode.FILE_TROUBLE, "No temporary folder can be made for the demo.");
    }
  }
}
