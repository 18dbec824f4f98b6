package blindlap.command;

import blindlap.desk.Desk;
import blindlap.desk.MistakeLog;
import blindlap.phone.PhoneMaker;
import blindlap.sample.Demo;
import blindlap.session.NotebookFiles;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;

/**
 * What the commands need from outside.
 *
 * @param opener opens a desk on a notebook
 * @param demoOpener opens a desk for invented sessions
 * @param defaultNotebook where the notebook lies if --notebook is not given
 * @param terminal where secrets are typed
 * @param files the notebook files of this machine
 * @param window opens the window on a notebook; answers false where there is no display
 * @param phones makes phones of the sessions of a desk
 * @param mistakes where what nobody foresaw is kept
 */
public record CommandSetting(
    Desk.Opener opener,
    Demo.Opener demoOpener,
    Path defaultNotebook,
    Terminal terminal,
    NotebookFiles files,
    Window window,
    PhonesOf phones,
    MistakeLog mistakes) {

  /** Asks for what must not stand in a command line. */
  public interface Terminal {
    /** Asks and reads one line; without a console it is read from standard input. */
    String secret(String prompt);

    /**
     * Asks and reads one line that may be seen as it is typed; without a console it is read from
     * standard input.
     *
     * @return empty if there is no more input
     */
    Optional<String> answer(String prompt);

    /**
     * Puts what was printed on disk where it goes to a file; elsewhere there is nothing to do.
     *
     * @return false if it is not safe there
     */
    boolean settled();

    /**
     * Leaves what is on the screen there for some time, or until Enter, and takes it away then as
     * far as it is a screen.
     */
    void blankAfter(Duration time);

    /** True if someone sits there who reads what is printed and types what is asked. */
    boolean present();
  }

  /** Makes phones of sessions. */
  @FunctionalInterface
  public interface PhonesOf {
    /**
     * @param desk on the notebook with the sessions
     */
    PhoneMaker of(Desk desk);
  }

  /** Opens the window. */
  public interface Window {
    /**
     * @param notebook the file to open
     * @return false if there is no display
     */
    boolean open(Path notebook);
  }
}
