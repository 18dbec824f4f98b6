package blindlap.command;

import blindlap.desk.Desk;
import blindlap.fault.Problem;
import blindlap.phone.PhoneMaker;
import blindlap.phone.Phones;
import blindlap.phone.SwitchFault;
import blindlap.phone.Switching;
import blindlap.session.SessionState;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Serves the pages of rider and starter to phones until the day is over. */
@Command(
    name = "phones",
    description = {
      "Lets rider and starter use their phones where the lap ends: serves their pages on one"
          + " address of this machine, prints a code to scan for each, and says who comes.",
      "Nothing of the order goes to a phone, and there is no page for a helper. Use a hotspot of"
          + " your own.",
      "Lines to type meanwhile: in ID lets a phone in that waits, out ID throws one out, who lists"
          + " them, codes prints the codes again, off ends it.",
      "It ends with the day, at off, at Ctrl-C, and at the end of input where someone sits at the"
          + " terminal; without a terminal (nohup) the end of input ends nothing."
    })
final class PhonesCommand extends SessionCommand {
  @Parameters(index = "0", paramLabel = "SESSION", description = WHICH)
  String session = "";

  @Option(
      names = "--address",
      paramLabel = "A",
      description =
          "Address of this machine to serve at; the one of its own network if it has only one.")
  @Nullable String address;

  @Option(
      names = "--port",
      paramLabel = "P",
      description =
          "Port to serve at; 8480 if not given. Stay with one address and port all day: what a"
              + " phone keeps belongs to them.")
  String port = String.valueOf(Switching.PORT);

  @Option(
      names = "--black-on-white",
      description = "For terminals with black letters on white: prints the codes the other way.")
  boolean blackOnWhite;

  PhonesCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    try (Desk desk = open()) {
      SessionState state = find(desk, session);
      if (!state.step().day()) {
        throw complaint(List.of(Problem.of(SwitchFault.DAY_OVER, "")));
      }
      PhoneMaker maker = setting().phones().of(desk);
      Switching.Chosen chosen = Switching.choose(maker.addresses(), address);
      refused(chosen.problem());
      try (Phones phones = maker.phones(state.id())) {
        // Ctrl-C ends the program without coming back here.
        Thread off = new Thread(phones::close);
        Runtime.getRuntime().addShutdownHook(off);
        try {
          refused(Switching.on(phones, Objects.requireNonNull(chosen.address()), port));
          new PhonesTalk(setting().terminal(), out(), desk.clock(), phones, blackOnWhite).serve();
        } finally {
          forget(off);
        }
      }
      return ExitCode.DONE;
    }
  }

  private static void forget(Thread off) {
    try {
      Runtime.getRuntime().removeShutdownHook(off);
    } catch (IllegalStateException ending) {
      // The program is ending: the hook runs.
    }
  }

  private static void refused(Optional<Problem> problem) {
    problem.ifPresent(
        why -> {
          throw complaint(List.of(why));
        });
  }
}
