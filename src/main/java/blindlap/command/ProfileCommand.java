package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.ProfileBook;
import blindlap.session.KeptProfile;
import blindlap.wording.ProfileWords;
import blindlap.wording.day.Problems;
import java.time.ZoneId;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Lists, makes, changes and removes profiles. */
@Command(
    name = "profile",
    description = {
      "Lists the profiles of the notebook: who should look at what.",
      "With \"NAME: measure, measure\" it makes or changes one; mass and price of the setups may be"
          + " named beside measures. Where a semicolon stands, semicolons part the names.",
      "Every change is a new version with its time, and nothing is overwritten. A version made"
          + " after a day was opened is marked so for that day. No weights, no sum, no verdict."
    })
final class ProfileCommand extends SessionCommand {
  @Parameters(
      arity = "0..1",
      paramLabel = "NAME: MEASURES",
      description = "The profile to make or change; a name alone shows its versions.")
  String typed = "";

  @Option(
      names = "--remove",
      description = "Remove the profile of this name; that is a version, too.")
  boolean remove;

  ProfileCommand(CommandSetting setting) {
    super(setting);
  }

  @Override
  public Integer call() {
    if (remove && typed.isBlank()) {
      throw new Complaint(
          ExitCode.BAD_INPUT, "--remove needs the name of the profile. Nothing was changed.");
    }
    try (Desk desk = open()) {
      ProfileBook book = desk.profiles();
      if (remove) {
        tell(book.remove(typed));
      } else if (typed.isBlank()) {
        list(book.profiles(), desk.clock().getZone());
        ProfileWords.damaged(book.damaged()).forEach(this::complain);
      } else if (!typed.contains(":") && !book.versions(typed).isEmpty()) {
        show(book.versions(typed), desk.clock().getZone());
      } else {
        tell(book.keep(typed));
      }
      return ExitCode.DONE;
    }
  }

  private void tell(ProfileBook.Result result) {
    if (result instanceof ProfileBook.Result.Refused refused) {
      throw new Complaint(ExitCode.BAD_INPUT, Problems.sentence(refused.why()));
    }
    ProfileBook.Result.Kept kept = (ProfileBook.Result.Kept) result;
    did(kept.fresh() ? Done.PROFILE : Done.NOTHING);
    say(ProfileWords.kept(kept.version(), kept.fresh()));
  }

  private void list(List<KeptProfile> profiles, ZoneId zone) {
    if (profiles.isEmpty()) {
      say(ProfileWords.say("none"));
    }
    show(profiles, zone);
  }

  private void show(List<KeptProfile> versions, ZoneId zone) {
    versions.forEach(each -> say(ProfileWords.line(each, zone)));
  }
}
