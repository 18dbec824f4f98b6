package blindlap.command;

import blindlap.fault.Problem;
import blindlap.phone.Awaited;
import blindlap.phone.Phones;
import blindlap.phone.SwitchFault;
import blindlap.plot.Qr;
import blindlap.plot.surface.Spoken;
import blindlap.session.day.PhoneRole;
import blindlap.wording.day.PhonesWords;
import blindlap.wording.day.Problems;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.net.InetSocketAddress;
import java.net.URI;
import java.time.Clock;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;

/**
 * What is said and typed while phones are on at a terminal. Lines are read on a thread of their
 * own, so that the end of the day does not wait for one.
 */
final class PhonesTalk {
  /** How often it is looked whether the day is over, where nothing else happens. */
  private static final long LOOK_MILLIS = 1000;

  private final CommandSetting.Terminal terminal;
  private final PrintWriter out;
  private final Clock clock;
  private final Phones phones;
  private final boolean blackOnWhite;
  private final BlockingQueue<Said> said = new LinkedBlockingQueue<>();
  private final Semaphore handled = new Semaphore(0);
  private final Map<PhoneRole, URI> links = new EnumMap<>(PhoneRole.class);
  private final Map<String, Boolean> told = new HashMap<>();

  /**
   * Something that happened.
   *
   * @param line what was typed; empty at the end of input
   * @param changed true where nothing was typed: something about the phones is otherwise
   */
  private record Said(Optional<String> line, boolean changed) {}

  PhonesTalk(
      CommandSetting.Terminal terminal,
      PrintWriter out,
      Clock clock,
      Phones phones,
      boolean blackOnWhite) {
    this.terminal = terminal;
    this.out = out;
    this.clock = clock;
    this.phones = phones;
    this.blackOnWhite = blackOnWhite;
  }

  /** Returns once phones are off; they end by themselves with the day. */
  void serve() {
    phones.whenChanged(() -> said.add(new Said(Optional.empty(), true)));
    InetSocketAddress at = phones.at().orElseThrow();
    say(
        PhonesWords.say(
            "command.on",
            phones.session().brief(),
            at.getAddress().getHostAddress() + ":" + at.getPort()));
    say(PhonesWords.say("command.none"));
    codes();
    changed();
    if (out.checkError()) {
      return; // nobody can read the codes
    }
    read();
    try {
      boolean on = true;
      while (on) {
        Said next = said.poll(LOOK_MILLIS, TimeUnit.MILLISECONDS);
        if (phones.at().isEmpty()) {
          say(PhonesWords.say("command.day.over"));
          return;
        }
        on = next == null || heard(next);
      }
      say(PhonesWords.say("command.off"));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void read() {
    Thread reader =
        new Thread(
            () -> {
              Optional<String> line;
              do {
                line = answer();
                said.add(new Said(line, false));
                handled.acquireUninterruptibly(); // what is answered stands above the next question
              } while (line.isPresent() && !off(line.get()));
            },
            "typed");
    reader.setDaemon(true);
    reader.start();
  }

  /** Input that cannot be read is at its end. */
  private Optional<String> answer() {
    try {
      return terminal.answer(PhonesWords.say("command.ask"));
    } catch (UncheckedIOException e) {
      return Optional.empty();
    }
  }

  private static boolean off(String line) {
    return line.strip().equalsIgnoreCase("off");
  }

  /** False once it is to end. */
  private boolean heard(Said next) {
    if (next.changed()) {
      changed();
      return true;
    }
    if (next.line().isEmpty()) {
      boolean ends = terminal.present();
      if (!ends) {
        say(PhonesWords.say("command.no.input"));
      }
      return !ends;
    }
    boolean on = typed(next.line().get());
    handled.release();
    return on;
  }

  private boolean typed(String line) {
    String[] words = line.strip().toLowerCase(Locale.ROOT).split("\\s+", -1);
    switch (words[0]) {
      case "off" -> {
        return false;
      }
      case "who" -> who();
      case "codes" -> codes();
      case "in" -> act(words, phones::letIn);
      case "out" -> act(words, phones::throwOut);
      case "" -> {}
      default -> say(PhonesWords.say("command.unclear"));
    }
    return true;
  }

  private void act(String[] words, Consumer<String> act) {
    if (words.length != 2) {
      say(PhonesWords.say("command.unclear"));
      return;
    }
    List<String> meant =
        phones.known().stream()
            .map(Phones.Known::id)
            .filter(id -> id.startsWith(words[1]))
            .toList();
    if (meant.size() == 1) {
      act.accept(meant.get(0));
    } else {
      say(Problems.sentence(Problem.of(SwitchFault.NO_SUCH_PHONE, "", words[1])));
    }
  }

  private void who() {
    List<Phones.Known> all = phones.known();
    if (all.isEmpty()) {
      say(PhonesWords.say("command.nobody"));
    }
    all.forEach(this::say);
  }

  private void say(Phones.Known phone) {
    say(
        PhonesWords.say(
            "command.came",
            PhonesWords.phone(phone.role(), phone.id()),
            PhonesWords.stands(
                phone.in(),
                Awaited.connected(phone, clock.instant()),
                Awaited.heard(phone, clock.instant()),
                phone.unsent())));
  }

  /** Says who came or was let in since, and the next code where one was used. */
  private void changed() {
    for (Phones.Known phone : phones.known()) {
      Boolean before = told.put(phone.id(), phone.in());
      if (before == null || before != phone.in()) {
        say(phone);
      }
    }
    for (PhoneRole role : PhoneRole.values()) {
      Optional<URI> link = phones.link(role);
      if (link.isPresent() && !link.get().equals(links.get(role))) {
        say(PhonesWords.say("command.next", PhonesWords.role(role)));
        code(role, link.get());
      }
    }
  }

  private void codes() {
    for (PhoneRole role : PhoneRole.values()) {
      phones.link(role).ifPresent(link -> code(role, link));
    }
  }

  private void code(PhoneRole role, URI link) {
    links.put(role, link);
    String words = PhonesWords.say("page.code.spoken", PhonesWords.role(role));
    say(HalfBlocks.of(Qr.of(link.toString(), new Spoken(words, "")), !blackOnWhite));
    say(PhonesWords.say("command.link." + role, link));
  }

  private void say(String line) {
    out.println(line);
    out.flush();
  }
}
